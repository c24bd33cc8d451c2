import type { Analysis } from '../../../api/contract/analysis.ts';
import type { ReportedValue } from '../../../api/domain/composition/types.ts';
import { Notice } from '../../parts/Notice.tsx';
import { showAnalyte } from '../../parts/numbers.ts';
import { correctionsOf } from './corrections-of.ts';
import { Figure } from './ReportedTable.tsx';

/** What was entered before somebody corrected it, figure by figure. */
export function Corrections({ analysis }: { readonly analysis: Analysis }) {
  const { firstReported, reported, row } = analysis;
  if (firstReported === null) return null;
  const changed = correctionsOf(firstReported, reported);
  return (
    <Notice title="Corrected by hand">
      {changed.length === 0 ? (
        <p>Its figures were changed, and are now again as they were entered first.</p>
      ) : (
        <>
          <p>{row === null ? 'As first typed in:' : `As row ${row} of the imported file has it:`}</p>
          <ul>
            {changed.map(({ analyte, first }) => (
              <li key={analyte}>
                {showAnalyte(analyte)}: <First of={first} />
              </li>
            ))}
          </ul>
        </>
      )}
    </Notice>
  );
}

function First({ of }: { readonly of: ReportedValue | null }) {
  return of === null ? <>not there</> : <Figure of={of} />;
}
