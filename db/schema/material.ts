import { doublePrecision, index, jsonb, pgTable, text, unique, uuid } from 'drizzle-orm/pg-core';
import { createdAt, key, updatedAt, written } from './columns.ts';
import { study } from './study.ts';

/** A material of the study's own; the starter shelf is code and has no row. */
export const material = pgTable(
  'material',
  {
    id: key(),
    studyId: uuid()
      .notNull()
      .references(() => study.id, { onDelete: 'cascade' }),
    name: text().notNull(),
    /** Formula with purity, or an analysis: the domain's Making. */
    making: jsonb().$type<unknown>().notNull(),
    source: written(),
    handling: written(),
    hazards: jsonb().$type<readonly string[]>().notNull().default([]),
    pricePerKg: doublePrecision(),
    onHand: doublePrecision(),
    createdAt: createdAt(),
    updatedAt: updatedAt(),
  },
  (table) => [
    unique('material_name').on(table.studyId, table.name),
    index('material_study').on(table.studyId),
  ],
);
