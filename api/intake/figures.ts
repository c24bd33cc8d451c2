import { uncertaintyFaults } from '../domain/composition/faults.ts';
import type { ReportedValue, Unit } from '../domain/composition/types.ts';
import { type CellReading, type NumberCell, readCell } from './cell.ts';
import { limitOf, uncertaintyOf } from './companions.ts';
import type { FigureColumn, Plan } from './plan.ts';
import { type RowContext, type Subject, shorten } from './row-context.ts';

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
