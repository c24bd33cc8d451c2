import { dot } from '../slip/weighted.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';
import type { UnitOfChange } from './types.ts';

/** Units of one kind (zones, tiles or firings) with the block they are compared within. */
export interface Units {
  readonly blocks: readonly string[];
  /** Rows of the table that belong to each unit. */
  readonly rows: readonly (readonly number[])[];
}

/**
 * Zones within tiles, tiles within firings, or firings.
 *
 * @example
 * const table = { zones: [{}, {}, {}], tiles: [{ id: 'a', firing: 'F1', rows: [0, 1] }, { id: 'b', firing: 'F1', rows: [2] }] }
 * unitsOf(table, 'zone').blocks // ['a', 'a', 'b']
 * unitsOf(table, 'tile') // { blocks: ['F1', 'F1'], rows: [[0, 1], [2]] }
 */
export function unitsOf({ zones, tiles }: Pick<TrialTable, 'zones' | 'tiles'>, unit: UnitOfChange): Units {
  if (unit === 'zone') {
    const tileOf = zones.map((_, i) => tiles.find((t) => t.rows.includes(i))!.id);
    return { blocks: tileOf, rows: zones.map((_, i) => [i]) };
  }
  if (unit === 'tile') return { blocks: tiles.map((t) => t.firing), rows: tiles.map((t) => t.rows) };
  const firings = [...new Set(tiles.map((t) => t.firing))];
  return {
    blocks: firings.map(() => 'all'),
    rows: firings.map((f) => tiles.filter((t) => t.firing === f).flatMap((t) => t.rows)),
  };
}

/**
 * Means of a column over units.
 *
 * @example
 * unitMeans([1, 3, 5], [[0, 1], [2]]) // [2, 5]
 */
export function unitMeans(values: readonly number[], rows: Units['rows']): number[] {
  return rows.map((own) => own.reduce((sum, i) => sum + values[i]!, 0) / own.length);
}

/**
 * A column less the mean of its block.
 *
 * @example
 * centreWithin([1, 3, 5], ['a', 'a', 'b']) // [-1, 1, 0]
 */
export function centreWithin(values: readonly number[], blocks: Units['blocks']): number[] {
  const means = new Map<string, { sum: number; n: number }>();
  values.forEach((v, i) => {
    const m = means.get(blocks[i]!) ?? { sum: 0, n: 0 };
    means.set(blocks[i]!, { sum: m.sum + v, n: m.n + 1 });
  });
  return values.map((v, i) => {
    const { sum, n } = means.get(blocks[i]!)!;
    return v - sum / n;
  });
}

/** A column is taken to follow from others when no more than this share of its squares is left. */
const NOTHING = 1e-10;

/** A column less what it has along orthonormal directions, twice, so that near ties keep their digits. */
function without(column: readonly number[], directions: readonly (readonly number[])[]): number[] {
  let out = [...column];
  for (let twice = 0; twice < 2; twice++)
    for (const b of directions) {
      const along = dot(out, b);
      out = out.map((x, i) => x - along * b[i]!);
    }
  return out;
}

/**
 * Orthonormal directions that span some columns (modified Gram–Schmidt), one fewer for each column that follows from
 * those before it.
 *
 * @example
 * directionsOf([[3, 4], [6, 8]]) // [[0.6, 0.8]]
 */
export function directionsOf(columns: readonly (readonly number[])[]): number[][] {
  const directions: number[][] = [];
  for (const column of columns) {
    const left = without(column, directions);
    const size = Math.sqrt(dot(left, left));
    if (size > Math.sqrt(NOTHING * dot(column, column))) directions.push(left.map((x) => x / size));
  }
  return directions;
}

/**
 * What is left of a column once others are taken out of it by least squares, and the share of its sum of squares that
 * is left.
 *
 * @example
 * takeOut([1, 2, 3], [[1, 1, 1]]) // { left: [-1, 0, 1], share: 0.142857 }
 * takeOut([2, 4], [[1, 2]]).share // 0
 */
export function takeOut(
  column: readonly number[],
  others: readonly (readonly number[])[],
): { left: number[]; share: number } {
  const left = without(column, directionsOf(others));
  const whole = dot(column, column);
  const share = whole === 0 ? 0 : dot(left, left) / whole;
  return share <= NOTHING ? { left: left.map(() => 0), share: 0 } : { left, share };
}

/**
 * The terms that vary between units of one kind, each as a column over these units, centred within blocks.
 *
 * @example
 * const table = { zones: [{}, {}], tiles: [{ id: 'a', firing: 'F', rows: [0, 1] }], terms: [{ unitOfChange: 'zone', values: [1, 3] }] }
 * centredTerms(table, 'zone')[0].column // [-1, 1]
 */
export function centredTerms(
  table: Pick<TrialTable, 'zones' | 'tiles' | 'terms'>,
  unit: UnitOfChange,
): { term: Term; column: number[] }[] {
  const { blocks, rows } = unitsOf(table, unit);
  return table.terms
    .filter((term) => term.unitOfChange === unit)
    .map((term) => ({ term, column: centreWithin(unitMeans(term.values, rows), blocks) }));
}
