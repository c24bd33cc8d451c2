import { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { InvalidRequest } from '../problem.ts';
import type { Caller } from '../services/access.ts';

/** What every handler finds beside the request. */
export interface Served {
  Variables: {
    caller: Caller;
    /** Where the request comes from, as far as it can be known. */
    cameFrom: string;
    /** Folder of the page that a share is saved as; null where the pages are not served. */
    shareFile: string | null;
    /** Origin by which shares are reached from elsewhere; null where there is none. */
    outside: string | null;
  };
}

/** A set of routes whose requests are checked against their schemas before a handler sees them. */
export function router() {
  return new OpenAPIHono<Served>({
    defaultHook: (result) => {
      if (!result.success) throw new InvalidRequest(WHERE[result.target] ?? result.target, result.error);
    },
  });
}
const WHERE: Record<string, string> = { json: 'body', form: 'form', param: 'address', query: 'query' };

export const ofStudy = z.object({ study: id });

/** A JSON body that must be there. */
export function body<Schema extends z.ZodType>(schema: Schema) {
  return { required: true, content: { 'application/json': { schema } } } as const;
}

/** A JSON answer. */
export function json<Schema extends z.ZodType>(schema: Schema, description: string) {
  return { description, content: { 'application/json': { schema } } } as const;
}
export const done = { description: 'Done; nothing more to say.' } as const;

/** A CSV answer, with the headers that make a browser save it. */
export const csv = {
  description: 'A table, UTF-8 with a byte order mark',
  content: { 'text/csv': { schema: z.string() } },
} as const;
export function csvHeaders(fileName: string) {
  return {
    'content-type': 'text/csv; charset=utf-8',
    'content-disposition': `attachment; filename="${fileName}"`,
  };
}

/** Headers of any other file that a browser should save. */
export const fileHeaders = (fileName: string, type: string) => ({
  'content-type': type,
  'content-disposition': `attachment; filename="${fileName}"`,
});

/** What a route answers that draws a figure. */
export const drawing = {
  description: 'The figure; its caption is at the address of the text',
  content: {
    'image/svg+xml': { schema: z.string() },
    'application/pdf': { schema: z.string() },
    'image/png': { schema: z.string() },
  },
} as const;
