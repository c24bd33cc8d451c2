import type { Context } from 'hono';
import { z } from 'zod';
import type { Visitor } from '../services/share-open.ts';
import type { Served } from './route.ts';

/** Any text: what is no token at all is answered just as an unknown one. */
export const ofToken = z.object({ token: z.string().max(200) });

/** Who holds a token, for routes under `/shared/{token}`. */
export const visitor = (c: Context<Served>, token: string): Visitor => ({
  db: c.var.caller.db,
  address: c.var.cameFrom,
  token,
});
