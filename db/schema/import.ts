import { sql } from 'drizzle-orm';
import {
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  text,
  timestamp,
  uniqueIndex,
  uuid,
} from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { study } from './study.ts';

/**
 * A file on its way in. Rows it brings carry its id and are seen by nobody until `status` is `done`:
 * one small statement publishes them all.
 */
export const dataImport = pgTable(
  'import',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    status: text({ enum: ['running', 'done', 'failed', 'stopped'] }).notNull(),
    fileName: written(),
    sha256: written(),
    bytes: integer().notNull(),
    rowsRead: integer().notNull().default(0),
    rowsTotal: integer(),
    analyses: integer().notNull().default(0),
    specimens: integer().notNull().default(0),
    groups: integer().notNull().default(0),
    outcome: jsonb().$type<unknown>(),
    /** The running process says so every few seconds; silence means that it died. */
    heartbeatAt: timestamp({ withTimezone: true }).notNull().defaultNow(),
    createdAt: createdAt(),
    finishedAt: timestamp({ withTimezone: true }),
  },
  (table) => [
    index('import_study').on(table.studyId),
    uniqueIndex('import_one_running_a_study').on(table.studyId).where(sql`${table.status} = 'running'`),
  ],
);

/** How the columns of a file with these headers were understood the last time. */
export const columnChoice = pgTable(
  'column_choice',
  {
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    fingerprint: text().notNull(),
    choices: jsonb().$type<unknown>().notNull(),
    updatedAt: updatedAt(),
  },
  (table) => [primaryKey({ columns: [table.studyId, table.fingerprint] })],
);
