import { z } from 'zod';
import { id, instant, shortText } from './common.ts';
import { PICTURE_TYPES } from './picture.ts';

export const ENTRY_KINDS = ['batch', 'roast', 'firing', 'tile', 'plan', 'analysis', 'placement'] as const;
export const notebookQuery = z.object({
  /** Words that must all occur. */
  search: shortText.optional(),
  kind: z.enum(ENTRY_KINDS).optional(),
  /** Analyses of one file, or else of one day, together in one entry where there are many that fit. */
  fold: z.literal('analyses').optional(),
});
export const entry = z
  .object({
    kind: z.enum(ENTRY_KINDS),
    id,
    /** The day it was done where noted (a year, a month or a day); else the day it was written down. */
    date: z.string(),
    dated: z.boolean(),
    writtenAt: instant,
    title: z.string(),
    text: z.string(),
    /** Specimen an analysis belongs to; null otherwise. */
    specimen: id.nullable(),
    /** How many analyses are folded into it; 1 where none is. */
    count: z.number().int(),
    /** Pictures of a tile or a firing, with words for who cannot see them. */
    pictures: z.array(z.object({ id, type: z.enum(PICTURE_TYPES), alt: z.string() })),
  })
  .meta({ id: 'NotebookEntry' });
export const notebook = z.array(entry);

export type EntryKind = (typeof ENTRY_KINDS)[number];
export type Entry = z.infer<typeof entry>;
export type NotebookQuery = z.infer<typeof notebookQuery>;
