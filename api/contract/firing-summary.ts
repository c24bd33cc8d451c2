import { z } from 'zod';
import { AIRS, type AirStage, type Bounded, type Sensor } from '../domain/firing/types.ts';
import { shortText } from './common.ts';

const number = z.number();
const maybe = z.number().nullable();
/** Beyond this a clock is wrong. */
export const MOST_SECONDS = 5_000_000;
export const seconds = z.number().min(0).max(MOST_SECONDS);

export const bounded = z
  .object({ value: number, low: number, high: number })
  .meta({ id: 'Bounded' }) satisfies z.ZodType<Bounded>;

export const sensor = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('class'),
      type: z.enum(['K', 'N']),
      class: z.union([z.literal(1), z.literal(2)]),
    }),
    z.object({ kind: z.literal('stated'), celsius: z.number().min(0).max(100) }),
    z.object({ kind: z.literal('unknown') }),
  ])
  .meta({ id: 'Sensor' }) satisfies z.ZodType<Sensor>;

export const stage = z
  .object({ air: z.enum(AIRS), from: seconds, to: seconds, note: shortText.nullable().default(null) })
  .meta({ id: 'AirStage' }) satisfies z.ZodType<AirStage>;

/** What looks wrong in a log, with the first row it was seen at. */
export const logFlag = z
  .object({
    kind: z.string(),
    channel: z.string().nullable(),
    row: maybe,
    seconds: maybe,
    count: number,
    message: z.string(),
  })
  .meta({ id: 'LogFlag' });
/** °C per hour. */
const rate = z.object({ perHour: bounded, from: number, to: number });
const band = z.object({
  from: number,
  to: number,
  direction: z.enum(['heating', 'cooling']),
  rate: rate.nullable(),
});
const stageSummary = z.object({
  stage,
  start: bounded.nullable(),
  end: bounded.nullable(),
  highest: bounded.nullable(),
  rate: rate.nullable(),
});
const channelSummary = z
  .object({
    name: z.string(),
    sensor,
    peak: bounded.extend({ seconds: number }).nullable(),
    tolerance: z.string(),
    timeAbove: z.array(z.object({ threshold: number, seconds: bounded })),
    fastestHeating: rate.nullable(),
    fastestCooling: rate.nullable(),
    bands: z.array(band),
    stages: z.array(stageSummary),
  })
  .meta({ id: 'ChannelSummary' });
export const firingSummary = z
  .object({
    duration: number,
    channels: z.array(channelSummary),
    unevenness: bounded.nullable(),
    flags: z.array(logFlag),
    sentence: z.string(),
  })
  .meta({ id: 'FiringSummary' });

export type FiringSummaryAnswer = z.infer<typeof firingSummary>;
export type ChannelSummaryAnswer = z.infer<typeof channelSummary>;
