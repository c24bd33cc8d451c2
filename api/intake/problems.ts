import { letterOf } from './letters.ts';
import { LISTED_PER_PROBLEM, LISTED_PROBLEMS } from './limits.ts';
import type { Layout, Problem } from './types.ts';

export interface Found {
  readonly severity: Problem['severity'];
  readonly code: string;
  /** The requirement, then what was found; the place is put before it. */
  readonly says: string;
  readonly row?: number;
  readonly column?: number;
}

interface Tally {
  listed: number;
  more: number;
  last: Problem;
  readonly first: Problem;
}

/**
 * Collects problems and says where they are: `Row 7, column C (SiO2): …`. The same kind in the same column is listed
 * a few times and then only counted.
 */
export class ProblemLog {
  readonly #headers: readonly string[];
  readonly #sideways: boolean;
  readonly #tallies = new Map<string, Tally>();
  #fresh: Problem[] = [];
  #errors = 0;
  #listed = 0;

  constructor(headers: readonly string[], layout: Layout) {
    this.#headers = headers;
    this.#sideways = layout === 'sideways';
  }

  /** Errors so far, listed or not. */
  get errors(): number {
    return this.#errors;
  }

  error(code: string, says: string, at: Pick<Found, 'row' | 'column'> = {}): void {
    this.#add({ severity: 'error', code, says, ...at });
  }

  warn(code: string, says: string, at: Pick<Found, 'row' | 'column'> = {}): void {
    this.#add({ severity: 'warning', code, says, ...at });
  }

  /** Problems found since the last call. */
  take(): readonly Problem[] {
    const fresh = this.#fresh;
    this.#fresh = [];
    return fresh;
  }

  /** One line for each kind that was cut short. */
  counts(): readonly Problem[] {
    return [...this.#tallies.values()].filter((t) => t.more > 0).map(countOf);
  }

  #add(found: Found): void {
    if (found.severity === 'error') this.#errors++;
    const key = `${found.severity} ${found.code} ${found.column ?? ''}`;
    const problem = this.#problem(found);
    const tally = this.#tallies.get(key) ?? { listed: 0, more: 0, first: problem, last: problem };
    this.#tallies.set(key, tally);
    tally.last = problem;
    if (tally.listed >= (this.#listed < LISTED_PROBLEMS ? LISTED_PER_PROBLEM : 1)) tally.more++;
    else {
      tally.listed++;
      this.#listed++;
      this.#fresh.push(problem);
    }
  }

  #problem({ severity, code, says, row, column }: Found): Problem {
    const header = column === undefined ? '' : (this.#headers[column] ?? '').trim();
    const [fileRow, fileColumn] = this.#sideways
      ? [column === undefined ? undefined : column + 1, row === undefined ? undefined : row - 1]
      : [row, column];
    const where = [
      fileRow === undefined ? [] : [`row ${fileRow}`],
      fileColumn === undefined ? [] : [`column ${letterOf(fileColumn)}`],
    ].flat();
    const place = where.join(', ') + (header && where.length > 0 ? ` (${header})` : '');
    const message = place === '' ? sentence(says) : sentence(`${place}: ${says}`);
    return {
      severity,
      code,
      message,
      row: fileRow ?? null,
      column: fileColumn === undefined ? null : { index: fileColumn, letter: letterOf(fileColumn), header },
    };
  }
}

function countOf({ more, first, last }: Tally): Problem {
  return { ...first, row: null, message: `${more} more like “${first.message}”; the last: ${last.message}` };
}

function sentence(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
