import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context, MiddlewareHandler } from 'hono';
import { compress } from 'hono/compress';
import { answerProblem } from './problem.ts';
import type { Served } from './routes/route.ts';
import { Failure } from './services/failure.ts';

const LOOPBACK_SOCKET = /^(::ffff:)?127(\.\d{1,3}){3}$|^::1$/;
/** Built files that a shared page asks for, beside those under `/assets/`. */
const FILES = new Set(['/index.html', '/mark.svg', '/appearance.js', '/sheet-worker.js']);
const READING = new Set(['GET', 'HEAD']);
const FORWARDED = ['forwarded', 'x-forwarded-for', 'x-forwarded-host', 'x-real-ip', 'via'];
const MOST_ADDRESS = 60;
const packed = compress();

/** The name in a Host header as it is compared: without port, case or the dot of a full name. */
export const hostOf = (host: string): string => host.replace(/:\d*$/, '').replace(/\.$/, '').toLowerCase();

/**
 * The outside door: a name by which a proxy or tunnel on this machine hands requests in. Whoever comes by that name
 * reaches what is shared and nothing else; everything else there is answered alike, whether it exists or not.
 */
export function outsideDoor(origin: string | undefined): MiddlewareHandler<Served> {
  const name = origin === undefined ? null : hostOf(new URL(origin).host);
  return async (c, next) => {
    const host = c.req.header('host');
    const outside = name !== null && host !== undefined && hostOf(host) === name;
    c.set('outside', origin ?? null);
    c.set('cameFrom', cameFrom(c, outside));
    if (name === null) return next();
    if (outside) return throughTheDoor(c, next);
    if (host === undefined || FORWARDED.some((header) => c.req.header(header) !== undefined))
      throw new Failure(
        'refused',
        'a proxy in front must pass on the Host it was asked for; this request came without it.',
      );
    return next();
  };
}

async function throughTheDoor(c: Context<Served>, next: () => Promise<void>): Promise<Response | undefined> {
  if (!isOpenOutside(c.req.method, c.req.path)) return answerProblem(c, 404, { detail: 'nothing is here.' });
  // Who comes from outside comes by a slower road than the machine's own.
  await packed(c, next);
  c.header('x-robots-tag', 'noindex, nofollow');
}

function isOpenOutside(method: string, path: string): boolean {
  if (/(^|\/)\.\.?(\/|$)/.test(path)) return false;
  if (path.startsWith('/api/shared/')) return true;
  return READING.has(method) && (/^\/(shared|assets)\/./.test(path) || FILES.has(path));
}

/**
 * Where a request comes from; without a socket, as in tests, from one place. A proxy's word is taken only of what comes
 * through the door from this machine, and only its last: what stands before it is the sender's own claim.
 */
function cameFrom(c: Context, outside: boolean): string {
  const socket = socketAddress(c);
  if (!outside || (socket !== null && !LOOPBACK_SOCKET.test(socket))) return socket ?? 'unknown';
  const told = c.req.header('x-forwarded-for')?.split(',').at(-1)?.trim();
  return told ? told.slice(0, MOST_ADDRESS) : (socket ?? 'unknown');
}

function socketAddress(c: Context): string | null {
  try {
    return getConnInfo(c).remote.address ?? null;
  } catch {
    return null;
  }
}
