import { z } from 'zod';
import {
  type ChanceCurve,
  type Factor,
  type Option,
  OUTCOMES,
  type Shrinkage,
} from '../domain/trials/types.ts';
import { id } from './common.ts';
import { level, settings } from './tile.ts';

const factorName = z.string().trim().min(1).max(60);
export const factor = z
  .discriminatedUnion('kind', [
    z.object({
      name: factorName,
      kind: z.literal('number'),
      unit: z.string().max(20),
      step: z.number().positive('a step above zero is needed'),
    }),
    z.object({ name: factorName, kind: z.literal('category'), base: z.string().max(200).nullable() }),
  ])
  .meta({ id: 'Factor' }) satisfies z.ZodType<Factor>;

/** A factor that the tiles of the study hold, with what it was set to. */
export const foundFactor = z
  .object({
    factor,
    values: z.array(level),
    /** How many zones have it noted. */
    zones: z.number().int(),
    /** Whether it was set on zones, on whole tiles, or belongs to the fire. */
    from: z.enum(['zone', 'tile', 'firing']),
    /** What to bear in mind of it, in sentences. */
    notes: z.array(z.string()),
  })
  .meta({ id: 'FoundFactor' });
export const foundFactors = z.array(foundFactor);

const request = {
  /** Tiles to look at; all of the study where absent. */
  tiles: z.array(id).max(500).optional(),
  factors: z.array(factor).min(1, 'choose at least one factor').max(12),
  outcome: z.enum(OUTCOMES).default('glossy'),
  level: z.number().gt(0.5).lt(1).default(0.95),
  seed: z.number().int().min(0).default(1),
};
export const trialRequest = z.object(request).meta({ id: 'TrialRequest' });
export const chanceRequest = z
  .object({ ...request, against: factorName, held: settings.optional() })
  .meta({ id: 'ChanceRequest' });

const number = z.number();
const maybe = number.nullable();
const words = z.array(z.string());
const effect = z.object({
  factor: z.string(),
  contrast: z.string(),
  unitOfChange: z.enum(['zone', 'tile', 'firing']),
  method: z.string(),
  scale: z.enum(['log-odds', 'share', 'grades']),
  estimate: maybe,
  low: maybe,
  high: maybe,
  level: number,
  p: maybe,
  arrangements: maybe,
  draws: number.optional(),
  smallestP: maybe,
  separated: z.boolean(),
  zones: number,
  tiles: number,
  adjustedFor: words,
  verdict: z.enum(['matters', 'no sign', 'cannot tell']),
  sentence: z.string(),
  cautions: words,
});
const term = z.object({ name: z.string(), estimate: number, se: maybe, low: maybe, high: maybe, p: maybe });
export const trialAnalysis = z
  .object({
    outcome: z.enum(OUTCOMES),
    zones: number,
    tiles: number,
    firings: number,
    counts: z.object({ matt: number, satin: number, glossy: number }),
    leftOut: z.array(z.object({ zone: z.string(), tile: z.string().optional(), why: z.string() })),
    effects: z.array(effect),
    tangles: z.array(
      z.object({
        factors: words,
        kind: z.enum(['same', 'partly', 'constant']),
        condition: maybe,
        tiles: words,
        sentence: z.string(),
      }),
    ),
    models: z.array(
      z.object({
        kind: z.string(),
        terms: z.array(term),
        separated: z.boolean(),
        n: number,
        parameters: number,
        note: z.string(),
      }),
    ),
    sentence: z.string(),
    cautions: words,
  })
  .meta({ id: 'TrialAnalysis' });

export const chanceCurve = z
  .object({
    against: z.string(),
    unit: z.string().nullable(),
    of: z.string(),
    points: z.array(z.object({ at: level, chance: number, low: number, high: number })),
    data: z.array(z.object({ zone: z.string(), tile: z.string(), at: level, yes: z.boolean() })),
    held: settings,
    level: number,
    note: z.string(),
  })
  .meta({ id: 'ChanceCurve' }) satisfies z.ZodType<ChanceCurve>;

const option = z.object({
  name: factorName,
  at: z.enum(['zone', 'tile']),
  values: z.array(level).min(1).max(40),
}) satisfies z.ZodType<Option>;
export const nextTileRequest = z
  .object({
    ...request,
    options: z.array(option).min(1, 'a next tile needs at least one factor that may be set').max(12),
    zonesOnTile: z.number().int().min(2).max(60).default(6),
    /** Settings that shelf or fire do not allow together. */
    forbidden: z.array(settings).max(50).default([]),
    interest: factorName.optional(),
    /** Standard deviation of the tiles' own level, log-odds; 1 where absent. */
    tileSpread: z.number().min(0).max(10).optional(),
  })
  .meta({ id: 'NextTileRequest' });

export const plannedFactor = z.object({
  name: factorName,
  unit: z.string().max(20).nullable(),
  at: z.enum(['zone', 'tile', 'firing']),
  levels: z.array(level).min(1).max(40),
});
const shrinkage = z.object({
  factor: z.string(),
  contrast: z.string(),
  now: number,
  expected: number,
}) satisfies z.ZodType<Shrinkage>;
export const nextTile = z
  .object({
    tile: settings,
    zones: z.array(settings),
    factors: z.array(plannedFactor),
    shrinkage: z.array(shrinkage),
    gain: number,
    gainOfRepeat: number,
    candidates: number,
    exhaustive: z.boolean(),
    reason: z.string(),
    cautions: words,
  })
  .meta({ id: 'NextTile' });

export type FoundFactor = z.infer<typeof foundFactor>;
export type TrialAsked = z.infer<typeof trialRequest>;
export type ChanceAsked = z.infer<typeof chanceRequest>;
export type NextTileAsked = z.infer<typeof nextTileRequest>;
export type TrialAnswer = z.infer<typeof trialAnalysis>;
export type ChanceAnswer = z.infer<typeof chanceCurve>;
export type NextTileAnswer = z.infer<typeof nextTile>;
