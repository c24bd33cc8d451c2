import { dot } from '../slip/weighted.ts';
import { cholesky } from '../statistics/cholesky.ts';
import { randomStream } from '../statistics/random.ts';
import { fitChance } from './chance-model.ts';
import { logistic } from './logistic-model.ts';
import { inverseAndLogDet } from './symmetric.ts';
import { findTangles } from './tangles.ts';
import type { Term } from './terms.ts';
import { type TileModel, tileInformation } from './tile-information.ts';
import type { TrialTable } from './trial-table.ts';

/** A term of the model the next tile is chosen under: as in a table, but also for settings not fired yet. */
export interface OptionTerm extends Pick<Term, 'factor' | 'contrast' | 'level'> {
  readonly column: (setting: string | number) => number;
}

/** What is believed of the effects before the next tile. */
export interface Belief {
  /** Draws of (constant, effects); the first is the present estimate. */
  readonly draws: readonly (readonly number[])[];
  /** Information so far at each draw, the prior's included. */
  readonly information: readonly (readonly (readonly number[])[])[];
  readonly model: TileModel;
}

/** Standard deviations of the weak prior: of the constant, and of an effect of one contrast, log-odds. */
const PRIOR_CONSTANT = 5;
const PRIOR_EFFECT = 2.5;
const DRAWS = 12;

/**
 * The present state of knowledge: Firth's fit of what can be told so far (0 for what cannot), the information of the
 * tiles so far (`tileInformation`), a weak normal prior (standard deviation 2.5 log-odds a contrast) so that
 * what has never varied can be asked about, and seeded draws around the estimate, since the best zones depend on it
 * (Chaloner & Verdinelli 1995, doi 10.1214/ss/1177009939). Throws as `fitChance`.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const table = trialTable([zone(1, 'matt'), zone(2, 'glossy'), zone(3, 'matt'), zone(4, 'glossy')], { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1 })
 * const term = { factor: table.terms[0].factor, contrast: 'per coat', level: null, column: (v) => v }
 * beliefFrom(table, [term], { model: { spread: 1, within: [false, true] }, seed: 1 }).draws.length // 12
 */
export function beliefFrom(
  table: TrialTable,
  terms: readonly OptionTerm[],
  { model, seed }: { model: TileModel; seed: number },
): Belief {
  const estimate = presentEstimate(table, terms);
  const rows = table.zones.map((z) => rowFor(terms, z.factors));
  const informationAt = (at: readonly number[]) =>
    table.tiles
      .map((tile) => {
        const own = tile.rows.map((i) => rows[i]!);
        return tileInformation(own, weightsAt(own, at), model);
      })
      .reduce(addMatrices, priorInformation(terms.length));
  const { inverse } = inverseAndLogDet(informationAt(estimate));
  const lower = cholesky(inverse);
  const { normal } = randomStream(seed);
  const draw = () => {
    const z = estimate.map(() => normal());
    return estimate.map(
      (b, i) => b + z.slice(0, i + 1).reduce((sum, v, j) => sum + lower[(i * (i + 1)) / 2 + j]! * v, 0),
    );
  };
  const draws = [estimate, ...Array.from({ length: DRAWS - 1 }, draw)];
  return { draws, information: draws.map(informationAt), model };
}

/** Firth's estimate in the order of the terms; 0 where the zones so far cannot tell. */
function presentEstimate(table: TrialTable, terms: readonly OptionTerm[]): number[] {
  const tied = findTangles(table).flatMap((t) => (t.kind === 'same' ? t.factors.slice(1) : []));
  const free = table.terms.filter((t) => !tied.includes(t.factor.name));
  const fit = fitChance(table, free, null);
  const found = (term: OptionTerm) => {
    const place = fit.terms.findIndex((t) => t.factor === term.factor && t.level === term.level);
    return place < 0 ? 0 : fit.at[1 + place]!;
  };
  return [fit.at[0]!, ...terms.map(found)];
}

/**
 * A row of the model: 1, then each term at a setting.
 *
 * @example
 * rowFor([{ factor: { name: 'coats' }, column: (v) => v / 2 }], { coats: 3 }) // [1, 1.5]
 */
export function rowFor(
  terms: readonly OptionTerm[],
  settings: Readonly<Record<string, string | number | null>>,
): number[] {
  return [1, ...terms.map((t) => t.column(settings[t.factor.name]!))];
}

/**
 * Weights π(1 − π) of rows under given effects.
 *
 * @example
 * weightsAt([[1, 0]], [0, 3]) // [0.25]
 */
export function weightsAt(rows: readonly (readonly number[])[], at: readonly number[]): number[] {
  return rows.map((row) => {
    const chance = logistic(dot(row, at));
    return chance * (1 - chance);
  });
}

function priorInformation(terms: number): number[][] {
  return Array.from({ length: terms + 1 }, (_, i) =>
    Array.from({ length: terms + 1 }, (__, j) =>
      i === j ? 1 / (i === 0 ? PRIOR_CONSTANT : PRIOR_EFFECT) ** 2 : 0,
    ),
  );
}

/**
 * Sum of two matrices of one shape.
 *
 * @example
 * addMatrices([[1, 2]], [[3, 4]]) // [[4, 6]]
 */
export function addMatrices(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): number[][] {
  return a.map((line, i) => line.map((v, j) => v + b[i]![j]!));
}
