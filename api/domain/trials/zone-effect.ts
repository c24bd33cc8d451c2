import { RequirementError } from '../requirement.ts';
import { type Arrangements, arrangements } from './arrangements.ts';
import { unitsOf } from './columns.ts';
import { conditionalEffect } from './conditional.ts';
import type { EffectNumbers, EffectOptions } from './effect-numbers.ts';
import { toGrid } from './grid.ts';
import { fitLikelihood } from './likelihood.ts';
import { permutedEffect } from './permuted-effect.ts';
import { profileLimits } from './profile-limits.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';
import { withinTilesModel } from './within-tiles.ts';

/** Steps that a thickness is rounded to for the exact distribution, and those of a factor that is held. */
const FINE = 500;
const COARSE = 100;
const HELD = 8;

/**
 * The effect of a factor that varies within tiles, from comparisons within tiles only, so that whatever else a tile
 * or its firing had drops out. Grades: exact conditional log-odds (`conditionalEffect`, mid-p limits) with the other
 * factors' totals held; where holding them leaves too little, Firth's regression with one constant a tile for two
 * grades, and for three the mean grade by permutation within tiles. Share of glassy area: permutation within tiles.
 * Throws as the functions it rests on.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const zones = ['matt', 'matt', 'glossy', 'matt', 'glossy', 'glossy'].map((grade, i) => zone(i + 1, grade))
 * const table = trialTable(zones, { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1 })
 * zoneEffect(table, { term: table.terms[0], others: [] }, { level: 0.95, seed: 1 }) // { method: 'exact-conditional', scale: 'log-odds', p: 0.2, arrangements: 20, separated: false }
 */
export function zoneEffect(
  table: TrialTable,
  { term, others }: { term: Term; others: readonly Term[] },
  options: EffectOptions,
): EffectNumbers {
  if (table.outcome === 'share') return permuted(table, { term, others }, options);
  // Penalised proportional odds calls three grades too often (docs/coverage-trials.md).
  const uncounted = table.outcome === 'grade' ? permuted : penalisedEffect;
  const held = dealsGiven(table, term, others);
  if (held === null) return uncounted(table, { term, others }, options);
  const { deals, size, rounded } = held;
  const found = conditionalEffect(deals, { level: options.level, own: 0.5 });
  // Holding other factors can leave so few deals that no outcome could show anything.
  if (others.length > 0 && found.smallestP > 1 - options.level)
    return uncounted(table, { term, others }, options);
  const perStep = (v: number | null) => (v === null ? null : v / size);
  return {
    method: 'exact-conditional',
    scale: 'log-odds',
    estimate: perStep(found.estimate),
    low: perStep(found.low),
    high: perStep(found.high),
    p: found.p,
    arrangements: deals.deals,
    smallestP: found.smallestP,
    separated: (found.low === null || found.high === null) && deals.totals.length > 1,
    cautions: rounded,
  };
}

/** The exact distribution with the other factors held; null where that is too much to count. */
function dealsGiven(
  table: TrialTable,
  term: Term,
  others: readonly Term[],
): { deals: Arrangements; size: number; rounded: string[] } | null {
  const most = Math.max(...table.tiles.map((t) => t.rows.length)) > 12 || others.length > 0 ? COARSE : FINE;
  const grid = toGrid(term.values, most);
  const rest = others.map((o) => ({ term: o, grid: toGrid(o.values, HELD) }));
  const columns = [grid.steps, ...rest.map((r) => r.grid.steps)];
  const strata = table.tiles.map(({ rows }) => ({
    scores: rows.map((i) => table.scores[i]!),
    steps: columns.map((c) => rows.map((i) => c[i]!)),
  }));
  try {
    const deals = arrangements(strata);
    const rounded = rest
      .filter((r) => !r.grid.exact)
      .map((r) => `${r.term.factor.name} was held in ${HELD} equal steps.`);
    return { deals, size: grid.size, rounded };
  } catch (error) {
    if (error instanceof RequirementError) return null;
    throw error;
  }
}

function penalisedEffect(
  table: TrialTable,
  { term, others }: { term: Term; others: readonly Term[] },
  { level }: EffectOptions,
): EffectNumbers {
  const { model, separated } = withinTilesModel(table, [...others, term]);
  const fit = fitLikelihood(model, { penalised: true });
  const place = model.names.length - 1;
  const { estimate, low, high, p } = profileLimits(model, fit, { place, penalised: true, level });
  return {
    method: 'penalised',
    scale: 'log-odds',
    estimate,
    low,
    high,
    p,
    arrangements: null,
    smallestP: null,
    separated: separated.includes(model.names[place]!),
    cautions: [],
  };
}

function permuted(
  table: TrialTable,
  { term, others }: { term: Term; others: readonly Term[] },
  options: EffectOptions,
): EffectNumbers {
  const { blocks } = unitsOf(table, 'zone');
  const held = others.map((o) => ({ term: o, values: o.values }));
  const scale = table.outcome === 'grade' ? 'grades' : 'share';
  const units = { blocks, x: term.values, y: table.scores };
  return permutedEffect({ units, term, others: held, scale }, options);
}
