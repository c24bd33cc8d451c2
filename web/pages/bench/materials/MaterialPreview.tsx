import type { NewMaterial } from '../../../../api/contract/material.ts';
import { fireBatch } from '../../../../api/domain/batch/batch.ts';
import { materialOfEntry } from '../../../../api/domain/batch/bench-shelf.ts';
import type { Material } from '../../../../api/domain/batch/types.ts';
import { Cautions } from '../../../parts/Cautions.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { OxidesTable } from '../fired/OxidesTable.tsx';
import { attempt } from '../parts/attempt.ts';
import { Range } from '../parts/Range.tsx';
import { lossAt850, SHELF_FIRE } from './words.ts';

/** What a hundred grams of the material fire to, as far as what was typed can be read. */
export function MaterialPreview({
  read,
  blank,
}: {
  readonly read: NewMaterial | string;
  readonly blank: boolean;
}) {
  if (blank) return null;
  if (typeof read === 'string') return <Notice>{read}</Notice>;
  const made = attempt(() => materialOfEntry({ ...read, id: 'preview' }));
  if (made.value === null) return <Notice kind="error">{made.reason}</Notice>;
  return <Preview material={made.value} />;
}

function Preview({ material }: { readonly material: Material }) {
  const fired = attempt(() => fireBatch([{ material, amount: 100 }], SHELF_FIRE));
  return (
    <section className="stack" aria-labelledby="preview">
      <h2 id="preview">100 g of it, dry, at 850 °C in air</h2>
      <p>
        Loses <Range span={lossAt850(material)} unit="wt%" /> (negative: takes up oxygen).
      </p>
      {fired.value ? (
        <OxidesTable oxides={fired.value.oxides} />
      ) : (
        <Notice kind="caution">{fired.reason}</Notice>
      )}
      {material.warnings.map((words) => (
        <Notice key={words}>{words}</Notice>
      ))}
      <Cautions hazards={material.hazards} />
    </section>
  );
}
