import { index, jsonb, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { specimen } from './specimen.ts';
import { study } from './study.ts';

/** A line of a batch or charge: a starter key, or the id of a material or roast; wt% of water. */
export interface StoredLine {
  readonly material: string;
  readonly amount: number;
  readonly water: number;
}

/** A batch as weighed. Lines name materials from three places, so they are one JSON list without foreign keys. */
export const batch = pgTable(
  'batch',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    unit: text({ enum: ['g', 'parts'] }).notNull(),
    lines: jsonb().$type<readonly StoredLine[]>().notNull(),
    fire: jsonb().$type<unknown>().notNull(),
    /** What it was to come near to, where it was found for a target. */
    target: jsonb().$type<unknown>(),
    /** The blend that it belongs to, and its place in it; empty for a batch of its own. */
    series: written(),
    place: written(),
    note: written(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [unique('batch_name').on(table.studyId, table.name), index('batch_study').on(table.studyId)],
);

/** Which batch a specimen was made of. */
export const specimenBatch = pgTable(
  'specimen_batch',
  {
    specimenId: uuid()
      .primaryKey()
      .references(() => specimen.id, { onDelete: 'cascade' }),
    batchId: uuid()
      .notNull()
      .references(() => batch.id, { onDelete: 'cascade' }),
  },
  (table) => [index('specimen_batch_batch').on(table.batchId)],
);
