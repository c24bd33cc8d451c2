import { index, integer, jsonb, pgTable, uuid } from 'drizzle-orm/pg-core';
import { createdAt, updatedAt, written } from './columns.ts';
import { firing } from './firing.ts';
import { specimen } from './specimen.ts';
import { study } from './study.ts';

/** A replica with zones: what was set for the whole of it, and which fire it went through. */
export const tile = pgTable(
  'tile',
  {
    specimenId: uuid()
      .primaryKey()
      .references(() => specimen.id, { onDelete: 'cascade' }),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    firingId: uuid().references(() => firing.id, { onDelete: 'set null' }),
    /** Where it stood in the fire, as a person said. */
    place: written(),
    /** The place that a plan drew for it by lot; a number, and no setting of anything. */
    position: integer(),
    /** 0 by 0 where zones are only drawn on pictures, as on a pot. */
    rows: integer().notNull(),
    columns: integer().notNull(),
    settings: jsonb().$type<Readonly<Record<string, number | string>>>().notNull(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [index('tile_study').on(table.studyId), index('tile_firing').on(table.firingId)],
);
