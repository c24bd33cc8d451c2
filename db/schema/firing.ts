import { integer, jsonb, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { study } from './study.ts';

/**
 * One firing. Of a thermocouple log the digest is stored, not the file: it holds peaks, times above temperatures,
 * flags and the thinned curve, and its size does not grow with the log. The file's name, size and hash say which it was.
 */
export const firing = pgTable(
  'firing',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    /** A year, a year and month, or a day. */
    date: text(),
    place: written(),
    fuel: written(),
    weather: written(),
    note: written(),
    /** Temperatures whose time above is wanted, °C. */
    thresholds: jsonb().$type<readonly number[]>().notNull(),
    stages: jsonb().$type<unknown>().notNull(),
    readings: jsonb().$type<unknown>().notNull(),
    digest: jsonb().$type<unknown>(),
    logProblems: jsonb().$type<unknown>(),
    logName: written(),
    logBytes: integer(),
    logSha256: written(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [unique('firing_name').on(table.studyId, table.name)],
);
