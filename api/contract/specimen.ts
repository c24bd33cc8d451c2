import { z } from 'zod';
import { direction, id, instant, longText, name, page, paging, shortText } from './common.ts';

/** A sherd is ancient; a replica is a tile or pot of ours; a material is what a batch is weighed from. */
export const SPECIMEN_KINDS = ['sherd', 'replica', 'material'] as const;
export const specimenKind = z.enum(SPECIMEN_KINDS);

export const newSpecimen = z
  .object({
    label: name,
    catalogueNumber: shortText.default(''),
    kind: specimenKind.default('sherd'),
    /** Ware group id; null when unassigned. */
    group: id.nullable().default(null),
    notes: longText.default(''),
  })
  .meta({ id: 'NewSpecimen' });
export const specimenChange = z
  .object({
    label: name,
    catalogueNumber: shortText,
    kind: specimenKind,
    group: id.nullable(),
    notes: longText,
  })
  .partial()
  .meta({ id: 'SpecimenChange' });

export const specimen = z
  .object({
    id,
    label: z.string(),
    catalogueNumber: z.string(),
    kind: specimenKind,
    group: id.nullable(),
    notes: z.string(),
    createdAt: instant,
    updatedAt: instant,
    analyses: z.number().int(),
    /** What has been measured on it. */
    measured: z.array(z.string()),
  })
  .meta({ id: 'Specimen' });
export const specimenPage = page(specimen);

export const specimenQuery = paging.extend({
  /** Words that must all occur in label, catalogue number, ware group or notes. */
  search: shortText.optional(),
  kind: specimenKind.optional(),
  /** A ware group id, or `none` for the unassigned. */
  group: z.union([id, z.literal('none')]).optional(),
  sort: z.enum(['label', 'catalogueNumber', 'kind', 'group', 'analyses', 'createdAt']).default('label'),
  direction: direction.default('asc'),
});

/** Changes many specimens at once: to one group, or away. */
export const specimenBulk = z
  .object({
    specimens: z.array(id).min(1).max(5_000),
    change: z.object({ kind: specimenKind, group: id.nullable() }).partial(),
  })
  .meta({ id: 'SpecimenBulk' });
export const specimenBulkDelete = z.object({ specimens: z.array(id).min(1).max(5_000) });
export const counted = z.object({ count: z.number().int() });

export type SpecimenKind = z.infer<typeof specimenKind>;
export type NewSpecimen = z.infer<typeof newSpecimen>;
export type SpecimenChange = z.infer<typeof specimenChange>;
export type SpecimenQuery = z.infer<typeof specimenQuery>;
export type Specimen = z.infer<typeof specimen>;
