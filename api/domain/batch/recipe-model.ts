import { elementOf } from '../chemistry/oxides.ts';
import { RequirementError } from '../requirement.ts';
import { type Fire, fireContent, massPerAtom } from './fire.ts';
import type { Material } from './types.ts';

/** What a batch is to come near to, wt% of the fired paint; closed to 100 before use. */
export interface RecipeTarget {
  readonly parts: Readonly<Record<string, number>>;
  /** One standard deviation, wt%; by default the larger of 0.05 wt% and 5 % of the value. */
  readonly sigma?: Readonly<Record<string, number>>;
}

export interface RecipeProblem {
  readonly target: RecipeTarget;
  readonly materials: readonly Material[];
  readonly fire: Fire;
  /** wt% of the dry batch by material id; `least` = `most` fixes a part. */
  readonly bounds?: Readonly<Record<string, { readonly least?: number; readonly most?: number }>>;
  /** Greatest number of materials. */
  readonly atMost?: number;
  /** Amounts below this (wt% of the fired paint) count as this much, so that zeros have a logarithm. */
  readonly floor?: number;
}

/** The same in numbers. */
export interface RecipeModel {
  readonly parts: readonly string[];
  readonly ids: readonly string[];
  /** Grams of each target oxide from one gram of dry material, material after material. */
  readonly yields: Float64Array;
  /** Closed to 100. */
  readonly target: Float64Array;
  readonly sigma: Float64Array;
  readonly floor: number;
  /** Grams of target oxides, all together, from one gram of each material. */
  readonly totals: Float64Array;
  /** Largest share of each oxide, wt% of the fired paint, that any allowed mixture could reach. */
  readonly reach: Float64Array;
  /** 1 where the target lies within reach; other oxides are left out of the log-ratio fit. */
  readonly held: Uint8Array;
  /** Square of the Aitchison distance that the oxides out of reach add, were all others met. */
  readonly absence: number;
  /** wt% of the dry batch. */
  readonly lower: Float64Array;
  readonly upper: Float64Array;
}

export const RECIPE_FLOOR = 0.01;

/** σ of a target's oxide that came without one: a share of its value, but at least so many wt% (our own convention). */
export const ASSUMED_SIGMA = { share: 0.05, least: 0.05 } as const;

/**
 * A target with the materials at hand, as numbers. Materials that hold none of the target's oxides are left at zero
 * unless bounds ask for them. Throws on targets that are negative, empty, sum to more than 110 or less than 5 wt%,
 * or give an element twice, and on bounds that contradict each other or name unknown materials.
 * @example
 * const quartz = materialFromFormula({ id: 'q', name: 'quartz' }, 'SiO2')
 * recipeModel({ target: { parts: { SiO2: 60, PbO: 120 } }, materials: [quartz], fire: fireAt({ celsius: 850 }) }) // throws found 180
 * recipeModel({ target: { parts: { SiO2: 25, PbO: 75 } }, materials: [quartz], fire: fireAt({ celsius: 850 }) }).yields // [1, 0]
 */
export function recipeModel(problem: RecipeProblem): RecipeModel {
  const { materials, fire, floor = RECIPE_FLOOR } = problem;
  if (materials.length === 0) throw new RequirementError('a recipe needs at least one material; found none');
  if (!(floor > 0 && floor < 1))
    throw new RequirementError(`a floor needs to lie between 0 and 1 wt%; found ${floor}`);
  const parts = checkTarget(problem.target);
  const total = parts.reduce((sum, oxide) => sum + problem.target.parts[oxide]!, 0);
  const target = Float64Array.from(parts, (oxide) => (100 * problem.target.parts[oxide]!) / total);
  const sigma = parts.map((oxide, i) => {
    const given = problem.target.sigma?.[oxide];
    return given && given > 0
      ? (100 * given) / total
      : Math.max(ASSUMED_SIGMA.least, ASSUMED_SIGMA.share * target[i]!);
  });
  const yields = yieldsOf(parts, materials, fire);
  const ids = materials.map((m) => m.id);
  const { lower, upper } = boundsOf(problem, yields);
  const plain = { parts, ids, yields, target, sigma: Float64Array.from(sigma), floor, lower, upper };
  return { ...plain, ...reachOf(plain) };
}

type Reach = 'totals' | 'reach' | 'held' | 'absence';

/** A mixture's share of an oxide lies between those of its materials, so the richest material sets the reach. */
function reachOf(model: Omit<RecipeModel, Reach>): Pick<RecipeModel, Reach> {
  const { parts, ids, yields, target, floor, upper } = model;
  const D = parts.length;
  const reach = new Float64Array(D);
  const totals = Float64Array.from(ids, (_, k) =>
    yields.subarray(k * D, (k + 1) * D).reduce((sum, y) => sum + y, 0),
  );
  for (let k = 0; k < ids.length; k++)
    if (totals[k]! > 0 && upper[k]! > 0)
      for (let j = 0; j < D; j++) reach[j] = Math.max(reach[j]!, (100 * yields[k * D + j]!) / totals[k]!);
  const held = Uint8Array.from(target, (t, j) => Number(reach[j]! >= t));
  const logs = Array.from(target, (t, j) => (held[j] ? 0 : Math.log((t + floor) / floor)));
  const sum = logs.reduce((total, l) => total + l, 0);
  return { totals, reach, held, absence: logs.reduce((total, l) => total + l * l, 0) - (sum * sum) / D };
}

function checkTarget({ parts }: RecipeTarget): string[] {
  const seen = new Map<string, string>();
  let total = 0;
  for (const [oxide, wt] of Object.entries(parts)) {
    const element = elementOf(oxide);
    if (element === null) throw new RequirementError(`a target needs oxides; ${oxide} is none`);
    if (!(wt >= 0 && Number.isFinite(wt)))
      throw new RequirementError(`a target needs values of zero or more; ${oxide} is ${wt}`);
    if (seen.has(element))
      throw new RequirementError(
        `a target needs each element once; ${seen.get(element)} and ${oxide} are both ${element}`,
      );
    seen.set(element, oxide);
    total += wt;
  }
  if (seen.size < 2) throw new RequirementError(`a target needs at least two oxides; found ${seen.size}`);
  if (!(total >= 5 && total <= 110))
    throw new RequirementError(
      `a target needs a total from 5 to 110 wt%; found ${Number(total.toPrecision(5))}`,
    );
  return Object.keys(parts);
}

function yieldsOf(parts: readonly string[], materials: readonly Material[], fire: Fire): Float64Array {
  const yields = new Float64Array(parts.length * materials.length);
  materials.forEach((material, k) => {
    const { kept } = fireContent(material.content, fire);
    parts.forEach((oxide, j) => {
      yields[k * parts.length + j] = (kept[elementOf(oxide)!] ?? 0) * massPerAtom(oxide);
    });
  });
  return yields;
}

function boundsOf({ materials, bounds = {} }: RecipeProblem, yields: Float64Array) {
  const n = materials.length;
  const lower = new Float64Array(n);
  const upper = new Float64Array(n).fill(100);
  const unknown = Object.keys(bounds).find((id) => !materials.some((m) => m.id === id));
  if (unknown) throw new RequirementError(`bounds need materials that are in the recipe; ${unknown} is not`);
  materials.forEach(({ id, name }, k) => {
    const { least = 0, most = 100 } = bounds[id] ?? {};
    if (!(least >= 0 && least <= most && most <= 100))
      throw new RequirementError(`bounds need 0 ≤ least ≤ most ≤ 100 wt%; ${name} has ${least} to ${most}`);
    const D = yields.length / n;
    const useless = !yields.subarray(k * D, (k + 1) * D).some((y) => y > 0);
    lower[k] = least;
    upper[k] = useless ? least : most;
  });
  const [low, high] = [lower, upper].map((v) => v.reduce((sum, x) => sum + x, 0));
  if (low! > 100 || high! < 100)
    throw new RequirementError(
      `bounds need to allow a batch of 100 %; the chosen materials allow ${low} to ${high} %`,
    );
  return { lower, upper };
}

/**
 * The same model with only some of its materials (by place). Throws when their bounds no longer allow 100 %.
 * @example
 * const two = ['SiO2', 'PbO'].map((f) => materialFromFormula({ id: f, name: f }, f))
 * restrictRecipe(recipeModel({ target: { parts: { SiO2: 25, PbO: 75 } }, materials: two, fire: fireAt({ celsius: 850 }) }), [1]).yields // [0, 1]
 */
export function restrictRecipe(model: RecipeModel, places: readonly number[]): RecipeModel {
  const D = model.parts.length;
  const pick = (v: Float64Array) => Float64Array.from(places, (k) => v[k]!);
  const yields = new Float64Array(D * places.length);
  places.forEach((k, at) => {
    yields.set(model.yields.subarray(k * D, (k + 1) * D), at * D);
  });
  const ids = places.map((k) => model.ids[k]!);
  const plain = { ...model, ids, yields, lower: pick(model.lower), upper: pick(model.upper) };
  return { ...plain, ...reachOf(plain) };
}
