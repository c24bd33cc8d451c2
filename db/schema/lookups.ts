import { doublePrecision, integer, pgTable, text } from 'drizzle-orm/pg-core';
import { written } from './columns.ts';

/** What can be reported of an analysis: oxides, elements, loss on ignition, a total. */
export const analyte = pgTable('analyte', {
  symbol: text().primaryKey(),
  kind: text({ enum: ['oxide', 'element', 'other'] }).notNull(),
  element: text(),
  name: text().notNull(),
  position: integer().notNull(),
});

/** How an analysis was made. */
export const technique = pgTable('technique', {
  code: text().primaryKey(),
  name: text().notNull(),
  relativeError: doublePrecision(),
  note: written(),
  position: integer().notNull(),
});
