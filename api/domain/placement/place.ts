import type { Sample } from '../composition/types.ts';
import { compose } from '../reference/compose.ts';
import { centreOf, coordinatesOf } from '../reference/scale.ts';
import type { ReferenceModel } from '../reference/types.ts';
import { project } from '../statistics/pca.ts';
import { placeInGroup } from './in-group.ts';
import { nearestSherds } from './nearest.ts';
import { placementSentence } from './sentence.ts';
import type { Placement } from './types.ts';

/**
 * Places a sample among the groups of a reference model: composition on the model's oxides, coordinates and scores
 * (components fitted on the references alone), and against each group the distance to its centre, D², membership
 * probability, rank among the members, a verdict and what each oxide adds; then the nearest sherds, and a sentence.
 * A sample that is itself a member is measured against the others of its group. A pure function of the model as
 * JSON, so a browser gets the same numbers. Throws when an oxide of the model was not measured in the sample, or is
 * below detection without a limit.
 *
 * @example
 * const amount = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null });
 * const sherd = (id, lead) => ({ id, label: id, group: 'g', role: 'reference', measured: 'paint', spots: 1, rawTotal: 100, amounts: { PbO: amount(lead), SiO2: amount(100 - lead) } });
 * const settings = { groups: ['g'], parts: null, scale: 'log-ratio', covariance: { kind: 'auto' }, replacement: { fraction: 0.65, limits: {} } };
 * const model = fitReference([58, 60, 61, 63, 64, 66, 59].map((lead, i) => sherd(`${i}`, lead)), settings, { g: 'Red' });
 * placeSample(model, sherd('tile', 30)).groups[0].verdict // 'outside'
 * placeSample(model, sherd('tile', 62)).groups[0].verdict // 'inside'
 */
export function placeSample(model: ReferenceModel, sample: Sample): Placement {
  const { id, label, spots } = sample;
  const { parts, replaced } = compose(sample, model.parts, model.settings.replacement);
  const coordinates = coordinatesOf(model, parts);
  const scores = project(coordinates, { means: centreOf(model), loadings: model.pca.loadings });
  const located = { id, parts, coordinates, replaced: replaced.map((r) => r.oxide) };
  const groups = model.groups
    .map((group) => placeInGroup(located, group, model))
    .sort((a, b) => a.distance - b.distance);
  const placement = {
    id,
    label,
    spots,
    parts,
    coordinates,
    scores,
    groups,
    nearest: nearestSherds({ id, coordinates, scores }, model),
    replaced: replaced.map(({ oxide, limit, by }) => ({ oxide, limit, by })),
  };
  return { ...placement, sentence: placementSentence(placement) };
}
