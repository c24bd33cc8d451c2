import { doublePrecision, index, jsonb, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import type { StoredLine } from './batch.ts';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { study } from './study.ts';

/** A roast or frit as weighed. Its charge is a material from then on, under the roast's own id. */
export const roast = pgTable(
  'roast',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    /** YYYY-MM-DD or less. */
    date: text(),
    charge: jsonb().$type<readonly StoredLine[]>().notNull(),
    massOut: doublePrecision().notNull(),
    weighing: doublePrecision().notNull(),
    celsius: doublePrecision().notNull(),
    hours: doublePrecision().notNull(),
    looks: jsonb().$type<unknown>(),
    sulfur: jsonb().$type<unknown>(),
    note: written(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [unique('roast_name').on(table.studyId, table.name), index('roast_study').on(table.studyId)],
);
