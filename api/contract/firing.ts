import { z } from 'zod';
import { AIRS, type AirStage, type Bounded, type HandReading, type Sensor } from '../domain/firing/types.ts';
import { id, instant, longText, name, partialDate, shortText } from './common.ts';

const celsius = z.number().min(-50, 'at least −50 °C is needed').max(1800, 'at most 1800 °C can be taken');
const seconds = z.number().min(0).max(5_000_000);
const number = z.number();
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

const resolution = z.number().positive().max(50).default(1);
export const reading = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('thermocouple'), celsius, resolution, sensor }),
    z.object({
      kind: z.literal('infrared'),
      celsius,
      resolution,
      set: z.number().gt(0).lte(1),
      emissivity: bounded,
      micrometres: z.number().gt(0.3).lt(30),
      accuracy: z.object({ celsius: z.number().min(0).max(200), share: z.number().min(0).max(0.5) }),
    }),
  ])
  .meta({ id: 'HandReading' }) satisfies z.ZodType<HandReading>;
export const takenReading = z.object({
  /** Seconds since the fire was lit; null where nobody noted it. */
  at: seconds.nullable().default(null),
  /** When it was taken by the clock of who took it; `at` follows from it once the time of lighting is noted. */
  clock: instant.nullable().optional(),
  where: shortText.default(''),
  reading,
});

export const MOST_READINGS = 500;
export const newReadings = z.array(takenReading).min(1).max(100);
const fields = {
  name,
  date: partialDate.nullable(),
  place: shortText,
  fuel: shortText,
  weather: shortText,
  note: longText,
  /** Temperatures whose time above is wanted, °C. */
  thresholds: z.array(celsius).max(12),
  stages: z.array(stage).max(50),
  readings: z.array(takenReading).max(MOST_READINGS),
};
export const THRESHOLDS = [600, 700, 750, 800];
export const newFiring = z
  .object({
    ...fields,
    date: fields.date.default(null),
    place: fields.place.default(''),
    fuel: fields.fuel.default(''),
    weather: fields.weather.default(''),
    note: fields.note.default(''),
    thresholds: fields.thresholds.default(THRESHOLDS),
    stages: fields.stages.default([]),
    readings: fields.readings.default([]),
  })
  .meta({ id: 'NewFiring' });
export const firingChange = z.object(fields).partial().meta({ id: 'FiringChange' });

export const firing = z
  .object({
    id,
    ...fields,
    name: z.string(),
    readings: z.array(
      takenReading.extend({
        /** What it may truly have been, °C; null where that cannot be reckoned, with the reason. */
        bounds: bounded.nullable(),
        reason: z.string().nullable(),
      }),
    ),
    /** When it was lit, as noted at the fire; null where nobody noted it. */
    lit: instant.nullable(),
    /** Ids of the tiles that went through it. */
    tiles: z.array(id),
    createdAt: instant,
    updatedAt: instant,
  })
  .meta({ id: 'Firing' });
export const firings = z.array(firing);

export type NewFiring = z.infer<typeof newFiring>;
export type FiringChange = z.infer<typeof firingChange>;
export type FiringRecord = z.infer<typeof firing>;
export type TakenReading = z.infer<typeof takenReading>;
