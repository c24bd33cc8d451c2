import { index, jsonb, pgTable, text, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, written } from './columns.ts';
import { study } from './study.ts';

/** A plan of tiles as it was drawn up, seed included, so that it can be printed and followed. */
export const plan = pgTable(
  'plan',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    note: written(),
    /** Why these tiles, where the plan came from a suggestion. */
    reason: written(),
    plan: jsonb().$type<unknown>().notNull(),
    createdAt: createdAt(),
  },
  (table) => [index('plan_study').on(table.studyId)],
);
