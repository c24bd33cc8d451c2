import { z } from 'zod';
import type { GroupFractions } from '../domain/slip/group-fraction.ts';
import type { Consistency, Direction, FractionEstimate, OxideWitness } from '../domain/slip/types.ts';
import { amounts } from './analysis.ts';
import { id } from './common.ts';
import { slipSource } from './slip-choice.ts';
import { analysedRef, basis, oxides, percentages } from './slip-reading.ts';

const number = z.number();
export const consistency = z
  .object({ chiSquare: number, df: number, p: number, agree: z.boolean(), sentence: z.string() })
  .meta({ id: 'Consistency' }) satisfies z.ZodType<Consistency>;
const direction = z
  .object({ angle: number, condition: number })
  .meta({ id: 'Direction' }) satisfies z.ZodType<Direction>;
const witness = z
  .object({
    oxide: z.string(),
    alone: number.nullable(),
    aloneSigma: number.nullable(),
    measured: number,
    explained: number,
    z: number,
  })
  .meta({ id: 'OxideWitness' }) satisfies z.ZodType<OxideWitness>;

/** A slip fraction, share by mass 0–1, with its 95 % interval; `cannotTell` says why it cannot be told. */
export const fractionEstimate = z
  .object({
    kind: z.enum(['stated', 'tracers', 'batch', 'group', 'thickness']),
    f: number,
    unbounded: number,
    low: number,
    high: number,
    sigma: number,
    df: number.nullable(),
    consistency: consistency.nullable(),
    direction: direction.nullable(),
    cannotTell: z.string().nullable(),
    witnesses: z.array(witness),
    assumptions: z.array(z.string()),
    warnings: z.array(z.string()),
  })
  .meta({ id: 'FractionEstimate' }) satisfies z.ZodType<FractionEstimate>;

const paint = { specimen: id, source: slipSource.default({ kind: 'own' }) };
export const estimateRequest = z
  .discriminatedUnion('by', [
    basis.extend({
      by: z.literal('tracers'),
      ...paint,
      tracers: z.array(z.string().max(20)).min(1, 'choose at least one tracer').max(30),
    }),
    basis.extend({
      by: z.literal('batch'),
      ...paint,
      target: analysedRef,
      oxides: oxides.nullable().default(null),
    }),
    basis.extend({
      by: z.literal('group'),
      group: id,
      /** What the group's paint holds without its slip, wt%; 0 for a tracer. At least one oxide. */
      known: percentages,
      oxides: oxides.nullable().default(null),
      /** A replica whose paint is set against the line's own paint end; null gives only the group's own sherds. */
      specimen: id.nullable().default(null),
      source: slipSource.default({ kind: 'own' }),
    }),
  ])
  .meta({ id: 'SlipEstimateRequest' });

const line = z
  .object({
    oxides: z.array(z.string()),
    paintEnd: amounts,
    slipEnd: amounts,
    consistency,
    direction,
    estimates: z.array(z.object({ label: z.string(), estimate: fractionEstimate })),
  })
  .meta({ id: 'MixingLine' }) satisfies z.ZodType<GroupFractions>;

export const estimateAnswer = z
  .object({
    /** Of the specimen asked for; null when only a group's own line was asked for. */
    estimate: fractionEstimate.nullable(),
    paint: z.string().nullable(),
    slip: z.string().nullable(),
    /** The line through a group's own analyses; null for the other ways. */
    line: line.nullable(),
  })
  .meta({ id: 'SlipEstimate' });

export type EstimateRequest = z.infer<typeof estimateRequest>;
export type EstimateAnswer = z.infer<typeof estimateAnswer>;
