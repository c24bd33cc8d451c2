import { index, integer, jsonb, pgTable, text, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { dataImport } from './import.ts';
import { technique } from './lookups.ts';
import { specimen } from './specimen.ts';
import { study } from './study.ts';
import { zone } from './zone.ts';

/** A figure as reported; the shape is the domain's ReportedValue, spelt here because the database knows nothing of ours. */
export interface StoredValue {
  readonly analyte: string;
  readonly value: number | null;
  readonly unit: string;
  readonly uncertainty: number | null;
  readonly basis: string | null;
  readonly belowDetection: boolean;
  readonly limit: number | null;
  readonly resolution: number | null;
}

/**
 * One spot measured on one specimen. The figures as reported are one JSON array: they are read and corrected as
 * one list, never one by one, and a comparison of thousands of sherds reads one row each.
 */
export const analysis = pgTable(
  'analysis',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    specimenId: uuid()
      .notNull()
      .references(() => specimen.id, { onDelete: 'cascade' }),
    /** The zone of the tile that was measured; null where none is known. */
    zoneId: uuid().references(() => zone.id, { onDelete: 'set null' }),
    measured: text({ enum: ['paint', 'slip', 'body', 'whole'] }).notNull(),
    technique: text().references(() => technique.code),
    laboratory: written(),
    instrument: written(),
    /** A year, a year and month, or a day. */
    date: text(),
    source: written(),
    doi: written(),
    spot: written(),
    note: written(),
    reported: jsonb().$type<readonly StoredValue[]>().notNull(),
    /** What was entered first, once a figure has been corrected; null while nothing has. */
    firstReported: jsonb().$type<readonly StoredValue[]>(),
    importId: uuid().references(() => dataImport.id, { onDelete: 'cascade' }),
    /** Row of the imported file, from 1. */
    row: integer(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [
    index('analysis_study').on(table.studyId, table.measured),
    index('analysis_specimen').on(table.specimenId),
    index('analysis_import').on(table.importId),
    index('analysis_zone').on(table.zoneId),
  ],
);
