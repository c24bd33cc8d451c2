import { integer, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { dataImport } from './import.ts';
import { study } from './study.ts';

export const wareGroup = pgTable(
  'ware_group',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    period: written(),
    place: written(),
    source: written(),
    doi: written(),
    notes: written(),
    /** Order shown, from 0; colour and mark follow it. */
    position: integer().notNull(),
    importId: uuid().references(() => dataImport.id, { onDelete: 'cascade' }),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [unique('ware_group_name').on(table.studyId, table.name)],
);
