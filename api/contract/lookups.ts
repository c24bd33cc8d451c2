import { z } from 'zod';
import { MEASURED, UNCERTAINTY_BASES, UNITS } from '../domain/composition/types.ts';

export const analyte = z
  .object({
    symbol: z.string(),
    kind: z.enum(['oxide', 'element', 'other']),
    /** The element whose amount it tells; null for LOI and Total. */
    element: z.string().nullable(),
    name: z.string(),
    position: z.number().int(),
  })
  .meta({ id: 'Analyte' });
export const technique = z
  .object({
    code: z.string(),
    name: z.string(),
    /** One standard deviation as a share of the value, assumed where a laboratory states none; null: assume nothing. */
    relativeError: z.number().nullable(),
    note: z.string(),
    position: z.number().int(),
  })
  .meta({ id: 'Technique' });
export const lookups = z
  .object({
    analytes: z.array(analyte),
    techniques: z.array(technique),
    measured: z.array(z.enum(MEASURED)),
    units: z.array(z.enum(UNITS)),
    bases: z.array(z.enum(UNCERTAINTY_BASES)),
  })
  .meta({ id: 'Lookups' });
export type Analyte = z.infer<typeof analyte>;
export type Technique = z.infer<typeof technique>;
export type Lookups = z.infer<typeof lookups>;
