import { z } from 'zod';

/** One thing wrong with a request: where it is (`values.3.unit`), and what is required there. */
export const fault = z.object({ at: z.string(), message: z.string() });

/** Every error answer, after RFC 9457, as application/problem+json. */
export const problem = z
  .object({
    type: z.string(),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    faults: z.array(fault).optional(),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof problem>;
export type Fault = z.infer<typeof fault>;
