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
