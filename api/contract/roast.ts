import { z } from 'zod';
import type { RoastEntry } from '../domain/batch/entries.ts';
import type { RoastJudgement } from '../domain/batch/roast-judgement.ts';
import type { RoastRanges } from '../domain/batch/roast-ranges.ts';
import { cautions, step } from './batch.ts';
import { id, instant, longText, name, partialDate } from './common.ts';
import { lines, span, zeroOrMore } from './material.ts';

const looks = z
  .object({
    lump: z.boolean(),
    glitters: z.boolean(),
    powder: z.enum(['none', 'white', 'yellow', 'orange']),
  })
  .meta({ id: 'RoastLooks' });

const weighed = {
  charge: lines,
  massOut: z.number().positive('a mass out above zero is needed'),
  weighing: zeroOrMore,
  celsius: z.number().min(20).max(1500),
  hours: zeroOrMore,
  looks: looks.nullable(),
  /** Total sulfur read in the roasted charge, wt%, one standard deviation. */
  sulfur: z.object({ percent: zeroOrMore.max(100), sigma: zeroOrMore }).nullable(),
};
const defaults = {
  weighing: weighed.weighing.default(0.1),
  looks: weighed.looks.default(null),
  sulfur: weighed.sulfur.default(null),
};
export const roastRecord = z.object({ ...weighed, ...defaults }).meta({ id: 'RoastRecord' });
export const newRoast = z
  .object({
    ...weighed,
    ...defaults,
    name,
    date: partialDate.nullable().default(null),
    note: longText.default(''),
  })
  .meta({ id: 'NewRoast' });
export const roastChange = z
  .object({ ...weighed, name, date: partialDate.nullable(), note: longText })
  .partial()
  .meta({ id: 'RoastChange' });
export const roast = z
  .object({
    ...weighed,
    id,
    name: z.string(),
    date: z.string().nullable(),
    note: z.string(),
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'Roast' }) satisfies z.ZodType<RoastEntry>;
export const roasts = z.array(roast);

const ranges = z.object({
  phases: z.array(z.object({ formula: z.string(), name: z.string(), grams: span, percent: span })),
  leadOxide: span,
  sulfur: z.object({ grams: span, percent: span, perLead: span }),
  dioxide: z.object({
    grams: span,
    litres: span,
    state: z.object({ celsius: z.number(), kilopascal: z.number() }),
  }),
}) satisfies z.ZodType<RoastRanges>;
const judgement = z.object({
  verdict: z.enum([
    'not fully oxidised',
    'oxidised, sulfate kept',
    'looks oxidised',
    'mostly oxide',
    'cannot be told',
  ]),
  because: z.array(z.string()),
  steps: z.array(step),
}) satisfies z.ZodType<RoastJudgement>;

/** What a weighing (and a sulfur reading) says of a roast; masses in grams, percentages of the mass out. */
export const roastAnswer = z
  .object({
    massIn: z.number(),
    change: z.number(),
    inert: span,
    ranges,
    /** With only the phases seen at that temperature; null where they cannot explain the weighing. */
    expected: ranges.nullable(),
    expectedPhases: z.array(z.string()),
    judgement,
    safety: cautions,
  })
  .meta({ id: 'RoastAnswer' });

export type RoastWeighed = z.infer<typeof roastRecord>;
export type NewRoast = z.infer<typeof newRoast>;
export type RoastChange = z.infer<typeof roastChange>;
export type StoredRoast = z.infer<typeof roast>;
export type RoastAnswer = z.infer<typeof roastAnswer>;
