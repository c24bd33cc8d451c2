import type { ReportedValue } from '../domain/composition/types.ts';
import type { ProblemLog } from './problems.ts';
import type { DraftAnalysis } from './types.ts';

interface Seen {
  readonly row: number;
  readonly figures: string;
  count: number;
}

/** Figures needed before two equal rows are more than chance. */
const ENOUGH = 3;

/** Tells several spots of one specimen from one analysis given twice. */
export class SpotRegister {
  readonly #seen = new Map<string, Seen>();
  readonly #log: ProblemLog;

  constructor(log: ProblemLog) {
    this.#log = log;
  }

  /** The analysis with its spot; null where it repeats another (said in the log). */
  admit(draft: DraftAnalysis): DraftAnalysis | null {
    const { specimen, measured, spot, technique, laboratory, date } = draft;
    const key = JSON.stringify([specimen, measured, spot, technique, laboratory, date]);
    const row = draft.rows[0]!;
    const figures = figuresOf(draft.values);
    const before = this.#seen.get(key);
    if (before === undefined) {
      this.#seen.set(key, { row, figures, count: 1 });
      return draft;
    }
    return this.#again(draft, before, figures);
  }

  #again(draft: DraftAnalysis, before: Seen, figures: string): DraftAnalysis | null {
    const { specimen, measured, spot } = draft;
    const row = draft.rows[0]!;
    const what = `${specimen}, ${measured}${spot === null ? '' : `, spot ${spot}`}`;
    if (figures === before.figures && draft.values.length >= ENOUGH) {
      this.#log.error(
        'same-row',
        `each analysis may be given once; ${what} has the same figures in row ${before.row}`,
        { row },
      );
      return null;
    }
    if (spot !== null) {
      this.#log.error(
        'same-spot',
        `each spot of a specimen may be given once; ${what} is also in row ${before.row}`,
        { row },
      );
      return null;
    }
    before.count++;
    this.#log.warn(
      'spots',
      `${what} is also in row ${before.row}; kept as spot ${before.count}, and averaged where compared`,
      { row },
    );
    return { ...draft, spot: String(before.count) };
  }
}

/** Short text that two rows share when they hold the same figures. */
function figuresOf(values: readonly ReportedValue[]): string {
  return values.map((v) => `${v.analyte}${v.value ?? `<${v.limit}`}`).join(' ');
}
