import { index, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { dataImport } from './import.ts';
import { study } from './study.ts';
import { wareGroup } from './ware-group.ts';

/** One sherd, replica or material. Labels are unique in a study, so that a file's rows find their specimen. */
export const specimen = pgTable(
  'specimen',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    label: text().notNull(),
    /** The label spelt so that plain text order is natural order: digits padded, case folded. */
    labelOrder: text().notNull(),
    catalogueNumber: written(),
    catalogueOrder: written(),
    kind: text({ enum: ['sherd', 'replica', 'material'] }).notNull(),
    wareGroupId: uuid().references(() => wareGroup.id, { onDelete: 'set null' }),
    notes: written(),
    importId: uuid().references(() => dataImport.id, { onDelete: 'cascade' }),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [
    unique('specimen_label').on(table.studyId, table.label),
    index('specimen_order').on(table.studyId, table.labelOrder),
    index('specimen_ware_group').on(table.wareGroupId),
    index('specimen_import').on(table.importId),
  ],
);
