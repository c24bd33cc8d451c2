import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { serveStatic } from '@hono/node-server/serve-static';
import type { OpenAPIHono } from '@hono/zod-openapi';
import type { Served } from './routes/route.ts';

const FOREVER = 'public, max-age=31536000, immutable';

/** Serves the built pages; every address without a file's ending is answered by the one page that reads it. */
export function servePages(app: OpenAPIHono<Served>, folder: string): void {
  app.use('/*', async (c, next) => {
    await next();
    c.header('cache-control', c.req.path.startsWith('/assets/') && c.res.ok ? FOREVER : 'no-cache');
  });
  app.get('/*', serveStatic({ root: folder }));
  const index = path.join(folder, 'index.html');
  app.get('/*', (c, next) => {
    if (/\.\w{1,8}$/.test(c.req.path)) return next();
    if (!existsSync(index)) return Promise.resolve(c.text(UNBUILT, 503));
    return Promise.resolve(c.html(readFileSync(index, 'utf8')));
  });
}

const UNBUILT =
  'The pages have not been built yet: run `npm run build`, or start with `npm start`. The API answers at /api/docs.\n';
