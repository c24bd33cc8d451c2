import type { ReferenceModel } from '../../../../api/domain/reference/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Tick } from '../../../parts/Tick.tsx';
import { fallenOutReason } from '../words.ts';

type Known = Pick<ReferenceModel, 'parts' | 'fallenOut'>;

/** Which oxides are compared, and why each of the others is not. */
export function OxidesChoice(at: {
  readonly known: Known;
  readonly chosen: readonly string[] | null;
  readonly onChange: (chosen: readonly string[] | null) => void;
}) {
  const used = new Set(at.chosen ?? at.known.parts);
  const reasons = new Map(at.known.fallenOut.map((out) => [out.oxide, fallenOutReason(out)]));
  const oxides = [...new Set([...at.known.parts, ...(at.chosen ?? []), ...reasons.keys()])];
  const toggle = (oxide: string, on: boolean) =>
    at.onChange(oxides.filter((one) => (one === oxide ? on : used.has(one))));
  return (
    <fieldset className="choices">
      <legend className="unseen">Oxides compared</legend>
      <p className="hint small faint">
        {at.chosen === null
          ? 'Those measured in every sherd and replica. Ticking another leaves out the specimens that lack it.'
          : 'Chosen by hand: specimens that lack one of them are left out.'}
      </p>
      <div className="tick-list">
        {oxides.map((oxide) => {
          const reason = reasons.get(oxide);
          return (
            <Tick key={oxide} isSelected={used.has(oxide)} onChange={(on) => toggle(oxide, on)}>
              {showAnalyte(oxide)}
              {reason && <span className="hint small faint"> {reason}</span>}
            </Tick>
          );
        })}
      </div>
      {at.chosen !== null && (
        <div>
          <Button look="quiet" onPress={() => at.onChange(null)}>
            All measured everywhere
          </Button>
        </div>
      )}
    </fieldset>
  );
}
