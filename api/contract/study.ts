import { z } from 'zod';
import { id, instant, longText, name, shortText } from './common.ts';

export const newStudy = z
  .object({ name, place: shortText.default(''), notes: longText.default('') })
  .meta({ id: 'NewStudy' });
export const studyChange = z
  .object({ name, place: shortText, notes: longText })
  .partial()
  .meta({ id: 'StudyChange' });

export const study = z
  .object({
    id,
    name: z.string(),
    place: z.string(),
    notes: z.string(),
    /** True when the study was made by `POST /demo`: invented data in an invented place. */
    demo: z.boolean(),
    createdAt: instant,
    updatedAt: instant,
    counts: z.object({
      groups: z.number().int(),
      specimens: z.number().int(),
      replicas: z.number().int(),
      analyses: z.number().int(),
      placements: z.number().int(),
      batches: z.number().int(),
      tiles: z.number().int(),
      /** Zones of tiles whose gloss has been judged. */
      judged: z.number().int(),
      firings: z.number().int(),
      shares: z.number().int(),
    }),
  })
  .meta({ id: 'Study' });
export const studies = z.array(study);

export type NewStudy = z.infer<typeof newStudy>;
export type StudyChange = z.infer<typeof studyChange>;
export type Study = z.infer<typeof study>;
