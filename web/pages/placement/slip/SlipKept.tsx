import type { Comparison } from '../../../../api/contract/placement.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { shareWords, sidesOf, stateOf } from './words.ts';

/** What slip was drawn off in a comparison that is kept. */
export function SlipKept({
  result,
  replica,
}: {
  readonly result: Comparison;
  readonly replica: { readonly id: string; readonly label: string };
}) {
  const drawn = result.slip?.find(({ specimen }) => specimen === replica.id) ?? null;
  return (
    <section className="sheet slip" aria-labelledby="slip-heading">
      <h2 id="slip-heading">Slip in the paint of {replica.label}</h2>
      {drawn && (
        <p>
          Drawn off: f = {shareWords(drawn)} (share by mass) of the {drawn.slip}, {drawn.from}.
          {drawn.spent.length > 0 && ` Spent: ${drawn.spent.map(showAnalyte).join(', ')}.`}
        </p>
      )}
      <p className="small">{sidesOf(result, replica.label, stateOf(drawn)).sentence}</p>
    </section>
  );
}
