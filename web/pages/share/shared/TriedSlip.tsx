import { SlipDrawing } from '../../placement/slip/SlipDrawing.tsx';
import type { SlipSectionProps } from '../../placement/slip/section-props.ts';

/** The slip panel of a visitor: nothing is asked of the study behind it. */
export function TriedSlip(at: SlipSectionProps) {
  return (
    <section className="sheet slip" aria-labelledby="slip-heading">
      <h2 id="slip-heading">Slip in the paint of {at.replica.label}</h2>
      <p className="small faint">
        Try more or less of it: the placement is computed again in your browser, and what was shared stays as
        it is.
      </p>
      <SlipDrawing {...at} withSigma={false} />
    </section>
  );
}
