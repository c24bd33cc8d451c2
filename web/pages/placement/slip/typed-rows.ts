import { readNumber } from '../../../parts/numbers.ts';

export interface TypedRow {
  readonly label: string;
  readonly numbers: readonly number[];
}

/** Lines of a label and so many numbers, with ; or a tab between; null where a line is not so. */
export function readNumbers(text: string, count: number): TypedRow[] | null {
  const rows: TypedRow[] = [];
  for (const line of text.split('\n').filter((one) => one.trim() !== '')) {
    const [label, ...cells] = line.split(/[;\t]/).map((cell) => cell.trim());
    const numbers = cells.map(readNumber);
    if (!label || numbers.length !== count || numbers.some((x) => x === null)) return null;
    rows.push({ label, numbers: numbers as number[] });
  }
  return rows;
}
