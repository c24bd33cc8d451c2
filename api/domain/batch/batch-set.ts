import { clrInverse } from '../composition/log-ratio.ts';
import { RequirementError } from '../requirement.ts';
import { quantile } from '../statistics/moments.ts';
import { type RandomStream, randomStream } from '../statistics/random.ts';
import { LEFT_OUT } from './few-materials.ts';
import { firedParts, fitRecipe } from './recipe-fit.ts';
import { type RecipeModel, type RecipeProblem, recipeModel } from './recipe-model.ts';
import { insideSpread, type TargetSpread } from './target-spread.ts';

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

/** How much of one material the batches inside the group take, wt% of the dry batch. */
export interface MaterialRange {
  readonly id: string;
  readonly name: string;
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly least: number;
  readonly most: number;
  /** Share of the batches that use it at all, 0–1. */
  readonly used: number;
}

/** Two materials that move together or against each other across the batches. */
export interface MaterialTie {
  readonly first: string;
  readonly second: string;
  readonly correlation: number;
  readonly words: string;
}

export interface BatchSet {
  readonly draws: number;
  /** Draws whose nearest batch fires to a composition inside the group. */
  readonly inside: number;
  /** 5 %, 50 %, 95 % and extremes over the batches inside; empty when there is none. */
  readonly materials: readonly MaterialRange[];
  readonly ties: readonly MaterialTie[];
  readonly words: string;
}

/**
 * The set of batches that land inside a ware group: targets are drawn as new members would fall (in log-ratios,
 * multivariate t for what n members tell of centre and spread), the nearest batch by Aitchison distance is found for each, and those that fire to a composition
 * inside the group's edge are kept. A generator that yields progress every `chunk` draws and returns the set, so
 * that a worker can report and be stopped between chunks; the same seed gives the same set. The problem's own
 * target is not used. Throws on draws that are no whole number from 1 to 100,000.
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
  const centre = modelFor(problem, spread, clrInverse(spread.mean));
  const stream = randomStream(seed);
  const kept: Float64Array[] = [];
  const start = fitRecipe(centre, 'distance').x;
  for (let done = 1; done <= draws; done++) {
    const target = Float64Array.from(clrInverse(drawClr(spread, stream)));
    const fit = fitRecipe({ ...centre, target }, 'distance', { start, tolerance: 1e-5 });
    if (landsInside(centre, fit.x, spread)) kept.push(fit.x);
    if (done % chunk === 0 && done < draws) yield { done, of: draws };
  }
  return summary(problem, { kept, draws, spread });
}

function modelFor(
  problem: Omit<RecipeProblem, 'target'>,
  spread: TargetSpread,
  centre: readonly number[],
): RecipeModel {
  const parts = Object.fromEntries(spread.parts.map((oxide, j) => [oxide, centre[j]!]));
  return recipeModel({ ...problem, target: { parts } });
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

interface Found {
  readonly kept: readonly Float64Array[];
  readonly draws: number;
  readonly spread: TargetSpread;
}

function summary({ materials }: Omit<RecipeProblem, 'target'>, { kept, draws, spread }: Found): BatchSet {
  const inside = kept.length;
  const share = Math.round((100 * inside) / draws);
  if (inside === 0)
    return {
      draws,
      inside,
      materials: [],
      ties: [],
      words: `None of ${draws} targets drawn from ${spread.name} can be reached with these materials: see which oxides cannot be met.`,
    };
  const ranges = materials
    .map(({ id, name }, k) =>
      rangeOf(
        { id, name },
        kept.map((x) => x[k]!),
      ),
    )
    .filter((range) => range.used > 0);
  const columns = materials
    .map(({ name }, k) => ({ name, values: kept.map((x) => x[k]!) }))
    .filter((c) => c.values.some((v) => v > LEFT_OUT));
  return {
    draws,
    inside,
    materials: ranges,
    ties: tiesOf(columns),
    words: `${inside} of ${draws} targets drawn from ${spread.name} (${share} %) are met by a batch that lands ${spread.words}. Each is the nearest batch to one target: other mixtures of like materials may land there too.`,
  };
}

function rangeOf(of: { id: string; name: string }, values: readonly number[]): MaterialRange {
  return {
    ...of,
    low: quantile(values, 0.05),
    median: quantile(values, 0.5),
    high: quantile(values, 0.95),
    least: Math.min(...values),
    most: Math.max(...values),
    used: values.filter((v) => v > LEFT_OUT).length / values.length,
  };
}

/** Correlations weaker than this are not worth a sentence. */
const TIED = 0.7;

function tiesOf(columns: readonly { name: string; values: readonly number[] }[]): MaterialTie[] {
  const ties: MaterialTie[] = [];
  columns.forEach((first, i) => {
    for (const second of columns.slice(i + 1)) {
      const correlation = correlationOf(first.values, second.values);
      if (!(Math.abs(correlation) >= TIED)) continue;
      const words = `more ${first.name} goes with ${correlation > 0 ? 'more' : 'less'} ${second.name}`;
      ties.push({ first: first.name, second: second.name, correlation, words });
    }
  });
  return ties.sort((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
}

function correlationOf(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [a, b].map((v) => v.reduce((sum, x) => sum + x, 0) / v.length);
  let [aa, bb, ab] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i]! - meanA!, b[i]! - meanB!];
    [aa, bb, ab] = [aa + x * x, bb + y * y, ab + x * y];
  }
  return ab / Math.sqrt(aa * bb);
}
