import type { LikelihoodModel } from './likelihood-model.ts';
import { logisticModel } from './logistic-model.ts';
import { ordinalModel } from './ordinal-model.ts';
import { separatedColumns } from './separation.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';

/**
 * A term's name in tables: `thickness, per 10 µm`.
 *
 * @example
 * termName({ factor: { name: 'roast' }, contrast: 'long instead of short' }) // 'roast, long instead of short'
 */
export function termName({ factor, contrast }: { factor: { name: string }; contrast: string }): string {
  return `${factor.name}, ${contrast}`;
}

/** A regression of the grades, and the columns that have no greatest likelihood because they separate them. */
export interface TrialModel {
  readonly model: LikelihoodModel;
  readonly separated: readonly string[];
}

/**
 * Logistic regression (grades of 0 and 1) or proportional odds (0, 1, 2) on some terms with one constant a tile, so
 * that only comparisons within tiles count. With no tile constants the tiles' own differences count too. Throws as
 * `logisticModel` and `ordinalModel`.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const table = trialTable([zone(1, 'matt'), zone(2, 'glossy')], { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1 })
 * withinTilesModel(table, table.terms).separated // ['coats, per coat']
 */
export function withinTilesModel(
  table: TrialTable,
  terms: readonly Term[],
  { tileConstants = true } = {},
): TrialModel {
  const ordinal = table.outcome === 'grade' && new Set(table.scores).size === 3;
  // Grades seen are numbered without a hole: two seen grades are a plain logistic regression.
  const seen = [...new Set(table.scores)].sort((a, b) => a - b);
  const grades = table.scores.map((s) => (table.outcome === 'grade' ? seen.indexOf(s) : s));
  const constants = tileConstants ? table.tiles.slice(ordinal ? 1 : 0) : [];
  const tileColumns = constants.map((tile) => ({
    name: tile.label,
    values: table.zones.map((_, i) => (tile.rows.includes(i) ? 1 : 0)),
  }));
  const whole = tileConstants || ordinal ? [] : [{ name: '(constant)', values: table.zones.map(() => 1) }];
  // Centred, so that constants stay near the data and the fit starts well.
  const columns = [
    ...whole,
    ...tileColumns,
    ...terms.map((t) => ({ name: termName(t), values: centred(t.values) })),
  ];
  const design = {
    names: columns.map((c) => c.name),
    rows: table.zones.map((_, i) => columns.map((c) => c.values[i]!)),
  };
  const model = ordinal ? ordinalModel(design, grades) : logisticModel(design, grades);
  return { model, separated: separatedColumns(design, grades, { ordinal }) };
}

function centred(values: readonly number[]): number[] {
  const middle = values.reduce((a, b) => a + b, 0) / values.length;
  return values.map((v) => v - middle);
}
