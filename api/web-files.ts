import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Served } from './routes/route.ts';

const FOREVER = 'public, max-age=31536000, immutable';

/** A share and its talk; its sheet is one of the study's pages. */
const SHARED = /^\/shared\/([\w-]+)(\/talk)?\/?$/;

/** Serves the built pages; every address without a file's ending is answered by the page that reads it. */
export function servePages(app: OpenAPIHono<Served>, folder: string): void {
  app.use('/*', async (c, next) => {
    await next();
    c.header('cache-control', c.req.path.startsWith('/assets/') && c.res.ok ? FOREVER : 'no-cache');
  });
  app.get('/*', serveStatic({ root: folder, precompressed: true }));
  app.get('/*', async (c, next) => {
    if (/\.\w{1,8}$/.test(c.req.path)) return next();
    const token = SHARED.exec(c.req.path)?.[1];
    const page = path.join(folder, token === undefined ? 'index.html' : 'shared.html');
    if (!existsSync(page)) return c.text(UNBUILT, 503);
    // Asked for along with the code, not after it.
    if (token !== undefined) c.header('link', `</api/shared/${token}>; rel=preload; as=fetch; crossorigin`);
    return c.html(await readFile(page, 'utf8'));
  });
}

const UNBUILT =
  'The pages have not been built yet: run `npm run build`, or start with `npm start`. The API answers at /api/docs.\n';
