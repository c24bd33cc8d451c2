import type { Sample } from '../composition/types.ts';
import { compose } from '../reference/compose.ts';
import { coordinatesOf } from '../reference/scale.ts';
import type { ReferenceModel } from '../reference/types.ts';
import { project } from '../statistics/pca.ts';
import { type DrawOffLimit, largestDrawOff } from './draw-off-limit.ts';
import type { DrawOffOptions } from './mixing.ts';
import { drawOffSample } from './sample.ts';
import type { Analysed } from './types.ts';

/** Where a sample goes on the scores plot as more and more slip is drawn off it. */
export interface MixingPath {
  readonly limit: DrawOffLimit;
  readonly points: readonly { readonly f: number; readonly scores: readonly number[] }[];
}

/**
 * The path of a sample across a model's scores as slip is drawn off, f from 0 to the largest possible, in equal steps
 * of f (a curve in log-ratio space: slip mixes in mass). Throws when an oxide of the model was not measured in the
 * slip, unless `unmeasured` is `none`.
 * @example
 * of = (value) => ({ value, limit: null, sigma: value / 50, sigmaBasis: 'stated', resolution: null })
 * sherd = (id, lead) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 100, amounts: { PbO: of(lead), SiO2: of(100 - lead) } })
 * settings = { groups: ['g'], parts: null, scale: 'log-ratio', covariance: { kind: 'auto' }, replacement: { fraction: 0.65, limits: {} } }
 * model = fitReference([50, 60, 70].map((lead, i) => sherd(`${i}`, lead)), settings, {})
 * path = mixingPath(model, sherd('tile', 45), { slip: { label: 'S', spots: 1, amounts: { PbO: of(1), SiO2: of(99) } }, steps: 10 })
 * path.limit.oxide // 'SiO2'
 * path.points.length // 11
 */
export function mixingPath(
  model: ReferenceModel,
  sample: Sample,
  options: DrawOffOptions & { readonly slip: Analysed; readonly steps?: number },
): MixingPath {
  const { slip, steps = 60, ...drawing } = options;
  const limit = largestDrawOff(sample.amounts, slip.amounts, drawing);
  const means = model.sd ? model.mean.map(() => 0) : model.mean;
  const points = Array.from({ length: steps + 1 }, (_, i) => {
    // A hair inside the limit, where rounding cannot push an oxide past it.
    const f = (limit.f * (1 - 1e-9) * i) / steps;
    const { sample: left } = drawOffSample(sample, slip, { f, ...drawing });
    const { parts } = compose(left, model.parts, model.settings.replacement);
    const scores = project(coordinatesOf(model, parts), { means, loadings: model.pca.loadings });
    return { f, scores };
  });
  return { limit, points };
}
