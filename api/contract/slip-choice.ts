import { z } from 'zod';
import type { SlipSource } from '../domain/slip/slip-source.ts';
import { id, shortText } from './common.ts';

/** Which analysis stands for the slip: the specimen's own, another specimen's, or a ware group's mean. */
export const slipSource = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('own') }),
    z.object({ kind: z.literal('specimen'), specimen: id }),
    z.object({ kind: z.literal('group'), group: id }),
  ])
  .meta({ id: 'SlipSource' }) satisfies z.ZodType<SlipSource>;

export const unmeasured = z.enum(['drop', 'none']).meta({
  description: 'Oxides not measured in the slip: left out of the paint too, or taken as none in the slip',
});

/** Share of slip drawn off one specimen's paint, by mass, and how it was come by. */
export const slipChoice = z
  .object({
    specimen: id,
    source: slipSource,
    f: z.number().min(0, 'a slip fraction is 0 or more').max(0.99, 'a slip fraction is at most 0.99'),
    /** Standard uncertainty of f; 0 takes f as exact. */
    sigma: z.number().min(0).max(1).default(0),
    /** Degrees of freedom of that uncertainty; null takes it as known. */
    df: z.number().positive().nullable().default(null),
    /** How f was come by, in a word or two: `tracers`, `batch`, `a value set by hand`. */
    from: shortText.default('a value set by hand'),
    unmeasured: unmeasured.default('drop'),
  })
  .meta({ id: 'SlipChoice' });

/** A sample whose slip was drawn off before it was compared. */
export const slipDrawn = z
  .object({
    specimen: z.string(),
    label: z.string(),
    role: z.enum(['reference', 'replica']),
    slip: z.string(),
    f: z.number(),
    sigma: z.number(),
    from: z.string(),
    /** Oxides drawn down to nothing within their uncertainty: below detection from there on. */
    spent: z.array(z.string()),
    /** Oxides left out because the slip was not measured for them. */
    dropped: z.array(z.string()),
  })
  .meta({ id: 'SlipDrawn' });

export type SlipChoice = z.infer<typeof slipChoice>;
export type SlipDrawnOff = z.infer<typeof slipDrawn>;
