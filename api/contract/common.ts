import { z } from 'zod';

/** Where a text has a natural end: a name fits a line, a note fits a page. */
/** PostgreSQL holds no NUL in a text. */
const text = z.string().refine((value) => !value.includes('\0'), 'a text must not hold the character NUL');
export const shortText = text.trim().max(200);
export const longText = text.trim().max(20_000);
export const name = shortText.min(1, 'needs at least one character');
export const id = z.uuid();
export const instant = z.iso.datetime({ offset: true });
/** As exact as it is known: a year, a year and month, or a day. */
export const partialDate = z
  .string()
  .regex(/^\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$/, 'a date is YYYY, YYYY-MM or YYYY-MM-DD');
export const doi = z
  .string()
  .trim()
  .max(300)
  .transform((text) => text.replace(/^(https?:\/\/(dx\.)?doi\.org\/|doi:\s*)/i, ''))
  .refine((text) => text === '' || /^10\.\d{4,9}\/\S+$/.test(text), {
    error: 'a DOI begins with 10. and has a slash, as in 10.1515/pac-2019-0603',
  })
  .meta({
    description: 'Digital object identifier without the https://doi.org/ in front; empty when there is none',
  });

export const MOST_ROWS = 5_000;
export const paging = z.object({
  offset: z.coerce.number().int().min(0).default(0),
  limit: z.coerce.number().int().min(1).max(MOST_ROWS).default(100),
});
export const direction = z.enum(['asc', 'desc']);

/** One page of rows, and how many there are in all. */
export function page<Row extends z.ZodType>(row: Row) {
  return z.object({ total: z.number().int(), offset: z.number().int(), rows: z.array(row) });
}
