import {
  customType,
  doublePrecision,
  index,
  integer,
  jsonb,
  pgTable,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { firing } from './firing.ts';
import { specimen } from './specimen.ts';
import { study } from './study.ts';

const bytes = customType<{ data: Uint8Array }>({ dataType: () => 'bytea' });

/** A replica with a grid of zones: what was set for the whole of it, and which fire it went through. */
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
    /** Where it stood in the fire. */
    place: written(),
    rows: integer().notNull(),
    columns: integer().notNull(),
    settings: jsonb().$type<Readonly<Record<string, number | string>>>().notNull(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [index('tile_study').on(table.studyId), index('tile_firing').on(table.firingId)],
);

/** One zone of a tile: what was put there, and what was seen after the fire. */
export const zone = pgTable(
  'zone',
  {
    id: key(),
    tileId: uuid()
      .notNull()
      .references(() => tile.specimenId, { onDelete: 'cascade' }),
    label: text().notNull(),
    /** From 1, top left. */
    row: integer().notNull(),
    column: integer().notNull(),
    coats: doublePrecision(),
    micrometres: doublePrecision(),
    settings: jsonb().$type<Readonly<Record<string, number | string>>>().notNull(),
    grade: text({ enum: ['matt', 'satin', 'glossy'] }),
    /** Share of its area that is glassy, 0–1. */
    glassyShare: doublePrecision(),
    colour: written(),
    defects: jsonb().$type<readonly string[]>().notNull(),
    note: written(),
  },
  (table) => [unique('zone_label').on(table.tileId, table.label)],
);

/** A picture of a tile, as it came; one a tile. */
export const tilePicture = pgTable('tile_picture', {
  tileId: uuid()
    .primaryKey()
    .references(() => tile.specimenId, { onDelete: 'cascade' }),
  type: text({ enum: ['image/jpeg', 'image/png', 'image/webp'] }).notNull(),
  width: integer().notNull(),
  height: integer().notNull(),
  bytes: bytes().notNull(),
  createdAt: createdAt(),
});
