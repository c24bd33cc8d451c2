import { RequirementError } from '../requirement.ts';
import { bisect } from '../slip/minimise.ts';
import { dot } from '../slip/weighted.ts';
import { takeOut } from './columns.ts';
import { fitLikelihood } from './likelihood.ts';
import { logistic, logisticModel } from './logistic-model.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';

/** A regression of the chance over all tiles, and the same with each tile left out in turn. */
export interface ChanceFit {
  readonly terms: readonly Term[];
  /** Constant, then one effect a term. */
  readonly at: readonly number[];
  /** The same without each tile; empty with fewer than three tiles. */
  readonly without: readonly (readonly number[])[];
  /** Covariance by the model, as if zones were independent. */
  readonly covariance: readonly (readonly number[])[];
  readonly dropped: readonly string[];
}

/**
 * Firth's regression of a yes-or-no outcome on the terms of a table, no constants for tiles, its constant moved so
 * that the mean chance is the share seen (Puhr et al. 2017, doi 10.1002/sim.7273); and once more without each tile,
 * for an error that lets tiles differ (delete-one-cluster jackknife; Bell & McCaffrey 2002). Terms that only one tile
 * tells of are dropped, since they could not be fitted without it; throws when that is the one asked for.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const table = trialTable([zone(1, 'matt'), zone(2, 'glossy'), zone(3, 'matt'), zone(4, 'glossy')], { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1 })
 * const { at } = fitChance(table, table.terms, 'coats')
 * at[0] + 2.5 * at[1] // 0
 */
export function fitChance(table: TrialTable, terms: readonly Term[], asked: string | null): ChanceFit {
  const leavable = table.tiles.length >= 3;
  const kept: Term[] = [];
  const ranked = [
    ...terms.filter((t) => t.factor.name === asked),
    ...terms.filter((t) => t.factor.name !== asked),
  ];
  for (const term of ranked) if (canBeTold(table, [...kept, term], leavable)) kept.push(term);
  const dropped = ranked.filter((t) => !kept.includes(t)).map((t) => t.factor.name);
  if (asked !== null && dropped.includes(asked))
    throw new RequirementError(
      `a chance against ${asked} needs it to differ also when any one tile is left out; found only one tile that tells`,
    );
  const all = table.zones.map((_, i) => i);
  const whole = fitRows(table, kept, all);
  const without = leavable
    ? table.tiles.map(
        (tile) =>
          fitRows(
            table,
            kept,
            all.filter((i) => !tile.rows.includes(i)),
          ).at,
      )
    : [];
  return { terms: kept, ...whole, without, dropped: [...new Set(dropped)] };
}

/** Whether the last term still varies by itself in every set of rows that will be fitted. */
function canBeTold({ zones, tiles }: TrialTable, terms: readonly Term[], leavable: boolean): boolean {
  const all = zones.map((_, i) => i);
  const sets = leavable ? tiles.map((t) => all.filter((i) => !t.rows.includes(i))) : [all];
  return sets.every((rows) => {
    const columns = terms.map((t) => rows.map((i) => t.values[i]!));
    const last = columns.pop()!;
    return takeOut(last, [rows.map(() => 1), ...columns]).share > 0;
  });
}

function fitRows({ scores }: TrialTable, terms: readonly Term[], rows: readonly number[]) {
  const design = rows.map((i) => [1, ...terms.map((t) => t.values[i]!)]);
  const yes = rows.map((i) => scores[i]!);
  const model = logisticModel({ names: ['(constant)', ...terms.map((t) => t.contrast)], rows: design }, yes);
  const { at, covariance } = fitLikelihood(model, { penalised: true });
  return { at: [at[0]! + shift(design, yes, at), ...at.slice(1)], covariance };
}

/** What to add to the constant so that chances sum to the number of yeses; nothing where all are alike. */
function shift(rows: readonly (readonly number[])[], yes: readonly number[], at: readonly number[]): number {
  const wanted = yes.reduce((a, b) => a + b, 0);
  if (wanted === 0 || wanted === yes.length) return 0;
  const sum = (by: number) => rows.reduce((total, row) => total + logistic(dot(row, at) + by), 0);
  return bisect((by) => sum(by) > wanted, -20, 20);
}
