import type { Bench } from './WithShelf.tsx';

export interface ShelfGroup {
  readonly label: string;
  readonly items: readonly { readonly key: string; readonly name: string }[];
}

/** The shelf in the order in which it is looked through: roasts, own materials, starter shelf. */
export function shelfGroups({ shelf, materials, roasts }: Bench, without?: string): ShelfGroup[] {
  const own = new Set(materials.map((one) => one.id));
  const roasted = new Set(roasts.map((one) => one.id));
  const all = [...shelf.materials].map(([key, { name }]) => ({ key, name }));
  return [
    { label: 'Roasted charges', items: all.filter(({ key }) => roasted.has(key) && key !== without) },
    { label: 'Own materials', items: all.filter(({ key }) => own.has(key)) },
    { label: 'Starter shelf', items: all.filter(({ key }) => !own.has(key) && !roasted.has(key)) },
  ].filter((group) => group.items.length > 0);
}

/** One material of the shelf. A plain select: its own keyboard search finds a name by its first letters. */
export function MaterialPick(at: {
  readonly label: string;
  readonly bench: Bench;
  readonly value: string;
  readonly onChange: (key: string) => void;
  readonly without?: string | undefined;
}) {
  const gone = at.value !== '' && !at.bench.shelf.materials.has(at.value);
  return (
    <select
      className="input"
      aria-label={at.label}
      value={at.value}
      onChange={(event) => at.onChange(event.target.value)}
    >
      <option value="">Choose …</option>
      {gone && <option value={at.value}>No longer on the shelf</option>}
      {shelfGroups(at.bench, at.without).map((group) => (
        <optgroup key={group.label} label={group.label}>
          {group.items.map(({ key, name }) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  );
}
