import { z } from 'zod';
import type { Advice } from '../domain/batch/advice.ts';
import type { FiredBatch } from '../domain/batch/batch.ts';
import type { FireEntry } from '../domain/batch/entries.ts';
import type { Caution } from '../domain/batch/safety.ts';
import { GASES } from '../domain/batch/types.ts';
import type { UnityFormula } from '../domain/batch/unity.ts';
import { id, instant, longText, name, shortText } from './common.ts';
import { hazard, lines, span, zeroOrMore } from './material.ts';

export const fire = z
  .object({
    celsius: z
      .number()
      .min(20, 'a firing needs at least 20 °C')
      .max(1500, 'a firing needs at most 1500 °C')
      .default(850),
    atmosphere: z.enum(['air', 'smoke']).default('air'),
    /** Moles of sulfur kept per mole of lead; null takes what the temperature leads one to expect. */
    sulfurPerLead: span.nullable().default(null),
  })
  .meta({ id: 'Fire' }) satisfies z.ZodType<FireEntry>;

/** What a batch was to come near to. */
export const aim = z.object({ name: shortText, parts: z.record(z.string().max(20), zeroOrMore) });

const fields = {
  name,
  unit: z.enum(['g', 'parts']),
  lines,
  fire,
  target: aim.nullable(),
  note: longText,
  /** Ids of the specimens made of it; a specimen is made of one batch. */
  specimens: z.array(id).max(500),
};
export const newBatch = z
  .object({
    ...fields,
    unit: fields.unit.default('g'),
    fire: fire.default(() => fire.parse({})),
    target: fields.target.default(null),
    note: fields.note.default(''),
    specimens: fields.specimens.default([]),
  })
  .meta({ id: 'NewBatch' });
export const batchChange = z.object(fields).partial().meta({ id: 'BatchChange' });
export const batch = z
  .object({
    id,
    ...fields,
    name: z.string(),
    note: z.string(),
    /** The blend that it belongs to, and its place in it; empty for a batch of its own. */
    series: z.string(),
    place: z.string(),
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'Batch' });
export const batches = z.array(batch);

export const newBlend = z
  .object({
    name,
    /** Two, three or four batches: a line, a triangle, a square. */
    batches: z.array(id).min(2).max(4),
    steps: z.number().int().min(1).max(50),
    grams: z.number().positive('grams above zero are needed'),
  })
  .meta({ id: 'NewBlend' });

export const firing = z
  .object({
    lines,
    fire: fire.default(() => fire.parse({})),
    /** One standard deviation of a weighing, grams. */
    balance: zeroOrMore.default(0.01),
  })
  .meta({ id: 'BatchFiring' });

const number = z.number();
const grams = z.record(z.string(), number);
const middle = z.object({ low: number, central: number, high: number });
const totals = z.object({
  weighed: number,
  water: number,
  dry: number,
  fired: number,
  oxides: grams,
  gases: z.record(z.enum(GASES), number),
  unreported: number,
});
const firedBatch = z
  .object({
    lines: z.array(totals.extend({ id: z.string(), name: z.string() })),
    totals,
    oxides: z.array(
      z.object({
        oxide: z.string(),
        grams: number,
        percent: number,
        low: number,
        high: number,
        sigma: number,
        moles: number,
        molePercent: number,
      }),
    ),
    loss: span.extend({ percent: number }),
    sulfur: z.object({ brought: middle, sulfide: middle, kept: middle, dioxide: middle }),
    hazards: z.array(hazard),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'FiredBatch' }) satisfies z.ZodType<FiredBatch>;

const part = z.object({ oxide: z.string(), moles: number });
const unity = z.object({
  fluxes: z.array(part),
  amphoteric: z.array(part),
  acid: z.array(part),
  apart: z.array(part),
}) satisfies z.ZodType<UnityFormula>;
export const step = z.object({
  action: z.enum(['grind', 'roast', 'look', 'read sulfur', 'use']),
  words: z.string(),
  celsius: span.nullable(),
});
const advice = z.object({
  what: z.enum(['roast missing', 'sulfide possible', 'no silica', 'sulfate', 'hotter is no cure']),
  words: z.string(),
  steps: z.array(step),
}) satisfies z.ZodType<Advice>;
const caution = z.object({
  hazard,
  text: z.string(),
  source: z.object({ title: z.string(), checked: z.string() }).nullable(),
}) satisfies z.ZodType<Caution>;
export const cautions = z
  .object({ firstRule: z.string(), cautions: z.array(caution) })
  .meta({ id: 'Cautions' });

export const fired = z
  .object({
    fired: firedBatch,
    /** Null where there is no flux. */
    unity: unity.nullable(),
    advice: z.array(advice),
    safety: cautions,
  })
  .meta({ id: 'FiredAnswer' });

export type Aim = z.infer<typeof aim>;
export type NewBatch = z.infer<typeof newBatch>;
export type BatchChange = z.infer<typeof batchChange>;
export type Batch = z.infer<typeof batch>;
export type NewBlend = z.infer<typeof newBlend>;
export type Firing = z.infer<typeof firing>;
export type FiredAnswer = z.infer<typeof fired>;
