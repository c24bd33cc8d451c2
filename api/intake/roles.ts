import type { ColumnRole } from './types.ts';

/** Roles whose cells are figures. */
export const NUMBER_ROLES: ReadonlySet<ColumnRole> = new Set([
  'analyte',
  'loi',
  'total',
  'value',
  'uncertainty',
  'limit',
]);

/** Roles of wide columns that an uncertainty or a limit may belong to. */
export const HOLDS_VALUES: readonly ColumnRole[] = ['analyte', 'loi', 'total'];
