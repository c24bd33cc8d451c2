import { listInWords } from '../placement/words.ts';
import { centredTerms, takeOut, unitsOf } from './columns.ts';
import type { Term } from './terms.ts';
import { settingInWords } from './terms.ts';
import { tilesInWords } from './tile-words.ts';
import type { TrialTable } from './trial-table.ts';
import type { Factor, Tangle, UnitOfChange } from './types.ts';

/** Partly together: the others leave no more than a fifth of the column's squares (correlation about 0.9). */
const MOSTLY = 0.2;

interface Column {
  readonly factor: Factor;
  readonly column: readonly number[];
}

/**
 * Factors that cannot be told apart in these zones: kept the same everywhere; following from one another exactly
 * where they are compared (zones within tiles, tiles within firings, firings); or mostly so. Each with a sentence
 * that names the tiles. Never throws.
 *
 * @example
 * const zone = (tile, lead, roast) => ({ id: tile, label: 'A1', tile, tileLabel: tile, firing: 'F1', factors: { lead, roast }, grade: 'matt', glassyShare: null })
 * const factors = [{ name: 'lead', kind: 'number', unit: '%', step: 10 }, { name: 'roast', kind: 'category', base: 'short' }]
 * const table = trialTable([zone('T1', 30, 'short'), zone('T2', 40, 'long')], { factors, outcome: 'glossy', seed: 1 })
 * findTangles(table)[0].sentence // 'lead and roast changed together: 30 % with short on T1; 40 % with long on T2. So their effects cannot be told apart.'
 */
export function findTangles(table: TrialTable): Tangle[] {
  const units: readonly UnitOfChange[] = ['zone', 'tile', 'firing'];
  return [
    ...table.constants.map(constantTangle(table)),
    ...units.flatMap((unit) => tanglesAmong(table, unit)),
  ];
}

const constantTangle =
  ({ tiles }: TrialTable) =>
  ({ factor, value }: TrialTable['constants'][number]): Tangle => ({
    factors: [factor],
    kind: 'constant',
    condition: null,
    tiles: tiles.map((t) => t.label),
    sentence: `${factor} was ${value} in every zone of ${tilesInWords(tiles.map((t) => t.label))}, so nothing can be said of it.`,
  });

function tanglesAmong(table: TrialTable, unit: UnitOfChange): Tangle[] {
  const columns = centredTerms(table, unit).map(({ term, column }) => ({ factor: term.factor, column }));
  const factors = [...new Set(columns.map((c) => c.factor))];
  const exact = new Map<string, Tangle>();
  for (const factor of factors) {
    const set = smallestTie(factor, columns, factors);
    if (set === null) continue;
    const inOrder = factors.filter((f) => set.includes(f));
    exact.set(inOrder.map((f) => f.name).join('\n'), exactTangle(table, unit, inOrder));
  }
  const tied = new Set([...exact.values()].flatMap((t) => t.factors));
  const free = columns.filter((c) => !tied.has(c.factor.name));
  return [...exact.values(), ...partlyTangled(table, unit, free)];
}

const shareLeft = (factor: Factor, others: readonly Factor[], columns: readonly Column[]) =>
  Math.min(
    ...columns
      .filter((c) => c.factor === factor)
      .map(
        (c) =>
          takeOut(
            c.column,
            columns.filter((o) => others.includes(o.factor)).map((o) => o.column),
          ).share,
      ),
  );

/** A factor with the fewest others that it follows from; null where it does not. */
function smallestTie(
  factor: Factor,
  columns: readonly Column[],
  factors: readonly Factor[],
): Factor[] | null {
  let others = factors.filter((f) => f !== factor);
  if (shareLeft(factor, others, columns) > 0) return null;
  for (const other of [...others]) {
    const fewer = others.filter((f) => f !== other);
    if (shareLeft(factor, fewer, columns) === 0) others = fewer;
  }
  return [factor, ...others];
}

function exactTangle(table: TrialTable, unit: UnitOfChange, factors: readonly Factor[]): Tangle {
  const names = factors.map((f) => f.name);
  const tiles = tilesWith(table, factors);
  const how =
    unit === 'zone' && factors.length === 2
      ? ` in the zones of ${tilesInWords(tiles)}`
      : factors.length === 2
        ? `: ${pairings(table, factors)}`
        : `: each follows from the others on ${tilesInWords(tiles)}`;
  return {
    factors: names,
    kind: 'same',
    condition: null,
    tiles,
    sentence: `${listInWords(names)} changed together${how}. So their effects cannot be told apart.`,
  };
}

/** `30 % with short on T1 and T2; 40 % with long on T3`. */
function pairings({ zones, tiles }: TrialTable, factors: readonly Factor[]): string {
  const labels = new Map<string, string[]>();
  for (const tile of tiles) {
    const setting = factors.map((f) => settingInWords(f, zones[tile.rows[0]!]!)).join(' with ');
    labels.set(setting, [...(labels.get(setting) ?? []), tile.label]);
  }
  return [...labels].map(([setting, on]) => `${setting} on ${listInWords(on)}`).join('; ');
}

/** Tiles in whose comparison the factors took part. */
function tilesWith(table: TrialTable, factors: readonly Factor[]): string[] {
  const terms = table.terms.filter((t) => factors.includes(t.factor));
  const moved = table.tiles.filter((tile) => terms.some((term) => variesIn(term, tile.rows)));
  return (moved.length > 0 ? moved : table.tiles).map((t) => t.label);
}

const variesIn = ({ values }: Term, rows: readonly number[]) => new Set(rows.map((i) => values[i])).size > 1;

/** Pairs that moved mostly together. */
function partlyTangled(table: TrialTable, unit: UnitOfChange, columns: readonly Column[]): Tangle[] {
  const factors = [...new Set(columns.map((c) => c.factor))];
  return factors.flatMap((factor, i) =>
    factors.slice(i + 1).flatMap((other) => {
      const share = Math.min(shareLeft(factor, [other], columns), shareLeft(other, [factor], columns));
      if (share >= MOSTLY) return [];
      const tiles = tilesWith(table, [factor, other]);
      const units = unitsOf(table, unit).rows.length;
      const wider = (1 / Math.sqrt(share)).toPrecision(2);
      return [
        {
          factors: [factor.name, other.name],
          kind: 'partly' as const,
          condition: Math.sqrt((1 + Math.sqrt(1 - share)) / (1 - Math.sqrt(1 - share))),
          tiles,
          sentence: `${factor.name} and ${other.name} moved mostly together on ${tilesInWords(tiles)} (${units} ${unit}s): telling them apart makes each interval about ${wider} times as wide.`,
        },
      ];
    }),
  );
}
