import { doublePrecision, integer, jsonb, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import { key, written } from './columns.ts';
import { picture } from './picture.ts';
import { tile } from './tile.ts';

/** One zone of a tile: what was put there, and what was seen after the fire. */
export const zone = pgTable(
  'zone',
  {
    id: key(),
    tileId: uuid()
      .notNull()
      .references(() => tile.specimenId, { onDelete: 'cascade' }),
    label: text().notNull(),
    /** From 1, top left; both null where the zone is only drawn on a picture. */
    row: integer(),
    column: integer(),
    /** The picture it is drawn on, and its corners there: [x, y], 0–1 of width and height. */
    pictureId: uuid().references(() => picture.id, { onDelete: 'set null' }),
    outline: jsonb().$type<readonly (readonly [number, number])[]>(),
    coats: doublePrecision(),
    micrometres: doublePrecision(),
    settings: jsonb().$type<Readonly<Record<string, number | string>>>().notNull(),
    grade: text({ enum: ['matt', 'satin', 'glossy'] }),
    /** Share of its area that is glassy, 0–1. */
    glassyShare: doublePrecision(),
    colour: written(),
    /** Colour measured from a picture, with the grey it was measured against. */
    measuredColour: jsonb().$type<unknown>(),
    defects: jsonb().$type<readonly string[]>().notNull(),
    note: written(),
  },
  (table) => [unique('zone_label').on(table.tileId, table.label)],
);
