import { z } from 'zod';
import { MEASURED } from '../domain/composition/types.ts';
import type { Interval, PlacementUncertainty } from '../domain/uncertainty/types.ts';
import { DEFAULT_UNCERTAINTY } from '../domain/uncertainty/types.ts';
import { id } from './common.ts';
import { comparisonRequest, placed, sample } from './placement.ts';
import { slipChoice, slipDrawn } from './slip-choice.ts';
import { basis } from './slip-reading.ts';

const number = z.number();

export const slipSamplesRequest = basis
  .extend({
    measured: z.array(z.enum(MEASURED)).min(1).max(MEASURED.length).default(['slip', 'body']),
  })
  .meta({ id: 'SlipSamplesRequest' });
/** Slip and body analyses of a study as they enter a calculation, one sample for each specimen and thing measured. */
export const slipSamples = z
  .object({
    samples: z.array(sample),
    excluded: z.array(z.object({ specimen: z.string(), label: z.string(), reason: z.string() })),
  })
  .meta({ id: 'SlipSamples' });

export const drawOffRequest = z
  .object({ comparison: comparisonRequest, choice: slipChoice })
  .meta({ id: 'DrawOffRequest' });
const limit = z
  .object({
    f: number,
    oxide: z.string().nullable(),
    strict: number,
    strictOxide: z.string().nullable(),
    byOxide: z.array(z.object({ oxide: z.string(), f: number.nullable(), strict: number.nullable() })),
  })
  .meta({
    id: 'DrawOffLimit',
    description: 'Largest slip fraction and the oxide that sets it; per oxide null where it sets no bound',
  });
export const drawOffAnswer = z
  .object({
    placement: placed,
    drawn: slipDrawn,
    limit,
    /** Scores on every component as f goes from 0 to its largest. */
    path: z.array(z.object({ f: number, scores: z.array(number) })),
    /** For both sides, whether slip is in or out. */
    likeWithLike: z.object({ alike: z.boolean(), sentence: z.string() }),
  })
  .meta({ id: 'DrawOffAnswer' });

export const MOST_DRAWS = 10_000;
const uncertaintySettings = z.object({
  draws: z
    .number()
    .int()
    .min(100, 'at least 100 draws are needed')
    .max(MOST_DRAWS, `at most ${MOST_DRAWS} draws`)
    .default(DEFAULT_UNCERTAINTY.draws),
  seed: z.number().int().min(0).max(4_294_967_295).default(DEFAULT_UNCERTAINTY.seed),
  /** Relative error of oxides that have none stated; null keeps the technique's. */
  assumedRelative: number.gt(0).lte(1).nullable().default(null),
});
export const uncertaintyRequest = z
  .object({
    comparison: comparisonRequest,
    specimen: id,
    /** Slip to draw off in every draw; null leaves it in. */
    choice: slipChoice.nullable().default(null),
    settings: uncertaintySettings.default(() => uncertaintySettings.parse({})),
  })
  .meta({ id: 'UncertaintyRequest' });

const interval = z.object({ low: number, median: number, high: number }).meta({
  id: 'Interval',
  description: 'Middle 95 % of the draws, and the middle one',
}) satisfies z.ZodType<Interval>;
export const uncertaintyAnswer = z
  .object({
    id: z.string(),
    label: z.string(),
    draws: number,
    seed: number,
    groups: z.array(
      z.object({
        group: z.string(),
        name: z.string(),
        distance: interval,
        d2: interval.nullable(),
        membership: interval.nullable(),
        inside: number.nullable(),
        outside: number.nullable(),
        nearest: number,
      }),
    ),
    fraction: interval.nullable(),
    scores: z.object({
      mean: z.array(number),
      covariance: z.array(z.array(number)),
      some: z.array(z.array(number)),
    }),
    spent: z.array(z.object({ oxide: z.string(), share: number })),
    carried: z.array(z.string()),
    warnings: z.array(z.string()),
    sentence: z.string(),
  })
  .meta({ id: 'PlacementUncertainty' }) satisfies z.ZodType<PlacementUncertainty>;

export type SlipSamplesRequest = z.infer<typeof slipSamplesRequest>;
export type SlipSamples = z.infer<typeof slipSamples>;
export type DrawOffRequest = z.infer<typeof drawOffRequest>;
export type DrawOffAnswer = z.infer<typeof drawOffAnswer>;
export type UncertaintyAsked = z.infer<typeof uncertaintyRequest>;
export type UncertaintyAnswer = z.infer<typeof uncertaintyAnswer>;
