import type { ReportedValue, UncertaintyBasis } from '../domain/composition/types.ts';
import { readCell } from './cell.ts';
import { readFacts } from './facts.ts';
import { readFigure } from './figures.ts';
import { judge } from './judge.ts';
import type { Plan } from './plan.ts';
import type { ProblemLog } from './problems.ts';
import type { RowContext } from './row-context.ts';
import { checkRow, kindOfRow, specimenOf } from './rows.ts';
import { SpotRegister } from './spots.ts';
import type { DraftAnalysis, Row } from './types.ts';

/** Reads wide rows one after another. One analysis is held back, since a row of uncertainties may follow it. */
export class WideReader {
  readonly #plan: Plan;
  readonly #log: ProblemLog;
  readonly #spots: SpotRegister;
  #held: DraftAnalysis | null = null;
  #specimen = '';
  /** Whether the row above was read as an analysis. */
  #follows = false;

  constructor(plan: Plan, log: ProblemLog) {
    this.#plan = plan;
    this.#log = log;
    this.#spots = new SpotRegister(log);
  }

  read(rows: readonly Row[]): DraftAnalysis[] {
    return rows.flatMap((row) => this.#readRow({ row, plan: this.#plan, log: this.#log }));
  }

  finish(): DraftAnalysis[] {
    return this.#release(null);
  }

  #readRow(context: RowContext): DraftAnalysis[] {
    const kind = kindOfRow({ ...context, above: this.#follows ? this.#specimen : '' });
    if (kind === 'uncertainties') {
      this.#addUncertainties(context);
      return [];
    }
    if (kind === 'skip') {
      this.#follows = false;
      return [];
    }
    const draft = this.#analysis(context);
    this.#follows = true;
    return this.#release(draft);
  }

  /** Lets the analysis held so far go, and holds another. */
  #release(next: DraftAnalysis | null): DraftAnalysis[] {
    const done = this.#held;
    this.#held = next;
    return done === null ? [] : [done];
  }

  #analysis(context: RowContext): DraftAnalysis | null {
    const { row, plan, log } = context;
    const before = log.errors;
    if (!checkRow(context)) return null;
    const specimen = specimenOf(context, this.#specimen);
    if (specimen === null) return null;
    this.#specimen = specimen;
    const facts = readFacts(context, specimen);
    const values = plan.figures.flatMap(
      (f) => readFigure(context, f, { analyte: f.analyte!, unit: f.unit! }) ?? [],
    );
    if (facts === null || log.errors > before || !judge(values, row.number, log)) return null;
    return this.#spots.admit({ rows: [row.number], ...facts, values });
  }

  #addUncertainties({ row, plan, log }: RowContext): void {
    if (!this.#follows) {
      log.warn(
        'summary',
        'a row of uncertainties must follow its analysis; this one does not and is left out',
        { row: row.number },
      );
      return;
    }
    this.#follows = false;
    if (this.#held === null) return;
    const named = (row.cells[plan.words.get('specimen')?.[0] ?? 0] ?? '').trim();
    // What stands behind the specimen's own name, which may hold figures itself.
    const label = named.startsWith(this.#specimen) ? named.slice(this.#specimen.length) : named;
    const basis: UncertaintyBasis = /2/.test(label) ? '2σ' : /1|σ|sd/i.test(label) ? '1σ' : 'unstated';
    const values = this.#held.values.map((value) => withUncertainty({ row, plan, log }, value, basis));
    this.#held = { ...this.#held, rows: [...this.#held.rows, row.number], values };
  }
}

function withUncertainty(context: RowContext, value: ReportedValue, basis: UncertaintyBasis): ReportedValue {
  const { row, plan, log } = context;
  const column = plan.figures.find((f) => f.analyte === value.analyte)!;
  const raw = (row.cells[column.index] ?? '').replace(/^\s*±\s*/, '');
  const cell = readCell(raw, plan.choices.decimal);
  const at = { row: row.number, column: column.index };
  if (cell.kind === 'text' || (cell.kind === 'number' && cell.value < 0))
    log.error('text', `an uncertainty must be a figure of zero or more; found “${raw.trim()}”`, at);
  if (cell.kind !== 'number' || cell.value <= 0 || value.value === null) return value;
  return { ...value, uncertainty: cell.value, basis };
}
