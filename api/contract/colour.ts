import { z } from 'zod';
import type { Corner, Grey, Lab, MeasuredColour, Outline } from '../domain/colour/types.ts';
import { id, shortText } from './common.ts';

const share = z.number().min(0, 'a share is 0 to 1').max(1, 'a share is 0 to 1');
const corner = z.tuple([share, share]) satisfies z.ZodType<Corner>;
/** Corners in a picture, shares of its width and height. */
export const outline = z
  .array(corner)
  .min(3, 'an outline needs at least three corners')
  .max(200) satisfies z.ZodType<Outline>;
export const grey = z
  .object({ outline, reflectance: z.number().gt(0).lte(1) })
  .meta({ id: 'Grey' }) satisfies z.ZodType<Grey>;

const number = z.number();
const lab = z.tuple([number, number, number]) satisfies z.ZodType<Lab>;
/** A colour as the domain measured it, and the picture that it was measured in. */
export const measuredColour = z
  .object({
    lab,
    error: lab.nullable(),
    spread: lab,
    hex: z.string().regex(/^#[0-9a-f]{6}$/),
    shown: z.boolean(),
    pixels: z.number().int().positive(),
    burnt: share,
    drowned: share,
    grey,
    method: z.string().max(1000),
    cautions: z.array(z.string().max(1000)).max(20),
    picture: id,
    pictureCaption: shortText.default(''),
  })
  .meta({ id: 'MeasuredColour' }) satisfies z.ZodType<MeasuredColour>;

export type ZoneColour = z.infer<typeof measuredColour>;
