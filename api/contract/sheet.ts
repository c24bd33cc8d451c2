import { z } from 'zod';
import { AIRS } from '../domain/firing/types.ts';
import { id, instant, shortText } from './common.ts';
import { reading } from './firing.ts';
import { bounded, stage } from './firing-summary.ts';
import { grade, settings } from './tile.ts';

/** What was noted at the fire. The id is made on the phone: a note that arrives twice counts once. */
const noted = { id, noted: instant, at: instant };
export const sheetNote = z
  .discriminatedUnion('kind', [
    z.object({ ...noted, kind: z.literal('lit') }),
    z.object({ ...noted, kind: z.literal('air'), air: z.enum(AIRS) }),
    z.object({ ...noted, kind: z.literal('out') }),
    z.object({ ...noted, kind: z.literal('reading'), where: shortText.default(''), reading }),
    z.object({ ...noted, kind: z.literal('judgement'), tile: id, zone: id, grade: grade.nullable() }),
  ])
  .meta({ id: 'SheetNote' });
export const sheetNotes = z.array(sheetNote).min(1).max(50);

/** A picture taken at the fire: of one of its tiles, or of the fire itself. */
export const sheetPicture = z
  .object({
    ...noted,
    file: z.instanceof(File).meta({ type: 'string', format: 'binary' }),
    tile: id.optional(),
  })
  .meta({ id: 'SheetPicture' });

/** All that the sheet at the fire needs, and no more: one firing, its tiles and their zones. */
export const sheet = z
  .object({
    firing: z.object({
      id,
      name: z.string(),
      date: z.string().nullable(),
      place: z.string(),
      fuel: z.string(),
    }),
    lit: instant.nullable(),
    /** Whether a thermocouple log has been read into the firing. */
    logged: z.boolean(),
    /** The air it has now, since when; null before the first stage and after the fire is out. */
    air: z.object({ air: z.enum(AIRS), since: instant }).nullable(),
    stages: z.array(stage),
    /** The last readings by hand, newest last. */
    readings: z.array(
      z.object({
        at: z.number().nullable(),
        clock: instant.nullable(),
        where: z.string(),
        kind: z.enum(['thermocouple', 'infrared']),
        celsius: z.number(),
        bounds: bounded.nullable(),
      }),
    ),
    tiles: z.array(
      z.object({
        id,
        label: z.string(),
        place: z.string(),
        /** Its place in the fire, drawn by the plan. */
        position: z.number().int().nullable(),
        settings,
        zones: z.array(
          z.object({
            id,
            label: z.string(),
            coats: z.number().nullable(),
            micrometres: z.number().nullable(),
            settings,
            grade: grade.nullable(),
          }),
        ),
      }),
    ),
    /** Ids of notes that have arrived, so that a phone knows its own. */
    arrived: z.array(id),
    /** The service's clock as it answered. */
    answeredAt: instant,
  })
  .meta({ id: 'Sheet' });

export type SheetNote = z.infer<typeof sheetNote>;
export type SheetPicture = z.infer<typeof sheetPicture>;
export type Sheet = z.infer<typeof sheet>;
