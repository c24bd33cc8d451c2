import { uncertaintyFaults } from '../domain/composition/faults.ts';
import type { ReportedValue, UncertaintyBasis, Unit } from '../domain/composition/types.ts';
import { type CellReading, readCell } from './cell.ts';
import type { Companion, FigureColumn, Plan } from './plan.ts';
import type { ProblemLog } from './problems.ts';
import type { Row } from './types.ts';

/** A row being read, and where its problems go. */
export interface RowContext {
  readonly row: Row;
  readonly plan: Plan;
  readonly log: ProblemLog;
}

/** What the figure is of: from the column, or in the long layout from the row. */
export interface Subject {
  readonly analyte: string;
  readonly unit: Unit;
}

/** Mass fractions in wt%; atoms have no such scale. */
const SCALE: Readonly<Partial<Record<Unit, number>>> = { 'wt%': 1, ppm: 1e-4, ppb: 1e-7 };
const LARGEST: Readonly<Record<Unit, number>> = { 'wt%': 100, ppm: 1e6, ppb: 1e9, 'at%': 100 };
const ACCEPTED = 'a figure, <0.01, <LOD, n.d., or nothing';

/** One figure with its uncertainty and limit; null where the cell claims no measurement, or holds an error. */
export function readFigure(
  context: RowContext,
  column: FigureColumn,
  subject: Subject,
): ReportedValue | null {
  const { row, plan, log } = context;
  const raw = row.cells[column.index] ?? '';
  const at = { row: row.number, column: column.index };
  const cell = readCell(raw, plan.choices.decimal);
  if (cell.kind === 'text') {
    log.error('text', `a column of figures takes ${ACCEPTED}; found “${shorten(raw)}”${hint(raw, plan)}`, at);
    return null;
  }
  if (cell.kind === 'number')
    return measured(context, column, { ...subject, unit: cell.unit ?? subject.unit, cell });
  return undetected(context, column, { ...subject, cell });
}

function hint(raw: string, { choices }: Plan): string {
  const other = choices.decimal === ',' ? '.' : ',';
  if (readCell(raw, other).kind !== 'number') return '';
  return `: the table's decimal mark is the ${choices.decimal === ',' ? 'comma' : 'point'}`;
}

type NumberCell = Extract<CellReading, { kind: 'number' }>;

function measured(
  context: RowContext,
  column: FigureColumn,
  { analyte, unit, cell }: Subject & { cell: NumberCell },
): ReportedValue | null {
  const { row, plan, log } = context;
  const at = { row: row.number, column: column.index };
  const limit = limitOf(context, column, unit);
  if (cell.value < 0 && column.role !== 'loi' && analyte !== 'LOI') {
    if (plan.choices.negative === 'limit') return below({ analyte, unit }, -cell.value);
    log.error(
      'negative',
      `an amount must be zero or more; found ${cell.value}. If it means “below ${-cell.value}”, choose so for negative figures`,
      at,
    );
    return null;
  }
  if (!isPossible(analyte, unit, cell.value)) {
    log.error(
      'unit',
      `${unit} goes up to ${LARGEST[unit]}; found ${cell.value}: is the unit right${inPpm(unit)}?`,
      at,
    );
    return null;
  }
  if (cell.value === 0 && column.role === 'analyte' && plan.choices.zero === 'refuse') {
    log.error('zero', 'an amount must be above zero, or written as below a limit; found 0', at);
    return null;
  }
  const stated = uncertaintyOf(context, column, { unit, cell });
  const value: ReportedValue = {
    ...{ analyte, value: cell.value, unit, ...stated, belowDetection: false, limit },
    resolution: resolutionOf(cell, column),
  };
  warnIfLoose(value, context, at);
  return value;
}

const inPpm = (unit: Unit) => (unit === 'wt%' ? ', or is the column in ppm' : '');

/** A total may pass 100; nothing else can. */
function isPossible(analyte: string, unit: Unit, value: number): boolean {
  return value <= LARGEST[unit] || analyte === 'Total';
}

function resolutionOf(cell: NumberCell, { decimals }: FigureColumn): number {
  return decimals === null ? cell.resolution : Math.min(cell.resolution, Number(`1e${-decimals}`));
}

/** A percentage entered as an uncertainty, as seen in published data. */
function warnIfLoose(value: ReportedValue, { log }: RowContext, at: { row: number; column: number }): void {
  if (value.uncertainty === null || uncertaintyFaults([{ ...value, basis: '1σ' }]).length === 0) return;
  const share = Math.round((100 * value.uncertainty) / value.value!);
  log.warn(
    'loose',
    `an uncertainty is usually a small part of the value; ${value.uncertainty} is ${share} % of ${value.value}`,
    at,
  );
}

interface Stated {
  readonly uncertainty: number | null;
  readonly basis: UncertaintyBasis | null;
}
const NOT_STATED: Stated = { uncertainty: null, basis: null };

function uncertaintyOf(
  context: RowContext,
  column: FigureColumn,
  { unit, cell }: { unit: Unit; cell: NumberCell },
): Stated {
  if (cell.uncertainty !== null) return { uncertainty: cell.uncertainty, basis: cell.basis };
  const { uncertainty: companion } = column;
  if (companion === null) return NOT_STATED;
  const raw = (context.row.cells[companion.index] ?? '').replace(/^\s*(?:±|\+\/-)\s*/, '');
  const figure = companionFigure(context, companion, { raw, unit, own: column.unit });
  if (figure === null) return NOT_STATED;
  const uncertainty = companion.relative ? (Math.abs(cell.value) * figure) / 100 : figure;
  if (uncertainty > 0) return { uncertainty, basis: companion.basis ?? 'unstated' };
  context.log.warn('zero-uncertainty', 'an uncertainty must be above zero; 0 is taken as not stated', {
    row: context.row.number,
    column: companion.index,
  });
  return NOT_STATED;
}

function limitOf(context: RowContext, column: FigureColumn, unit: Unit): number | null {
  const { limit: companion, rowLimit } = column;
  if (companion !== null) {
    const raw = context.row.cells[companion.index] ?? '';
    const figure = companionFigure(context, companion, {
      raw: raw.replace(/^\s*[<≤]\s*/, ''),
      unit,
      own: column.unit,
    });
    if (figure !== null && figure > 0) return figure;
  }
  return rowLimit === null ? null : rowLimit * factor(column.unit, unit);
}

/** A figure that belongs to another, in that other's unit; null where none is given. */
function companionFigure(
  { row, plan, log }: RowContext,
  companion: Companion,
  { raw, unit, own }: { raw: string; unit: Unit; own: Unit | null },
): number | null {
  const cell = readCell(raw, plan.choices.decimal);
  const at = { row: row.number, column: companion.index };
  if (cell.kind === 'text') {
    log.error('text', `an uncertainty or limit must be a figure or nothing; found “${shorten(raw)}”`, at);
    return null;
  }
  if (cell.kind !== 'number') return null;
  if (cell.value < 0) {
    log.error('negative', `an uncertainty or limit must be zero or more; found ${cell.value}`, at);
    return null;
  }
  return companion.relative ? cell.value : cell.value * factor(cell.unit ?? companion.unit ?? own, unit);
}

function factor(from: Unit | null, to: Unit): number {
  if (from === null || from === to) return 1;
  const [a, b] = [SCALE[from], SCALE[to]];
  return a === undefined || b === undefined ? 1 : Number((a / b).toPrecision(12));
}

type GapCell = Exclude<CellReading, { kind: 'number' }>;

function undetected(
  context: RowContext,
  column: FigureColumn,
  { analyte, unit, cell }: Subject & { cell: GapCell },
): ReportedValue | null {
  const { row, plan, log } = context;
  const at = { row: row.number, column: column.index };
  const { nd, dash } = plan.choices;
  if (cell.kind === 'empty' || cell.kind === 'notMeasured' || cell.kind === 'text') return null;
  if (cell.kind === 'nd')
    log.warn('nd', `n.d. is read as ${nd === 'belowDetection' ? 'not detected' : 'not determined'}`, at);
  if ((cell.kind === 'nd' && nd === 'notMeasured') || (cell.kind === 'dash' && dash === 'notMeasured'))
    return null;
  if (cell.kind === 'trace')
    log.warn('trace', 'a trace is read as below detection, since no figure is given', at);
  const cellUnit = (cell.kind === 'below' ? cell.unit : null) ?? unit;
  const limit = (cell.kind === 'below' ? cell.limit : null) ?? limitOf(context, column, cellUnit);
  if (column.role === 'total' || column.role === 'loi') return null;
  if (limit === null)
    log.warn(
      'no-limit',
      'a value below detection needs a detection limit to be used in log-ratios; none is given',
      at,
    );
  if (limit !== null && !isPossible(analyte, cellUnit, limit)) {
    log.error(
      'unit',
      `${cellUnit} goes up to ${LARGEST[cellUnit]}; the limit is ${limit}: is the unit right?`,
      at,
    );
    return null;
  }
  return below({ analyte, unit: cellUnit }, limit);
}

function below({ analyte, unit }: Subject, limit: number | null): ReportedValue {
  return {
    analyte,
    value: null,
    unit,
    uncertainty: null,
    basis: null,
    belowDetection: true,
    limit,
    resolution: null,
  };
}

export function shorten(text: string): string {
  const tidy = text.replace(/\s+/g, ' ').trim();
  return tidy.length > 60 ? `${tidy.slice(0, 57)}…` : tidy;
}
