import { z } from 'zod';
import { doi, id, instant, longText, name, shortText } from './common.ts';

const fields = {
  name,
  period: shortText.default(''),
  place: shortText.default(''),
  source: longText.default(''),
  doi: doi.default(''),
  notes: longText.default(''),
};
export const newWareGroup = z.object(fields).meta({ id: 'NewWareGroup' });
export const wareGroupChange = z
  .object({
    name,
    period: shortText,
    place: shortText,
    source: longText,
    doi,
    notes: longText,
    /** Place in the order shown, from 0; a group's colour and mark follow it. The others close up. */
    position: z.number().int().min(0),
  })
  .partial()
  .meta({ id: 'WareGroupChange' });

export const wareGroup = z
  .object({
    id,
    name: z.string(),
    period: z.string(),
    place: z.string(),
    source: z.string(),
    doi: z.string(),
    notes: z.string(),
    position: z.number().int(),
    createdAt: instant,
    updatedAt: instant,
    specimens: z.number().int(),
    analyses: z.number().int(),
  })
  .meta({ id: 'WareGroup' });
export const wareGroups = z.array(wareGroup);

export type NewWareGroup = z.infer<typeof newWareGroup>;
export type WareGroupChange = z.infer<typeof wareGroupChange>;
export type WareGroup = z.infer<typeof wareGroup>;
