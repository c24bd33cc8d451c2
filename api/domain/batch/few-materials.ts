import { RequirementError } from '../requirement.ts';
import { subsets } from './feasible-ranges.ts';
import { fitRecipe, type RecipeFit, type RecipeMetric } from './recipe-fit.ts';
import { type RecipeModel, restrictRecipe } from './recipe-model.ts';

/** A fit with at most so many materials, and how sure it is that no other choice does better. */
export interface FewFit extends RecipeFit {
  readonly how: string;
  /** Every combination was tried. */
  readonly proven: boolean;
}

/** wt% of the dry batch below which a material counts as left out. */
export const LEFT_OUT = 1e-4;
const MOST_COMBINATIONS: Readonly<Record<RecipeMetric, number>> = { error: 3000, distance: 800 };
/** Loose while choosing; the choice is fitted again in full. */
const CHOOSING = { tolerance: 1e-6 };

/**
 * The nearest batch of at most `most` materials. Where there are few combinations all are tried (`proven`); else
 * materials are dropped one at a time, each time the one least missed, then swapped one for one while that helps,
 * which finds a good batch but not surely the best. Throws when bounds ask for more materials than `most`.
 * @example
 * const shelf = ['SiO2', 'PbO', 'PbCO3'].map((f) => materialFromFormula({ id: f, name: f }, f))
 * const model = recipeModel({ target: { parts: { SiO2: 25, PbO: 75 } }, materials: shelf, fire: fireAt({ celsius: 850 }) })
 * fewMaterials(model, 'distance', 2).proven // true
 * fewMaterials(model, 'distance', 0) // throws at least 1
 */
export function fewMaterials(model: RecipeModel, metric: RecipeMetric, most: number): FewFit {
  const required = places(model).filter((k) => model.lower[k]! > 0);
  const free = places(model).filter((k) => model.lower[k] === 0 && model.upper[k]! > 0);
  if (!(Number.isInteger(most) && most >= 1))
    throw new RequirementError(`a recipe needs at least 1 material; at most ${most} were allowed`);
  if (required.length > most)
    throw new RequirementError(
      `at most ${most} materials need fewer fixed parts; bounds ask for ${required.length}`,
    );
  const full = fitRecipe(model, metric);
  if (inUse(full).length <= most) return { ...full, how: 'no more were needed', proven: true };
  const size = Math.min(most - required.length, free.length);
  const chosen =
    combinations(free.length, size) <= MOST_COMBINATIONS[metric]
      ? bestOfAll({ model, metric }, required, { free, size })
      : byDropping({ model, metric }, inUse(full), { most, free });
  return { ...fitOn({ model, metric }, chosen.places, 1e-10)!, how: chosen.how, proven: chosen.proven };
}

interface Task {
  readonly model: RecipeModel;
  readonly metric: RecipeMetric;
}
interface Choice {
  readonly places: readonly number[];
  readonly how: string;
  readonly proven: boolean;
}

const places = (model: RecipeModel) => model.ids.map((_, k) => k);
const inUse = (fit: RecipeFit) => [...fit.x.keys()].filter((k) => fit.x[k]! > LEFT_OUT);

function combinations(n: number, k: number): number {
  let ways = 1;
  for (let i = 0; i < k; i++) ways = (ways * (n - i)) / (i + 1);
  return ways;
}

/** Fit on some materials, spread back over all; null where their bounds or oxides allow no batch. */
function fitOn(
  { model, metric }: Task,
  chosen: readonly number[],
  tolerance = CHOOSING.tolerance,
): RecipeFit | null {
  try {
    const fit = fitRecipe(restrictRecipe(model, chosen), metric, { tolerance });
    const x = new Float64Array(model.ids.length);
    chosen.forEach((k, i) => {
      x[k] = fit.x[i]!;
    });
    return { ...fit, x };
  } catch (problem) {
    if (problem instanceof RequirementError) return null;
    throw problem;
  }
}

function bestOfAll(
  task: Task,
  required: readonly number[],
  { free, size }: { free: readonly number[]; size: number },
): Choice {
  const tried = [...subsets(free.length, size)].map((picks) => [...required, ...picks.map((i) => free[i]!)]);
  const best = leastOf(task, tried);
  if (!best)
    throw new RequirementError(
      'a recipe needs bounds that so few materials can meet; none of the combinations does',
    );
  return { places: best.places, how: `all ${tried.length} combinations were tried`, proven: true };
}

function leastOf(task: Task, tried: readonly (readonly number[])[]) {
  let best: { places: readonly number[]; value: number } | null = null;
  for (const chosen of tried) {
    const fit = fitOn(task, chosen);
    if (fit && fit.value < (best?.value ?? Number.POSITIVE_INFINITY))
      best = { places: chosen, value: fit.value };
  }
  return best;
}

function byDropping(
  task: Task,
  start: readonly number[],
  { most, free }: { most: number; free: readonly number[] },
): Choice {
  let best = { places: start, value: Number.POSITIVE_INFINITY };
  while (best.places.length > most) {
    const tried = best.places
      .filter((k) => free.includes(k))
      .map((out) => best.places.filter((k) => k !== out));
    const next = leastOf(task, tried);
    if (!next)
      throw new RequirementError(
        'a recipe needs bounds that so few materials can meet; dropping any breaks them',
      );
    best = next;
  }
  for (let round = 0; round < 3; round++) {
    const tried = swaps(best.places, free);
    const next = leastOf(task, tried);
    if (!next || next.value >= best.value * (1 - 1e-6)) break;
    best = next;
  }
  return {
    places: best.places,
    how: 'materials were dropped one at a time, then swapped; not surely the best',
    proven: false,
  };
}

function swaps(chosen: readonly number[], free: readonly number[]): number[][] {
  const outside = free.filter((k) => !chosen.includes(k));
  return chosen
    .filter((k) => free.includes(k))
    .flatMap((out) => outside.map((into) => chosen.map((k) => (k === out ? into : k))));
}
