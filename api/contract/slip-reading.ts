import { z } from 'zod';
import { DEFAULT_MODEL } from '../domain/reference/types.ts';
import { measured, normalisationSettings } from './analysis.ts';
import { id, shortText } from './common.ts';

/** How analyses are written before they are read. */
export const basis = z.object({
  normalisation: normalisationSettings.default(() => normalisationSettings.parse({})),
  /** Share of a detection limit that stands in for a value below it. */
  fraction: z.number().gt(0).lte(1).default(DEFAULT_MODEL.replacement.fraction),
});

export const oxides = z.array(z.string().max(20)).min(1).max(60);
const amountsOf = (amount: z.ZodType<number>) =>
  z
    .record(z.string().max(20), amount)
    .refine((record) => Object.keys(record).length > 0, 'at least one oxide is needed')
    .refine((record) => Object.keys(record).length <= 60, 'at most 60 oxides');
const zeroOrMore = z.number().min(0, 'an amount is 0 or more');
const parts = amountsOf(zeroOrMore.max(1e9));
export const percentages = amountsOf(zeroOrMore.max(100, 'an amount is at most 100 wt%'));

/** Something analysed or predicted: of a specimen, the mean of a ware group, a batch as predicted, or typed in. */
export const analysedRef = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('specimen'), specimen: id, measured }),
    z.object({ kind: z.literal('group'), group: id, measured }),
    z.object({ kind: z.literal('batch'), batch: id }),
    z.object({
      kind: z.literal('typed'),
      label: shortText.default('typed composition'),
      /** In any parts by mass; closed to 100. */
      oxides: parts,
      /** Relative standard uncertainty of every oxide; null takes them as exact. */
      relativeError: z.number().gt(0).lte(1).nullable().default(null),
    }),
  ])
  .meta({ id: 'AnalysedRef' });

export type AnalysedRef = z.infer<typeof analysedRef>;
