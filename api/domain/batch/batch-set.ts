import { clrInverse } from '../composition/log-ratio.ts';
import { RequirementError } from '../requirement.ts';
import { type RandomStream, randomStream } from '../statistics/random.ts';
import { fewMaterials, LEFT_OUT } from './few-materials.ts';
import { firedParts, fitRecipe } from './recipe-fit.ts';
import { type RecipeModel, type RecipeProblem, recipeModel, restrictRecipe } from './recipe-model.ts';
import { type BatchSet, describeSet } from './set-summary.ts';
import { insideSpread, type TargetSpread } from './target-spread.ts';
import type { Material } from './types.ts';

export interface BatchSetOptions {
  readonly draws: number;
  readonly seed: number;
  /** Draws between two reports of progress. */
  readonly chunk: number;
}
export const BATCH_SET: BatchSetOptions = { draws: 2000, seed: 1, chunk: 100 };

export interface BatchSetProgress {
  readonly done: number;
  readonly of: number;
}

/**
 * The set of batches that land inside a ware group: targets are drawn as new members would fall (in log-ratios,
 * multivariate t for what n members tell of centre and spread), the nearest batch by Aitchison distance is found for
 * each, and those that fire to a composition inside the group's edge are kept. With `atMost`, the materials are
 * chosen once, for the centre. A generator that yields progress every `chunk` draws and returns the set, so that a
 * worker can report and be stopped between chunks; the same seed gives the same set. Throws on draws that are no
 * whole number from 1 to 100,000.
 * @example
 * batchSet({ materials: [], fire: fireAt({ celsius: 850 }) }, { parts: [] }, { draws: 0, seed: 1, chunk: 1 }).next() // throws 1 to 100000
 */
export function* batchSet(
  problem: Omit<RecipeProblem, 'target'>,
  spread: TargetSpread,
  options: Partial<BatchSetOptions> = {},
): Generator<BatchSetProgress, BatchSet> {
  const { draws, seed, chunk } = { ...BATCH_SET, ...options };
  if (!(Number.isInteger(draws) && draws >= 1 && draws <= 100_000))
    throw new RequirementError(
      `a set of batches needs a whole number of draws from 1 to 100000; found ${draws}`,
    );
  const { materials, model: centre } = aboutCentre(problem, spread);
  const stream = randomStream(seed);
  const kept: Float64Array[] = [];
  const start = fitRecipe(centre, 'distance').x;
  for (let done = 1; done <= draws; done++) {
    const target = Float64Array.from(clrInverse(drawClr(spread, stream)));
    const fit = fitRecipe({ ...centre, target }, 'distance', { start, tolerance: 1e-5 });
    if (landsInside(centre, fit.x, spread)) kept.push(fit.x);
    if (done % chunk === 0 && done < draws) yield { done, of: draws };
  }
  return describeSet(materials, { kept, draws, spread });
}

/** The recipe for the group's centre, on the materials that the draws may use. */
function aboutCentre(
  problem: Omit<RecipeProblem, 'target'>,
  spread: TargetSpread,
): { materials: readonly Material[]; model: RecipeModel } {
  const centre = clrInverse(spread.mean);
  const target = { parts: Object.fromEntries(spread.parts.map((oxide, j) => [oxide, centre[j]!])) };
  const model = recipeModel({ ...problem, target });
  if (problem.atMost === undefined) return { materials: problem.materials, model };
  const { x } = fewMaterials(model, 'distance', problem.atMost);
  const places = [...x.keys()].filter((k) => x[k]! > LEFT_OUT);
  return { materials: places.map((k) => problem.materials[k]!), model: restrictRecipe(model, places) };
}

function drawClr({ mean, axes, factor, tails }: TargetSpread, stream: RandomStream): number[] {
  const stretch = tails ? tails.scale / rootMeanSquare(tails.df, stream) : 1;
  const z = axes.map(() => stretch * stream.normal());
  const clr = [...mean];
  for (let i = 0, at = 0; i < axes.length; i++) {
    let along = 0;
    for (let j = 0; j <= i; j++, at++) along += factor[at]! * z[j]!;
    for (let j = 0; j < clr.length; j++) clr[j]! += along * axes[i]![j]!;
  }
  return clr;
}

function rootMeanSquare(df: number, stream: RandomStream): number {
  let sum = 0;
  for (let i = 0; i < df; i++) sum += stream.normal() ** 2;
  return Math.sqrt(sum / df);
}

function landsInside(model: RecipeModel, x: Float64Array, spread: TargetSpread): boolean {
  const y = firedParts(model, x);
  const total = y.reduce((sum, v) => sum + v, 0);
  const logs = Array.from(y, (v) => Math.log(Math.max(v, (model.floor / 100) * total)));
  const mean = logs.reduce((sum, v) => sum + v, 0) / logs.length;
  return insideSpread(
    logs.map((v) => v - mean),
    spread,
  );
}
