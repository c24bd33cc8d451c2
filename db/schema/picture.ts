import { sql } from 'drizzle-orm';
import { check, customType, index, integer, jsonb, pgTable, text, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, written } from './columns.ts';
import { firing } from './firing.ts';
import { study } from './study.ts';
import { tile } from './tile.ts';

const bytes = customType<{ data: Uint8Array }>({ dataType: () => 'bytea' });

/** A picture of a tile or of a firing, several each. What it is, is read from its bytes; it holds no place and no camera. */
export const picture = pgTable(
  'picture',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    tileId: uuid().references(() => tile.specimenId, { onDelete: 'cascade' }),
    firingId: uuid().references(() => firing.id, { onDelete: 'cascade' }),
    type: text({ enum: ['image/jpeg', 'image/png', 'image/webp'] }).notNull(),
    width: integer().notNull(),
    height: integer().notNull(),
    bytes: bytes().notNull(),
    caption: written(),
    /** When it was taken: a year, a year and month, or a day. */
    taken: text(),
    /** The grey patch in it that colours are measured against: where it lies and what it reflects. */
    grey: jsonb().$type<unknown>(),
    createdAt: createdAt(),
  },
  (table) => [
    check('picture_of_one', sql`num_nonnulls(${table.tileId}, ${table.firingId}) = 1`),
    index('picture_study').on(table.studyId),
    index('picture_tile').on(table.tileId),
    index('picture_firing').on(table.firingId),
  ],
);
