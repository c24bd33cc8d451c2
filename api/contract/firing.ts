import { z } from 'zod';
import type { HandReading } from '../domain/firing/types.ts';
import { id, instant, longText, name, partialDate, shortText } from './common.ts';
import { firingLog } from './firing-log.ts';
import { bounded, firingSummary, seconds, sensor, stage } from './firing-summary.ts';

const celsius = z.number().min(-50, 'at least −50 °C is needed').max(1800, 'at most 1800 °C can be taken');

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

/** As it is kept, with what tells it apart from others alike. */
const keptReading = takenReading.extend({ id });

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
  thresholds: z.array(celsius).max(12, 'at most 12 temperatures can be chosen'),
  stages: z.array(stage).max(50),
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
    readings: z.array(takenReading).max(MOST_READINGS).default([]),
  })
  .meta({ id: 'NewFiring' });
/** Strict, so that readings sent here are refused rather than passed over: they are added and taken off one by one. */
export const firingChange = z
  .strictObject({
    ...fields,
    /** The stages that a change of stages was made from; refused where phones have noted others meanwhile. */
    stagesWere: fields.stages,
  })
  .partial()
  .meta({ id: 'FiringChange' });

export const firing = z
  .object({
    id,
    ...fields,
    name: z.string(),
    readings: z.array(
      keptReading.extend({
        /** What it may truly have been, °C; null where that cannot be reckoned, with the reason. */
        bounds: bounded.nullable(),
        reason: z.string().nullable(),
      }),
    ),
    /** When it was lit, as noted at the fire; null where nobody noted it. */
    lit: instant.nullable(),
    /** The last air noted at the fire where its end was not: since when, s. It is in no stage. */
    open: z.object({ air: stage.shape.air, from: seconds }).nullable(),
    log: firingLog.nullable(),
    /** Reckoned from the log; null without one. */
    summary: firingSummary.nullable(),
    /** The hottest of the log, or else of the readings by hand; null where there is neither. */
    peak: bounded.extend({ from: z.enum(['log', 'reading']) }).nullable(),
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
export type KeptReading = z.infer<typeof keptReading>;
export type TakenReading = z.infer<typeof takenReading>;
