import { z } from 'zod';
import type { Mending } from '../domain/batch/missing-material.ts';
import type { RecipeRow } from '../domain/batch/nearest-batch.ts';
import { cautions, fire } from './batch.ts';
import { zeroOrMore } from './material.ts';

const number = z.number();
const percents = z.record(z.string().max(20), zeroOrMore);
const bound = z.object({ least: zeroOrMore.optional(), most: zeroOrMore.optional() });

/** A fired paint to come near to, and what may be used for it. */
export const targetProblem = z
  .object({
    /** wt%; `sigma` is one standard deviation, by default the larger of 0.05 wt% and 5 % of the value. */
    target: z.object({ parts: percents, sigma: percents.default({}) }),
    /** Keys of the shelf. */
    materials: z.array(z.string().max(60)).min(1, 'choose at least one material').max(60),
    fire: fire.default(() => fire.parse({})),
    /** wt% of the dry batch by key; `least` = `most` fixes a part. */
    bounds: z.record(z.string().max(60), bound).default({}),
    atMost: z.number().int().min(1).nullable().default(null),
  })
  .meta({ id: 'TargetProblem' });

const row = z.object({
  oxide: z.string(),
  target: number,
  sigma: number,
  fired: number,
  factor: number.nullable(),
  judgement: z.enum(['met', 'too low', 'too high']),
  because: z.string().nullable(),
}) satisfies z.ZodType<RecipeRow>;
const solution = z
  .object({
    metric: z.enum(['distance', 'error']),
    /** Grams for 100 g of dry batch. */
    lines: z.array(z.object({ material: z.string(), name: z.string(), amount: number })),
    rows: z.array(row),
    distance: number,
    error: number,
    how: z.string(),
    besides: z.array(z.object({ oxide: z.string(), percent: z.number() })),
    proven: z.boolean(),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'TargetSolution' });
const mending = z.object({
  id: z.string(),
  name: z.string(),
  before: number,
  after: number,
  amount: number,
  mends: z.array(z.string()),
}) satisfies z.ZodType<Mending>;

export const targetAnswer = z
  .object({
    byDistance: solution,
    byError: solution,
    warnings: z.array(z.string()),
    /** Materials of the shelf that would bring it nearer, best first. */
    missing: z.array(mending),
    safety: cautions,
  })
  .meta({ id: 'TargetAnswer' });

export type TargetProblem = z.infer<typeof targetProblem>;
export type TargetAnswer = z.infer<typeof targetAnswer>;
