import type { UncertaintyBasis, Unit } from '../domain/composition/types.ts';
import type { NumberCell } from './cell.ts';
import { readCell } from './cell.ts';
import type { Companion, FigureColumn } from './plan.ts';
import { type RowContext, shorten } from './row-context.ts';

/** Mass fractions in wt%; atoms have no such scale. */
const SCALE: Readonly<Partial<Record<Unit, number>>> = { 'wt%': 1, ppm: 1e-4, ppb: 1e-7 };

/** An uncertainty as stated; null where none is. */
export interface Stated {
  readonly uncertainty: number | null;
  readonly basis: UncertaintyBasis | null;
}
const NOT_STATED: Stated = { uncertainty: null, basis: null };

export function uncertaintyOf(
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

export function limitOf(context: RowContext, column: FigureColumn, unit: Unit): number | null {
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
