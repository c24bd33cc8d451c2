import { letterOf } from './letters.ts';
import { LISTED_PER_PROBLEM } from './limits.ts';
import type { Problem } from './types.ts';

export interface Found {
  readonly severity: Problem['severity'];
  readonly code: string;
  readonly message: string;
  readonly row?: number | null;
  readonly column?: number | null;
}

interface Tally {
  listed: number;
  more: number;
  lastRow: number | null;
  sample: Problem;
}

/** Collects problems; the same kind in the same column is listed a few times and then only counted. */
export class ProblemLog {
  readonly #headers: readonly string[];
  readonly #tallies = new Map<string, Tally>();
  #fresh: Problem[] = [];

  constructor(headers: readonly string[]) {
    this.#headers = headers;
  }

  add(found: Found): void {
    const column = found.column ?? null;
    const key = `${found.severity} ${found.code} ${column}`;
    const tally = this.#tallies.get(key);
    if (tally && tally.listed >= LISTED_PER_PROBLEM) {
      tally.more++;
      tally.lastRow = found.row ?? tally.lastRow;
      return;
    }
    const problem = this.#problem(found, column);
    if (tally) tally.listed++;
    else this.#tallies.set(key, { listed: 1, more: 0, lastRow: null, sample: problem });
    this.#fresh.push(problem);
  }

  /** Problems found since the last call. */
  take(): readonly Problem[] {
    const fresh = this.#fresh;
    this.#fresh = [];
    return fresh;
  }

  /** One line for each kind that was cut short. */
  takeCounts(): readonly Problem[] {
    return [...this.#tallies.values()].filter((t) => t.more > 0).map(countOf);
  }

  #problem(found: Found, index: number | null): Problem {
    return {
      severity: found.severity,
      code: found.code,
      message: found.message,
      row: found.row ?? null,
      column: index === null ? null : { index, letter: letterOf(index), header: this.#headers[index] ?? '' },
    };
  }
}

function countOf({ more, lastRow, sample }: Tally): Problem {
  const where = sample.column ? ` in column ${sample.column.letter}` : '';
  return {
    ...sample,
    row: null,
    message: `${more} more of the same${where}, up to row ${lastRow}: ${sample.message}`,
  };
}

/** `row 7, column C (SiO2)`: how every message says where. */
export function place(row: number, index: number, header: string): string {
  const name = header.trim();
  return `row ${row}, column ${letterOf(index)}${name ? ` (${name})` : ''}`;
}
