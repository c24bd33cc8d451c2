import { useEffect, useState } from 'react';
import { Input, Label, SearchField } from 'react-aria-components';

/** A search field that tells what was typed once the typing pauses. */
export function SearchBox(at: {
  readonly label: string;
  readonly value: string;
  readonly onSearch: (words: string) => void;
}) {
  const [text, setText] = useState(at.value);
  const { onSearch, value } = at;
  useEffect(() => setText(value), [value]);
  useEffect(() => {
    if (text === value) return;
    const pause = setTimeout(() => onSearch(text), 250);
    return () => clearTimeout(pause);
  }, [text, value, onSearch]);
  return (
    <SearchField className="field" value={text} onChange={setText} onSubmit={onSearch}>
      <Label className="label">{at.label}</Label>
      <Input className="input" />
    </SearchField>
  );
}
