import type { UnityFormula, UnityPart } from '../../../../api/domain/batch/unity.ts';
import { showAnalyte } from '../../../parts/numbers.ts';

const COLUMNS = [
  { role: 'fluxes', label: 'Fluxes, adding to 1' },
  { role: 'amphoteric', label: 'Amphoteric' },
  { role: 'acid', label: 'Acid' },
  { role: 'apart', label: 'Apart from the glass' },
] as const;

/** Moles of every oxide for one mole of fluxes, in the order in which potters write them. */
export function Unity({ unity }: { readonly unity: UnityFormula }) {
  return (
    <div className="unity">
      {COLUMNS.filter(({ role }) => unity[role].length > 0).map(({ role, label }) => (
        <div key={role}>
          <h3>{label}</h3>
          <Moles parts={unity[role]} />
        </div>
      ))}
    </div>
  );
}

function Moles({ parts }: { readonly parts: readonly UnityPart[] }) {
  return (
    <ul>
      {parts.map(({ oxide, moles }) => (
        <li key={oxide}>
          <span className="number">{moles.toFixed(3)}</span> {showAnalyte(oxide)}
        </li>
      ))}
    </ul>
  );
}
