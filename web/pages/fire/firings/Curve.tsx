import { useMemo } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { firingCaption } from '../../../../api/figures/captions-firing.ts';
import { firingCurve, firingCurveHeight } from '../../../../api/figures/firing-curve.ts';
import { firingCurveData } from '../../../../api/figures/firing-curve-data.ts';
import { CaptionedFigure } from '../../../parts/figure/CaptionedFigure.tsx';
import { FileChoices } from '../../../parts/figure/FileChoices.tsx';
import { firingFigureAddress } from '../../../queries/figures.ts';

/** The log and the readings of a firing against time. */
export function Curve({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const data = useMemo(() => firingCurveData(firing), [firing]);
  const untimed = firing.readings.filter((one) => one.at === null).length;
  const drawn = data.readings.length + data.curves.length > 0;
  if (!drawn && untimed === 0) return null;
  return (
    <section className="stack tight" aria-label="Curve of the firing">
      {drawn && (
        <>
          <CaptionedFigure
            figure={firingCurve}
            height={firingCurveHeight}
            data={data}
            caption={firingCaption(firing)}
          />
          <FileChoices
            figures={[{ id: 'curve', label: 'Curve' }]}
            from={{ address: (file, sheet) => firingFigureAddress(study, firing.id, file, sheet) }}
          />
        </>
      )}
      {untimed > 0 && <p className="faint">{untimed} of the readings have no time and are not drawn.</p>}
    </section>
  );
}
