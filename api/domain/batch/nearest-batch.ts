import { elementOf } from '../chemistry/oxides.ts';
import { fireBatch } from './batch.ts';
import { type FewFit, fewMaterials, LEFT_OUT } from './few-materials.ts';
import { firedParts, fitRecipe, type RecipeMetric, valueAt } from './recipe-fit.ts';
import { type RecipeModel, type RecipeProblem, recipeModel } from './recipe-model.ts';
import type { BatchLine } from './types.ts';

/** One oxide of a target beside what the batch fires to, wt% closed on the target's oxides. */
export interface RecipeRow {
  readonly oxide: string;
  readonly target: number;
  readonly sigma: number;
  readonly fired: number;
  /** fired / target; null for a target of zero. */
  readonly factor: number | null;
  readonly judgement: 'met' | 'too low' | 'too high';
  /** Why it cannot be met with these materials; null when met. */
  readonly because: string | null;
}

export interface RecipeSolution {
  readonly metric: RecipeMetric;
  /** Grams for 100 g of dry batch, largest first. */
  readonly lines: readonly BatchLine[];
  readonly rows: readonly RecipeRow[];
  /** Aitchison distance from the target, the floor added to both; oxides out of reach add what absence costs. */
  readonly distance: number;
  /** Root mean square of (fired − target)/σ. */
  readonly error: number;
  /** Oxides that it fires to though the target does not name them, wt% of the fired paint, most first. */
  readonly besides: readonly { readonly oxide: string; readonly percent: number }[];
  readonly how: string;
  readonly proven: boolean;
  readonly warnings: readonly string[];
}

export interface NearestBatches {
  readonly byDistance: RecipeSolution;
  readonly byError: RecipeSolution;
  readonly warnings: readonly string[];
}

/**
 * The batches nearest to a target by Aitchison distance (proportions count, so traces weigh as much as bulk) and by
 * weighted oxide error (wt% count in units of σ), of the materials given, within bounds (wt% of the dry batch), with
 * fixed parts and at most so many materials. Only the target's oxides are weighed; what else comes along is named in
 * `besides`. Shows for both what cannot be met; an oxide that no mixture can bring
 * to its target is left out of the log-ratio fit, which it would otherwise pull out of shape. Non-negative least squares after
 * Lawson & Hanson (1974), Gauss–Newton for the rest. Throws as `recipeModel`, `fitRecipe` and `fewMaterials` do.
 * @example
 * const shelf = starterShelf().filter((m) => ['cerussite', 'quartz', 'kaolinite'].includes(m.id))
 * const near = nearestBatch({ target: { parts: { PbO: 60, SiO2: 34, Al2O3: 6 } }, materials: shelf, fire: fireAt({ celsius: 850 }) })
 * near.byDistance.lines.map((l) => l.amount) // [63.0364, 23.6318, 13.3317]
 * near.byDistance.distance < 1e-6 // true
 */
export function nearestBatch(problem: RecipeProblem): NearestBatches {
  const model = recipeModel(problem);
  const total = Object.values(problem.target.parts).reduce((sum, wt) => sum + wt, 0);
  const solve = (metric: RecipeMetric) =>
    solution(problem, model, { metric, fit: solveModel(model, metric, problem.atMost) });
  return {
    byDistance: solve('distance'),
    byError: solve('error'),
    warnings:
      total < 97 || total > 103
        ? [
            `The target sums to ${Number(total.toPrecision(4))} wt% and was closed to 100: what is missing is taken as absent.`,
          ]
        : [],
  };
}

function solveModel(model: RecipeModel, metric: RecipeMetric, atMost?: number): FewFit {
  if (atMost !== undefined) return fewMaterials(model, metric, atMost);
  return { ...fitRecipe(model, metric), how: 'any number of materials', proven: true };
}

function solution(
  problem: RecipeProblem,
  model: RecipeModel,
  { metric, fit }: { metric: RecipeMetric; fit: FewFit },
): RecipeSolution {
  const lines = problem.materials
    .map((material, k) => ({ material, amount: fit.x[k]! }))
    .filter((line) => line.amount > LEFT_OUT)
    .sort((a, b) => b.amount - a.amount);
  const besides = besidesOf(problem, model, lines);
  return {
    metric,
    lines,
    rows: rowsOf(problem, model, fit.x),
    besides,
    distance: settled(Math.sqrt(valueAt(model, 'distance', fit.x))),
    error: settled(Math.sqrt(valueAt(model, 'error', fit.x) / model.parts.length)),
    how: fit.how,
    proven: fit.proven,
    warnings: [
      ...(fit.converged ? [] : ['The search stopped before it settled: treat this batch as rough.']),
      ...besidesInWords(besides),
    ],
  };
}

/** Below it a fit has met its target and what is left is rounding. */
const ROUNDING = 1e-9;
const settled = (x: number) => (x < ROUNDING ? 0 : x);

/** wt% of the fired paint from which an oxide that was not asked for is named. */
const NAMED = 0.05;

function besidesOf({ fire }: RecipeProblem, { parts }: RecipeModel, lines: readonly BatchLine[]) {
  if (lines.length === 0) return [];
  const asked = new Set(parts.map(elementOf));
  return fireBatch(lines, fire)
    .oxides.filter(({ oxide, percent }) => percent >= NAMED && !asked.has(elementOf(oxide)))
    .map(({ oxide, percent }) => ({ oxide, percent }))
    .sort((a, b) => b.percent - a.percent);
}

function besidesInWords(besides: RecipeSolution['besides']): string[] {
  if (besides.length === 0) return [];
  const sum = besides.reduce((total, { percent }) => total + percent, 0);
  const named = besides.map(({ oxide, percent }) => `${oxide} ${percent.toFixed(1)}`).join(', ');
  return [
    `${sum.toFixed(1)} wt% of the fired paint is oxides that the target does not name: ${named}. Give them in the target, as 0 where they must stay out.`,
  ];
}

/** Difference in σ from which an oxide counts as not met. */
const NOT_MET = 2;

function rowsOf(problem: RecipeProblem, model: RecipeModel, x: Float64Array): RecipeRow[] {
  const y = firedParts(model, x);
  const total = y.reduce((sum, v) => sum + v, 0);
  return model.parts.map((oxide, j) => {
    const [target, sigma, fired] = [model.target[j]!, model.sigma[j]!, (100 * y[j]!) / total];
    const gap = (fired - target) / sigma;
    const judgement = Math.abs(gap) <= NOT_MET ? 'met' : gap < 0 ? 'too low' : 'too high';
    const factor = target > 0 ? fired / target : null;
    const because =
      judgement === 'met' ? null : reason(problem, oxide, { judgement, reach: model.reach[j]! });
    return { oxide, target, sigma, fired, factor, judgement, because };
  });
}

function reason(
  { materials, bounds }: RecipeProblem,
  oxide: string,
  { judgement, reach }: { judgement: RecipeRow['judgement']; reach: number },
): string {
  const element = elementOf(oxide)!;
  const holders = materials.filter((m) => (m.content.moles[element] ?? 0) > 0 && bounds?.[m.id]?.most !== 0);
  if (holders.length === 0) return `none of the chosen materials holds ${element}`;
  const names = holders.map((m) => m.name).join(', ');
  if (judgement === 'too high') return `it comes along with what else is needed from ${names}`;
  return `${names}: no mixture can pass ${Number(reach.toPrecision(3))} wt%, and more of it brings what comes along`;
}
