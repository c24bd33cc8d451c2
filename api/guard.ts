import type { Context, MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { every } from 'hono/combine';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import { MOST_LOG_BYTES } from './contract/firing-log.ts';
import { MAX_FILE_BYTES } from './intake/limits.ts';
import { MOST_PICTURE_BYTES } from './intake/picture/limits.ts';
import { hostOf, outsideDoor } from './outside.ts';
import { Failure } from './services/failure.ts';

const MEGABYTE = 1024 * 1024;
const LOG = /\/firings\/[^/]+\/log(\/preview)?$/;
const MOST_JSON = 5 * MEGABYTE;
/** What a multipart body holds beside the file. */
const ENVELOPE = 3 * MEGABYTE;
/** A body beyond this is not even listened to. */
const MOST_DRAINED = 500 * MEGABYTE;
const LOOPBACK = /^(localhost|127(\.\d{1,3}){3}|\[::1\])$/i;
const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

/** Refuses what no page of ours sends, and tells browsers what our pages never do. */
export function guard(outside?: string): MiddlewareHandler {
  return every(headers, ownHost(outside), outsideDoor(outside), ownPages);
}

const headers = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'self'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'", "'unsafe-inline'"],
    imgSrc: ["'self'", 'data:', 'blob:'],
    fontSrc: ["'self'", 'data:'],
    workerSrc: ["'self'", 'blob:'],
    connectSrc: ["'self'"],
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: ["'self'"],
    frameAncestors: ["'none'"],
  },
  referrerPolicy: 'same-origin',
  strictTransportSecurity: false,
  xFrameOptions: 'DENY',
});

/**
 * A service without accounts trusts whoever reaches it, so it answers only to loopback names: a page elsewhere
 * whose name is made to point here (DNS rebinding) still sends its own name as Host.
 */
function ownHost(outside: string | undefined): MiddlewareHandler {
  const door = outside === undefined ? null : hostOf(new URL(outside).host);
  return async (c, next) => {
    const host = hostOf(c.req.header('host') ?? new URL(c.req.url).host);
    if (!LOOPBACK.test(host) && host !== door)
      throw new Failure(
        'refused',
        `the service answers to localhost and loopback addresses only, not to ${host}.`,
      );
    await next();
  };
}

/** Writes come from our own pages, or from a program that sends no Origin; never from a page elsewhere. */
const ownPages: MiddlewareHandler = async (c, next) => {
  if (READING.has(c.req.method)) return next();
  const origin = c.req.header('origin');
  const host = c.req.header('host') ?? new URL(c.req.url).host;
  const foreign = origin !== undefined && origin !== `http://${host}` && origin !== `https://${host}`;
  if (foreign || c.req.header('sec-fetch-site') === 'cross-site')
    throw new Failure(
      'refused',
      'changes are taken from this service’s own pages, not from a page elsewhere.',
    );
  await next();
};

/** Bodies larger than any honest one are refused before they are read. */
export function limitBody(): MiddlewareHandler {
  const json = atMost(MOST_JSON, 'a request');
  const file = atMost(MAX_FILE_BYTES, 'a file', ENVELOPE);
  const log = atMost(MOST_LOG_BYTES, 'a log');
  const picture = atMost(MOST_PICTURE_BYTES, 'a picture', ENVELOPE);
  return (c, next) => {
    const { path } = c.req;
    // Counted while it is read: a log is never held whole.
    if (LOG.test(path)) return announced(c) <= MOST_LOG_BYTES ? next() : log(c, next);
    if (path.endsWith('/pictures')) return picture(c, next);
    return (/\/(imports(\/preview)?|bundles)$/.test(path) ? file : json)(c, next);
  };
}

const announced = (c: Context) => Number(c.req.header('content-length') ?? 0);

function atMost(most: number, what: string, beside = 0): MiddlewareHandler {
  const maxSize = most + beside;
  const limit = most / MEGABYTE;
  const refuse = (found: string) =>
    new HTTPException(413, { message: `${what} must have at most ${limit} MB; this one has ${found}.` });
  const unannounced = bodyLimit({
    maxSize,
    onError: () => {
      throw refuse('more');
    },
  });
  return async (c, next) => {
    const sent = announced(c);
    if (sent <= maxSize) return unannounced(c, next);
    await drain(c.req.raw.body);
    throw refuse(`${(sent / MEGABYTE).toFixed(1)} MB`);
  };
}

/** Lets a sender finish: one whose connection breaks while it sends never reads why it was refused. */
async function drain(body: ReadableStream<Uint8Array> | null): Promise<void> {
  const reader = body?.getReader();
  let heard = 0;
  while (reader && heard < MOST_DRAINED) {
    const { done, value } = await reader.read();
    if (done) return;
    heard += value.length;
  }
}
