import { useCallback } from 'react';
import type { SpecimenKind } from '../../../api/contract/specimen.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { SearchBox } from '../../parts/SearchBox.tsx';
import { Select } from '../../parts/Select.tsx';
import type { SpecimenView } from './useSpecimenView.ts';
import { KIND_CHOICES } from './words.ts';

const ALL = 'all';

export function SpecimenFilters(at: {
  readonly groups: readonly WareGroup[];
  readonly view: SpecimenView;
  readonly onChange: (part: Partial<SpecimenView>) => void;
}) {
  const { onChange, view } = at;
  const onSearch = useCallback((search: string) => onChange({ search }), [onChange]);
  const kinds = [{ id: ALL, label: 'Every kind' }, ...KIND_CHOICES.map(({ id, label }) => ({ id, label }))];
  const groups = [
    { id: ALL, label: 'Every ware group' },
    ...at.groups.map(({ id, name }) => ({ id, label: name })),
    { id: 'none', label: 'Without a group' },
  ];
  const wish = (id: string) => (id === ALL ? undefined : id);
  return (
    <search className="fields">
      <SearchBox label="Search specimens" value={view.search ?? ''} onSearch={onSearch} />
      <Select
        label="Kind"
        choices={kinds}
        value={view.kind ?? ALL}
        onChange={(id) => onChange({ kind: wish(id) as SpecimenKind | undefined })}
      />
      <Select
        label="Ware group"
        choices={groups}
        value={view.group ?? ALL}
        onChange={(id) => onChange({ group: wish(id) })}
      />
    </search>
  );
}
