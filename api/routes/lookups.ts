import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { lookups } from '../contract/lookups.ts';
import { readHealth } from '../services/health.ts';
import { readLookups } from '../services/lookups.ts';
import { json, router } from './route.ts';

const tags = ['Service'];
const health = z
  .object({
    status: z.literal('ok'),
    version: z.string(),
    /** The address by which others reach what is shared; null where there is none. */
    outside: z.string().nullable(),
  })
  .meta({ id: 'Health' });

const look = createRoute({
  ...{ method: 'get', path: '/lookups', tags, summary: 'Analytes, techniques, units the service knows' },
  responses: { 200: json(lookups, 'Lookup tables') },
});
const check = createRoute({
  ...{ method: 'get', path: '/health', tags, summary: 'Whether service and database answer' },
  responses: { 200: json(health, 'Both answer') },
});

export const lookupRoutes = router()
  .openapi(look, async (c) => c.json(await readLookups(c.var.caller), 200))
  .openapi(check, async (c) => c.json({ ...(await readHealth(c.var.caller)), outside: c.var.outside }, 200));
