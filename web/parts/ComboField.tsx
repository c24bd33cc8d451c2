import { useState } from 'react';
import { Button, ComboBox, Input, Label, ListBox, Popover, Text } from 'react-aria-components';
import { Caret } from './icons.tsx';
import { type Choice, OptionItem } from './OptionItem.tsx';

/** One of a list found by typing, or a text of the reader's own. Told when the reader has settled on it. */
export function ComboField(at: {
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly value: string;
  readonly onChange: (text: string) => void;
  readonly hint?: string;
  readonly placeholder?: string;
}) {
  const [typing, setTyping] = useState<string | null>(null);
  const settle = (text: string) => {
    setTyping(null);
    if (text !== at.value) at.onChange(text);
  };
  return (
    <ComboBox
      className="field"
      allowsCustomValue
      menuTrigger="focus"
      inputValue={typing ?? at.value}
      onInputChange={setTyping}
      onSelectionChange={(key) => key !== null && settle(String(key))}
      onBlur={() => settle((typing ?? at.value).trim())}
      defaultItems={at.choices}
    >
      <Label className="label">{at.label}</Label>
      <div className="combo">
        <Input className="input" {...(at.placeholder ? { placeholder: at.placeholder } : {})} />
        <Button className="button quiet">
          <Caret />
        </Button>
      </div>
      {at.hint && (
        <Text slot="description" className="hint">
          {at.hint}
        </Text>
      )}
      <Popover offset={4}>
        <ListBox className="list">
          {(choice: Choice) => <OptionItem choice={choice} id={choice.label} />}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
