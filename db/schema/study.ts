import { boolean, pgTable, text } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';

/** Everything belongs to a study, and goes with it. */
export const study = pgTable('study', {
  id: key(),
  name: text().notNull(),
  place: written(),
  notes: written(),
  demo: boolean().notNull().default(false),
  createdAt: createdAt(),
  updatedAt: updatedAt(),
});
