import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context } from 'hono';
import { z } from 'zod';
import type { Visitor } from '../services/share-open.ts';
import type { Served } from './route.ts';

/** Any text: what is no token at all is answered just as an unknown one. */
export const ofToken = z.object({ token: z.string().max(200) });

/** Who holds a token, for routes under `/shared/{token}`. */
export const visitor = (c: Context<Served>, token: string): Visitor => ({
  db: c.var.caller.db,
  address: addressOf(c),
  token,
});

/** Where a request comes from; without a socket, as in tests, from one place. */
function addressOf(c: Context): string {
  try {
    return getConnInfo(c).remote.address ?? 'unknown';
  } catch {
    return 'unknown';
  }
}
