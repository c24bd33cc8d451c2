import { useMemo } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { firingCurve, firingCurveHeight } from '../../../../api/figures/firing-curve.ts';
import { firingCurveData } from '../../../../api/figures/firing-curve-data.ts';
import { FigureDownload } from '../../../parts/figure/FigureDownload.tsx';
import { FigureView } from '../../../parts/figure/FigureView.tsx';
import { useSourceOf } from '../../../parts/figure/useSource.ts';

/** The readings of a firing against time, with the hottest in words. */
export function Curve({ firing }: { readonly firing: FiringRecord }) {
  const data = useMemo(() => firingCurveData(firing), [firing]);
  const source = useSourceOf(data);
  const unreckoned = firing.readings.filter((one) => one.reason !== null);
  const untimed = firing.readings.filter((one) => one.at === null).length;
  if (firing.readings.length === 0) return null;
  const bounds = firing.readings.flatMap((one) => one.bounds ?? []);
  const peak = bounds.reduce<(typeof bounds)[number] | null>(
    (best, one) => (best === null || one.value > best.value ? one : best),
    null,
  );
  return (
    <div className="stack tight">
      {peak && (
        <p>
          Hottest reading: {Math.round(peak.value)} °C; by its instrument’s error it was{' '}
          {Math.round(peak.low)} to {Math.round(peak.high)} °C. Readings by hand can miss the true top.
        </p>
      )}
      {data.readings.length > 0 && (
        <div className="figure-sheet stack tight">
          <FigureView figure={firingCurve} source={source} height={firingCurveHeight} />
          <div>
            <FigureDownload figure={firingCurve} source={source} height={firingCurveHeight} name="firing" />
          </div>
        </div>
      )}
      {untimed > 0 && <p className="faint">{untimed} of the readings have no time and are not drawn.</p>}
      {unreckoned.map((one) => (
        <p key={`${one.at} ${one.reading.celsius}`} className="faint">
          {one.reading.celsius} °C: {one.reason}
        </p>
      ))}
    </div>
  );
}
