import { index, jsonb, pgTable, text, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, written } from './columns.ts';
import { study } from './study.ts';

/** A comparison frozen as it was answered, with what was asked and the version that answered. */
export const placement = pgTable(
  'placement',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    note: written(),
    version: text().notNull(),
    sentences: jsonb().$type<readonly string[]>().notNull(),
    settings: jsonb().$type<unknown>().notNull(),
    result: jsonb().$type<unknown>().notNull(),
    /** Everything it was made from, as reported then; null where it was kept before this was. */
    data: jsonb().$type<unknown>(),
    createdAt: createdAt(),
  },
  (table) => [index('placement_study').on(table.studyId)],
);
