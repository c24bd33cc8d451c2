import { Field } from '../../../parts/Field.tsx';
import { ScrollRegion } from '../../../parts/ScrollRegion.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import { shelfGroups } from '../parts/MaterialPick.tsx';
import type { Bench } from '../parts/WithShelf.tsx';
import type { TargetForm } from './target-form.ts';

interface MaterialsChoiceProps {
  readonly bench: Bench;
  readonly form: TargetForm;
  readonly set: (part: Partial<TargetForm>) => void;
}

/** What may be weighed, within which bounds. */
export function MaterialsChoice({ bench, form, set }: MaterialsChoiceProps) {
  return (
    <section className="stack" aria-labelledby="may-use">
      <h2 id="may-use">Materials it may use</h2>
      <ScrollRegion label="Materials it may use" className="material-choice">
        <table>
          <caption className="unseen">Materials it may use, with bounds in wt% of the dry batch</caption>
          <thead>
            <tr>
              <th scope="col">Material</th>
              <th scope="col">Least, wt%</th>
              <th scope="col">Most, wt%</th>
            </tr>
          </thead>
          {shelfGroups(bench).map((group) => (
            <tbody key={group.label}>
              <tr>
                <th scope="rowgroup" colSpan={3} className="small faint">
                  {group.label}
                </th>
              </tr>
              {group.items.map((item) => (
                <MaterialRow key={item.key} item={item} form={form} set={set} />
              ))}
            </tbody>
          ))}
        </table>
      </ScrollRegion>
      <Field
        label="At most so many materials"
        inputMode="numeric"
        placeholder="any number"
        value={form.atMost}
        onChange={(atMost) => set({ atMost })}
      />
    </section>
  );
}

function MaterialRow(at: {
  readonly item: { readonly key: string; readonly name: string };
  readonly form: TargetForm;
  readonly set: (part: Partial<TargetForm>) => void;
}) {
  const { key, name } = at.item;
  const { materials, bounds } = at.form;
  const chosen = materials.includes(key);
  const bound = bounds[key] ?? { least: '', most: '' };
  const toggle = (on: boolean) =>
    at.set({ materials: on ? [...materials, key] : materials.filter((one) => one !== key) });
  const change = (part: Partial<typeof bound>) =>
    at.set({ bounds: { ...bounds, [key]: { ...bound, ...part } } });
  return (
    <tr>
      <td>
        <Tick isSelected={chosen} onChange={toggle}>
          {name}
        </Tick>
      </td>
      {(['least', 'most'] as const).map((end) => (
        <td key={end}>
          {chosen && (
            <input
              className="input"
              inputMode="decimal"
              autoComplete="off"
              aria-label={`${end === 'least' ? 'Least' : 'Most'}, ${name}`}
              placeholder={end === 'least' ? '0' : '100'}
              value={bound[end]}
              onChange={(event) => change({ [end]: event.target.value })}
            />
          )}
        </td>
      ))}
    </tr>
  );
}
