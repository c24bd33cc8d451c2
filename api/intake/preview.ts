import { unhurried } from './delimited.ts';
import { interpret } from './interpret.ts';
import { letterOf } from './letters.ts';
import type { Choices, DraftAnalysis, Part, Preview, Problem, RememberedChoices, Table } from './types.ts';
import { understand } from './understand.ts';

export interface PreviewOptions {
  /** Choices made for an earlier file with the same headings. */
  readonly remembered?: RememberedChoices | null;
  /** Choices made on the page; they overrule what is understood. */
  readonly choices?: Partial<Choices>;
  /** How many rows and analyses to show. */
  readonly show?: number;
}

/** Reads the whole table without storing anything: how it was understood, its first rows, and all that is wrong. */
export async function previewOf(table: Table, options: PreviewOptions = {}): Promise<Preview> {
  const { remembered = null, choices = {}, show = 20 } = options;
  const understanding = understand(table, remembered, choices);
  const tally = new Tally(show);
  for await (const part of unhurried(interpret(table, understanding.choices))) tally.add(part);
  const { kind, fileName, sheets, sheet, encoding, delimiter, rowCount, columnCount } = table;
  const problems = [...table.warnings, ...tally.problems];
  return {
    ...{ kind, fileName, sheets, sheet, encoding, delimiter, rowCount, columnCount },
    letters: Array.from({ length: Math.min(columnCount, LETTERS_SHOWN) }, (_, index) => letterOf(index)),
    understanding,
    rows: table.head.slice(0, show).map((row) => ({ ...row, cells: row.cells.map(cut) })),
    analyses: tally.first,
    counts: {
      ...tally.counts,
      errors: problems.filter((p) => p.severity === 'error').length,
      warnings: problems.filter((p) => p.severity === 'warning').length,
    },
    problems,
    importable: !problems.some((p) => p.severity === 'error'),
  };
}

/** Columns of the first rows that a page shows. */
const LETTERS_SHOWN = 60;
const SHOWN_CHARACTERS = 300;
const cut = (cell: string) => (cell.length > SHOWN_CHARACTERS ? `${cell.slice(0, SHOWN_CHARACTERS)}…` : cell);

class Tally {
  readonly first: DraftAnalysis[] = [];
  readonly problems: Problem[] = [];
  readonly #show: number;
  readonly #specimens = new Set<string>();
  #analyses = 0;
  #values = 0;
  #below = 0;

  constructor(show: number) {
    this.#show = show;
  }

  add({ analyses, problems }: Part): void {
    this.problems.push(...problems);
    for (const analysis of analyses) {
      if (this.first.length < this.#show) this.first.push(analysis);
      this.#specimens.add(analysis.specimen);
      this.#analyses++;
      this.#values += analysis.values.length;
      this.#below += analysis.values.filter((v) => v.belowDetection).length;
    }
  }

  get counts() {
    return {
      analyses: this.#analyses,
      specimens: this.#specimens.size,
      values: this.#values,
      belowDetection: this.#below,
    };
  }
}
