import { NUMBER_ROLES } from './roles.ts';
import type { Structure } from './structure.ts';
import type { ColumnChoice } from './types.ts';

/** Sample cells of the columns of figures, rows of limits included. */
export function figureCells(
  structure: Structure,
  columns: readonly Pick<ColumnChoice, 'index' | 'role'>[],
): string[] {
  const indices = columns.filter((c) => NUMBER_ROLES.has(c.role)).map((c) => c.index);
  return [...structure.sample, ...structure.limits].flatMap((row) => indices.map((i) => row.cells[i] ?? ''));
}
