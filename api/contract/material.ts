import { z } from 'zod';
import type { LineEntry, Making, MaterialEntry } from '../domain/batch/entries.ts';
import { HAZARDS, type Span } from '../domain/batch/types.ts';
import { id, instant, longText, name } from './common.ts';

export const zeroOrMore = z.number().min(0, 'a number of zero or more is needed');
export const hazard = z.enum(HAZARDS);
export const span = z
  .object({ low: z.number(), high: z.number() })
  .meta({ id: 'Span' }) satisfies z.ZodType<Span>;
const percents = z.record(z.string().max(40), zeroOrMore);

/** How a material is described: by formula and purity (mass fractions), or by an analysis in wt%. */
export const making = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('formula'),
      formula: z.string().trim().min(1, 'a formula is needed').max(300),
      purity: span.default({ low: 1, high: 1 }),
      gangue: z.string().trim().min(1).max(300).nullable().default(null),
    }),
    z.object({
      kind: z.literal('analysis'),
      values: percents,
      sigma: percents.default({}),
      lossOnIgnition: zeroOrMore.nullable().default(null),
      specimen: id.nullable().default(null),
    }),
  ])
  .meta({ id: 'Making' }) satisfies z.ZodType<Making>;

export const newMaterial = z
  .object({
    name,
    making,
    source: longText.default(''),
    handling: longText.default(''),
    hazards: z.array(hazard).max(HAZARDS.length).default([]),
    pricePerKg: zeroOrMore.nullable().default(null),
    onHand: zeroOrMore.nullable().default(null),
  })
  .meta({ id: 'NewMaterial' });
export const materialChange = z
  .object({
    name,
    making,
    source: longText,
    handling: longText,
    hazards: z.array(hazard).max(HAZARDS.length),
    pricePerKg: zeroOrMore.nullable(),
    onHand: zeroOrMore.nullable(),
  })
  .partial()
  .meta({ id: 'MaterialChange' });

export const material = z
  .object({
    id,
    name: z.string(),
    making,
    source: z.string(),
    handling: z.string(),
    hazards: z.array(hazard),
    pricePerKg: z.number().nullable(),
    onHand: z.number().nullable(),
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'Material' }) satisfies z.ZodType<MaterialEntry>;
export const materials = z.array(material);

/** A line names a starter key (`galena`), or the id of a material or roast of the study. */
export const line = z
  .object({
    material: z.string().min(1).max(60),
    amount: zeroOrMore,
    water: zeroOrMore.default(0),
  })
  .meta({ id: 'BatchLine' }) satisfies z.ZodType<LineEntry>;
export const lines = z.array(line).min(1, 'at least one line is needed').max(100);

/** Anything that a line can name, with what one gram of it holds. */
export const shelfMaterial = z
  .object({
    key: z.string(),
    name: z.string(),
    kind: z.enum(['starter', 'own', 'roast']),
    source: z.string(),
    hazards: z.array(hazard),
    handling: z.string(),
    warnings: z.array(z.string()),
    /** Moles of each element in one gram of dry material. */
    moles: z.record(z.string(), z.number()),
  })
  .meta({ id: 'ShelfMaterial' });
export const shelf = z.object({
  materials: z.array(shelfMaterial),
  /** Own materials and roasts that can no longer be computed, by id, and why. */
  faults: z.record(z.string(), z.string()),
});

export type NewMaterial = z.infer<typeof newMaterial>;
export type MaterialChange = z.infer<typeof materialChange>;
export type StoredMaterial = z.infer<typeof material>;
export type ShelfAnswer = z.infer<typeof shelf>;
