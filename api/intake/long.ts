import type { ReportedValue, Unit } from '../domain/composition/types.ts';
import { type Facts, readFacts } from './facts.ts';
import { readFigure } from './figures.ts';
import { readHeader } from './header.ts';
import { judge } from './judge.ts';
import { CHUNK_ROWS } from './limits.ts';
import type { FigureColumn, Plan } from './plan.ts';
import type { ProblemLog } from './problems.ts';
import { type RowContext, type Subject, shorten } from './row-context.ts';
import { checkRow, kindOfRow, specimenOf } from './rows.ts';
import { SpotRegister } from './spots.ts';
import type { DraftAnalysis, Row } from './types.ts';
import { findUnit } from './units.ts';

interface Gathered {
  readonly facts: Facts;
  readonly rows: number[];
  readonly values: ReportedValue[];
  broken: boolean;
}

/**
 * Reads long rows, one value each, in any order: values of one specimen, part and spot come together at the end.
 * So all values are held at once, one object for each row of the file.
 */
export class LongReader {
  readonly #plan: Plan;
  readonly #log: ProblemLog;
  readonly #gathered = new Map<string, Gathered>();
  #specimen = '';

  constructor(plan: Plan, log: ProblemLog) {
    this.#plan = plan;
    this.#log = log;
  }

  read(rows: readonly Row[]): DraftAnalysis[] {
    for (const row of rows) this.#readRow({ row, plan: this.#plan, log: this.#log });
    return [];
  }

  *finish(): Generator<DraftAnalysis[]> {
    const spots = new SpotRegister(this.#log);
    let part: DraftAnalysis[] = [];
    for (const { facts, rows, values, broken } of this.#gathered.values()) {
      if (broken || !judge(values, rows[0]!, this.#log)) continue;
      const draft = spots.admit({ rows, ...facts, values });
      if (draft) part.push(draft);
      if (part.length < CHUNK_ROWS) continue;
      yield part;
      part = [];
    }
    yield part;
  }

  #readRow(context: RowContext): void {
    if (kindOfRow(context) !== 'analysis' || !checkRow(context)) return;
    const specimen = specimenOf(context, this.#specimen);
    if (specimen === null) return;
    this.#specimen = specimen;
    const before = context.log.errors;
    const facts = readFacts(context, specimen);
    const subject = subjectOf(context);
    if (facts === null || subject === null) return;
    const value = readFigure(context, this.#plan.figures[0]!, subject);
    const gathered = this.#gather(facts);
    gathered.rows.push(context.row.number);
    if (context.log.errors > before) gathered.broken = true;
    else if (value !== null) this.#add(context, gathered, value);
  }

  #gather(facts: Facts): Gathered {
    const { specimen, measured, spot, technique } = facts;
    const key = JSON.stringify([specimen, measured, spot, technique]);
    const found = this.#gathered.get(key);
    if (found) return found;
    const fresh: Gathered = { facts, rows: [], values: [], broken: false };
    this.#gathered.set(key, fresh);
    return fresh;
  }

  #add({ row, log }: RowContext, gathered: Gathered, value: ReportedValue): void {
    if (gathered.values.some((v) => v.analyte === value.analyte)) {
      gathered.broken = true;
      const { specimen, spot } = gathered.facts;
      const what = `${specimen}${spot === null ? '' : `, spot ${spot}`}`;
      const cure =
        spot === null ? 'a column must tell its spots apart, or one row be left out' : 'leave one row out';
      log.error(
        'same-analyte',
        `each analyte may be given once for a spot; ${value.analyte} of ${what} is given again: ${cure}`,
        {
          row: row.number,
        },
      );
    } else gathered.values.push(value);
  }
}

function subjectOf({ row, plan, log }: RowContext): Subject | null {
  const index = plan.words.get('analyteName')![0]!;
  const name = row.cells[index] ?? '';
  const heading = readHeader(name);
  if (heading.analyte === null || heading.statistic !== null) {
    log.error(
      'unknown-analyte',
      `an analyte must be an element, an oxide, LOI or Total; found “${shorten(name)}”`,
      {
        row: row.number,
        column: index,
      },
    );
    return null;
  }
  const unit = unitOf({ row, plan, log }, heading.unit, plan.figures[0]!);
  return unit && { analyte: heading.analyte, unit };
}

/** The row's own unit, else the one in its analyte's name, else the column's; wt% where the file says nothing. */
function unitOf({ row, plan, log }: RowContext, named: Unit | null, column: FigureColumn): Unit | null {
  const index = plan.words.get('unit')?.[0];
  const text = index === undefined ? '' : (row.cells[index] ?? '').trim();
  if (index === undefined || text === '') return named ?? column.unit ?? 'wt%';
  const { unit, foreign } = findUnit(text.normalize('NFKC'));
  if (unit !== null) return unit;
  log.error('unknown-unit', `a unit must be wt%, ppm, ppb or at%; found “${foreign ?? shorten(text)}”`, {
    row: row.number,
    column: index,
  });
  return null;
}
