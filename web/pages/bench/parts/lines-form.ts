import type { LineEntry } from '../../../../api/domain/batch/entries.ts';
import { readNumber } from '../../../parts/numbers.ts';

/** One line of a batch or charge as typed. */
export interface LineRow {
  readonly key: number;
  /** Key of the shelf; empty while none is chosen. */
  readonly material: string;
  readonly amount: string;
  readonly water: string;
}

export const blankLine = (key: number): LineRow => ({ key, material: '', amount: '', water: '' });
export const nextKey = (rows: readonly LineRow[]) => Math.max(-1, ...rows.map((row) => row.key)) + 1;
export const isBlank = (row: LineRow) => !row.material && !row.amount.trim() && !row.water.trim();

export function rowsOfLines(lines: readonly LineEntry[]): LineRow[] {
  return lines.map(({ material, amount, water }, key) => ({
    key,
    material,
    amount: String(Number(amount.toPrecision(6))),
    water: water === 0 ? '' : String(water),
  }));
}

export interface ReadLines {
  readonly lines: LineEntry[];
  /** What is wrong, by the key of its row. */
  readonly wrong: ReadonlyMap<number, string>;
}

/** Reads every line that is not blank; what cannot be read is named, not guessed at. */
export function readLines(rows: readonly LineRow[], nameOf: (material: string) => string): ReadLines {
  const wrong = new Map<number, string>();
  const lines: LineEntry[] = [];
  for (const row of rows.filter((one) => !isBlank(one))) {
    const read = readLine(row, nameOf(row.material));
    if (typeof read === 'string') wrong.set(row.key, read);
    else lines.push(read);
  }
  return { lines, wrong };
}

function readLine(row: LineRow, name: string): LineEntry | string {
  if (!row.material) return 'Choose a material for this line.';
  const amount = readNumber(row.amount);
  const water = row.water.trim() ? readNumber(row.water) : 0;
  if (!row.amount.trim()) return `${name} needs an amount.`;
  if (amount === null) return `The amount of ${name} needs to be a number; “${row.amount.trim()}” is none.`;
  if (amount < 0) return `${name} needs an amount of zero or more; it is ${row.amount.trim()}.`;
  if (water === null) return `The water of ${name} needs to be a number; “${row.water.trim()}” is none.`;
  if (!(water >= 0 && water < 100))
    return `The water of ${name} needs to lie from 0 to below 100 wt%; it is ${row.water.trim()}.`;
  return { material: row.material, amount, water };
}
