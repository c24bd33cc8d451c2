import { useMemo } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { firingCurve, firingCurveHeight } from '../../../../api/figures/firing-curve.ts';
import { firingCurveData } from '../../../../api/figures/firing-curve-data.ts';
import { FigureDownload } from '../../../parts/figure/FigureDownload.tsx';
import { FigureView } from '../../../parts/figure/FigureView.tsx';
import { useSourceOf } from '../../../parts/figure/useSource.ts';

/** The log and the readings of a firing against time. */
export function Curve({ firing }: { readonly firing: FiringRecord }) {
  const data = useMemo(() => firingCurveData(firing), [firing]);
  const source = useSourceOf(data);
  const untimed = firing.readings.filter((one) => one.at === null).length;
  const drawn = data.readings.length + data.curves.length > 0;
  if (!drawn && untimed === 0) return null;
  return (
    <section className="stack tight" aria-label="Curve of the firing">
      {drawn && (
        <div className="figure-sheet stack tight">
          <FigureView figure={firingCurve} source={source} height={firingCurveHeight} />
          <p className="faint small">
            {data.curves.length > 0 && 'Lines: the log, channel by channel, with the peak and its error. '}
            {data.readings.length > 0 && 'Dots with bars: readings by hand. '}
            {data.curves.some((one) => one.spikes?.length) && 'Crosses: jumps that were left out.'}
          </p>
          <div>
            <FigureDownload figure={firingCurve} source={source} height={firingCurveHeight} name="firing" />
          </div>
        </div>
      )}
      {untimed > 0 && <p className="faint">{untimed} of the readings have no time and are not drawn.</p>}
    </section>
  );
}
