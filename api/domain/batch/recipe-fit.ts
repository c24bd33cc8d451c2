import { RequirementError } from '../requirement.ts';
import { searchBox } from './box-least-squares.ts';
import type { RecipeModel } from './recipe-model.ts';

/**
 * `distance`: Aitchison distance, over the oxides within reach; `error`: root of the summed squares of
 * (fired − target)/σ, over all.
 */
export type RecipeMetric = 'distance' | 'error';

export interface RecipeFit {
  /** wt% of the dry batch, one a material, summing to 100. */
  readonly x: Float64Array;
  /** Square of the metric. */
  readonly value: number;
  readonly rounds: number;
  readonly converged: boolean;
}

export interface FitOptions {
  /** A batch to start from, within bounds. */
  readonly start?: Float64Array;
  /** Relative gain below which the search ends. */
  readonly tolerance?: number;
}

interface Local {
  readonly residual: Float64Array;
  /** Material after material, as `yields`. */
  readonly slopes: Float64Array;
  readonly value: number;
}

const MOST_ROUNDS = 80;

/**
 * The batch (wt% dry) nearest to a target by one metric, by Gauss–Newton from a relative least-squares start: each
 * round solves a bounded least-squares problem for the linearised fired composition and halves the step until the
 * metric falls. Both metrics look at the closed composition, so only proportions matter. Throws when nothing in the
 * batch holds a target oxide.
 * @example
 * const two = ['SiO2', 'PbO'].map((f) => materialFromFormula({ id: f, name: f }, f))
 * fitRecipe(recipeModel({ target: { parts: { SiO2: 25, PbO: 75 } }, materials: two, fire: fireAt({ celsius: 850 }) }), 'distance').x // [25, 75]
 */
export function fitRecipe(model: RecipeModel, metric: RecipeMetric, options: FitOptions = {}): RecipeFit {
  if (!model.yields.some((y, at) => y > 0 && model.upper[Math.floor(at / model.parts.length)]! > 0))
    throw new RequirementError('a recipe needs a material that holds an oxide of the target; none does');
  const { tolerance = 1e-10 } = options;
  let x = options.start?.slice() ?? linearStart(model);
  let here = linearise(model, metric, x);
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    const wanted = newtonPoint(model, here, x);
    const next = shorten(model, metric, { from: x, to: wanted, value: here.value });
    if (!next) return { x, value: here.value, rounds: round, converged: true };
    const gain = here.value - next.value;
    x = next.x;
    here = linearise(model, metric, x);
    if (gain <= tolerance * here.value + 1e-18)
      return { x, value: here.value, rounds: round, converged: true };
  }
  return { x, value: here.value, rounds: MOST_ROUNDS, converged: false };
}

/** Least squares of fired/target, each oxide counting alike. */
function linearStart(model: RecipeModel): Float64Array {
  const { parts, target, floor, yields } = model;
  const D = parts.length;
  const { totals } = model;
  const columns = yields.map((y, at) => {
    const k = Math.floor(at / D);
    return (y + (floor / 100) * totals[k]!) / (target[at - k * D]! + floor);
  });
  return searchBox(boxProblem(model, columns, new Float64Array(D).fill(0.9))).x;
}

function boxProblem({ lower, upper }: RecipeModel, columns: Float64Array, right: Float64Array) {
  const sum = { weights: new Float64Array(lower.length).fill(1), total: 100 };
  return { columns, right, lower, upper, sum };
}

/** The metric does not change along x itself, so the linearised problem is least ‖residual + slopes·x′‖. */
function newtonPoint(model: RecipeModel, here: Local, x: Float64Array): Float64Array {
  const right = here.residual.map((r) => -r);
  return searchBox({ ...boxProblem(model, here.slopes, right), start: x }).x;
}

function shorten(
  model: RecipeModel,
  metric: RecipeMetric,
  { from, to, value }: { from: Float64Array; to: Float64Array; value: number },
): { x: Float64Array; value: number } | null {
  for (let share = 1; share > 1e-7; share /= 2) {
    const x = share === 1 ? to : from.map((v, k) => v + share * (to[k]! - v));
    const found = valueAt(model, metric, x);
    if (found < value) return { x, value: found };
  }
  return null;
}

/**
 * Grams of each target oxide from 100 g of dry batch.
 * @example
 * const two = ['SiO2', 'PbO'].map((f) => materialFromFormula({ id: f, name: f }, f))
 * firedParts(recipeModel({ target: { parts: { SiO2: 25, PbO: 75 } }, materials: two, fire: fireAt({ celsius: 850 }) }), new Float64Array([40, 60])) // [40, 60]
 */
export function firedParts({ parts, ids, yields }: RecipeModel, x: Float64Array): Float64Array {
  const D = parts.length;
  const y = new Float64Array(D);
  for (let k = 0; k < ids.length; k++)
    if (x[k] !== 0) for (let j = 0; j < D; j++) y[j]! += yields[k * D + j]! * x[k]!;
  return y;
}

/**
 * Square of a metric at a batch (wt% dry). Oxides out of reach are no part of the log-ratios; they add what their
 * absence costs.
 * @example
 * const two = ['SiO2', 'PbO'].map((f) => materialFromFormula({ id: f, name: f }, f))
 * valueAt(recipeModel({ target: { parts: { SiO2: 50, PbO: 50 } }, materials: two, fire: fireAt({ celsius: 850 }) }), 'error', new Float64Array([45, 55])) // 8
 */
export function valueAt(model: RecipeModel, metric: RecipeMetric, x: Float64Array): number {
  return squareOf(model, metric, residualAt(model, metric, firedParts(model, x)));
}

function squareOf({ absence }: RecipeModel, metric: RecipeMetric, residual: Float64Array): number {
  return residual.reduce((sum, r) => sum + r * r, metric === 'distance' ? absence : 0);
}

function residualAt(model: RecipeModel, metric: RecipeMetric, y: Float64Array): Float64Array {
  const { target, sigma, floor, held } = model;
  const total = y.reduce((sum, v) => sum + v, 0);
  if (metric === 'error') return y.map((v, j) => ((100 * v) / total - target[j]!) / sigma[j]!);
  const logs = y.map((v, j) => (held[j] ? Math.log((v + (floor * total) / 100) / (target[j]! + floor)) : 0));
  const mean = logs.reduce((sum, v) => sum + v, 0) / countHeld(model);
  return logs.map((v, j) => (held[j] ? v - mean : 0));
}

const countHeld = ({ held }: RecipeModel) => held.reduce((sum, h) => sum + h, 0) || 1;

function linearise(model: RecipeModel, metric: RecipeMetric, x: Float64Array): Local {
  const y = firedParts(model, x);
  const residual = residualAt(model, metric, y);
  const value = squareOf(model, metric, residual);
  return { residual, value, slopes: metric === 'error' ? errorSlopes(model, y) : logSlopes(model, y) };
}

function errorSlopes(model: RecipeModel, y: Float64Array): Float64Array {
  const D = y.length;
  const total = y.reduce((sum, v) => sum + v, 0);
  const { totals } = model;
  const slopes = new Float64Array(model.yields.length);
  for (let k = 0; k < totals.length; k++)
    for (let j = 0; j < D; j++) {
      const moved = model.yields[k * D + j]! - (y[j]! / total) * totals[k]!;
      slopes[k * D + j] = (100 * moved) / (total * model.sigma[j]!);
    }
  return slopes;
}

function logSlopes(model: RecipeModel, y: Float64Array): Float64Array {
  const D = y.length;
  const share = model.floor / 100;
  const total = y.reduce((sum, v) => sum + v, 0);
  const scale = y.map((v, j) => (model.held[j] ? 1 / (v + share * total) : 0));
  const count = countHeld(model);
  const { totals } = model;
  const slopes = new Float64Array(model.yields.length);
  for (let k = 0; k < totals.length; k++) {
    let mean = 0;
    for (let j = 0; j < D; j++) {
      const slope = scale[j]! * (model.yields[k * D + j]! + share * totals[k]!);
      slopes[k * D + j] = slope;
      mean += slope / count;
    }
    for (let j = 0; j < D; j++) if (model.held[j]) slopes[k * D + j]! -= mean;
  }
  return slopes;
}
