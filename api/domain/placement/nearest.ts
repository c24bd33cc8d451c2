import { centreOf } from '../reference/scale.ts';
import { distanceOff } from '../reference/spread.ts';
import type { Member, ReferenceModel } from '../reference/types.ts';
import type { NearSherd } from './types.ts';

/** How many of the nearest sherds are listed. */
const LISTED = 10;

/** A sample on a model's components. */
export interface Scored {
  readonly id: string;
  readonly coordinates: readonly number[];
  readonly scores: readonly number[];
}

function squared(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += (a[k]! - b[k]!) ** 2;
  return sum;
}

function firstFew(members: readonly Member[], distances: Float64Array): number[] {
  const few: number[] = [];
  for (let i = 0; i < members.length; i++) {
    if (few.length === LISTED && !(distances[i]! < distances[few.at(-1)!]!)) continue;
    let at = few.length;
    while (at > 0 && distances[i]! < distances[few[at - 1]!]!) at--;
    few.splice(at, 0, i);
    few.length = Math.min(few.length, LISTED);
  }
  return few;
}

/**
 * The ten sherds nearest to a sample in the working scale (Aitchison distance for log-ratios), nearest first, itself
 * not counted. Distances between scores on all components are distances in the working scale; what of the sample
 * lies off the components is the same towards every sherd.
 *
 * @example
 * const member = (id, score) => ({ id, label: id, group: 'g', parts: [], scores: [score] });
 * const model = { mean: [0, 0], sd: null, pca: { loadings: [[1, 0]] }, members: [member('a', 1), member('b', 5)] };
 * nearestSherds({ id: 's', coordinates: [5, 2], scores: [5] }, model) // [{ id: 'b', label: 'b', group: 'g', distance: 2 }, { id: 'a', label: 'a', group: 'g', distance: 4.472136 }]
 */
export function nearestSherds(sample: Scored, model: ReferenceModel): NearSherd[] {
  const members = model.members.filter((m) => m.id !== sample.id);
  const off = distanceOff(sample.coordinates, { mean: centreOf(model), axes: model.pca.loadings });
  const distances = Float64Array.from(members, (m) => squared(m.scores, sample.scores) + off * off);
  return firstFew(members, distances).map((i) => {
    const { id, label, group } = members[i]!;
    return { id, label, group, distance: Math.sqrt(distances[i]!) };
  });
}
