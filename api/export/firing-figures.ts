import type { FigureSheet } from '../contract/figure.ts';
import { RequirementError } from '../domain/requirement.ts';
import { type CaptionedFiring, comparedCaption, firingCaption } from '../figures/captions-firing.ts';
import { firingCurve, firingCurveHeight } from '../figures/firing-curve.ts';
import { comparedCurvesData, firingCurveData } from '../figures/firing-curve-data.ts';
import { type Prepared, prepared } from './prepared.ts';

/** Sets up the curve of a firing on its sheet; throws where there is no reading with a time. */
export function prepareFiringCurve(firing: CaptionedFiring, look: FigureSheet): Prepared {
  const data = { ...firingCurveData(firing), title: `Temperature of ${firing.name}` };
  if (data.readings.length + data.curves.length === 0)
    throw new RequirementError('a curve of a firing shows readings with a time; this firing has none');
  return prepared(firingCurve, data, { look, caption: firingCaption(firing), height: firingCurveHeight });
}

/** Sets up the curves of several firings over one another. */
export function prepareComparedCurves(
  curves: Parameters<typeof comparedCurvesData>[1],
  look: FigureSheet,
): Prepared {
  const data = { ...comparedCurvesData('compared', curves), title: 'Temperature of firings compared' };
  return prepared(firingCurve, data, { look, caption: comparedCaption(curves), height: firingCurveHeight });
}
