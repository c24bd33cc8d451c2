import { z } from 'zod';
import { grey } from './colour.ts';
import { id, instant, partialDate, shortText } from './common.ts';

export const PICTURE_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;

/** A picture of a tile or of a firing: the file, and what it shows. */
export const pictureUpload = z
  .object({
    file: z.instanceof(File).meta({ type: 'string', format: 'binary' }),
    tile: id.optional(),
    firing: id.optional(),
    caption: shortText.default(''),
    taken: partialDate.optional(),
  })
  .meta({ id: 'PictureUpload' });
export const pictureChange = z
  .object({ caption: shortText, taken: partialDate.nullable(), grey: grey.nullable() })
  .partial()
  .meta({ id: 'PictureChange' });
export const pictureQuery = z.object({ tile: id.optional(), firing: id.optional() });

/** What is known of a picture; its bytes are at `…/pictures/{picture}/file`. */
export const picture = z
  .object({
    id,
    tile: id.nullable(),
    firing: id.nullable(),
    type: z.enum(PICTURE_TYPES),
    width: z.number().int(),
    height: z.number().int(),
    caption: z.string(),
    taken: z.string().nullable(),
    grey: grey.nullable(),
    createdAt: instant,
  })
  .meta({ id: 'Picture' });
export const pictures = z.array(picture);

export type Picture = z.infer<typeof picture>;
export type PictureUpload = z.infer<typeof pictureUpload>;
export type PictureChange = z.infer<typeof pictureChange>;
export type PictureQuery = z.infer<typeof pictureQuery>;
