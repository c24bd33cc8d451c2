import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { notebook, notebookQuery } from '../contract/notebook.ts';
import { notebookCsv, readNotebook } from '../services/notebook.ts';
import { notebookZip } from '../services/notebook-zip.ts';
import { csv, csvHeaders, fileHeaders, json, ofStudy, router } from './route.ts';

const tags = ['Fire'];
const path = '/studies/{study}/notebook';

const read = createRoute({
  ...{ method: 'get', path, tags },
  summary: 'Everything of a study on one line of time, newest first',
  request: { params: ofStudy, query: notebookQuery },
  responses: { 200: json(notebook, 'Batches, roasts, firings, tiles, plans, analyses, placements') },
});
const table = createRoute({
  ...{ method: 'get', path: `${path}.csv`, tags, summary: 'The notebook as CSV' },
  request: { params: ofStudy, query: notebookQuery },
  responses: { 200: csv },
});

const zip = createRoute({
  ...{ method: 'get', path: `${path}.zip`, tags },
  summary: 'The notebook to take away: a table, a page to read, and the pictures as files',
  request: { params: ofStudy, query: notebookQuery },
  responses: { 200: { description: 'The zip', content: { 'application/zip': { schema: z.string() } } } },
});

export const notebookRoutes = router()
  .openapi(read, async (c) => {
    const found = await readNotebook(c.var.caller, c.req.valid('param').study, c.req.valid('query'));
    return c.json(found, 200);
  })
  .openapi(table, async (c) => {
    const text = await notebookCsv(c.var.caller, c.req.valid('param').study, c.req.valid('query'));
    return c.body(text, 200, csvHeaders('notebook.csv'));
  })
  .openapi(zip, async (c) => {
    const bytes = await notebookZip(c.var.caller, c.req.valid('param').study, c.req.valid('query'));
    return c.body(
      bytes as Uint8Array<ArrayBuffer>,
      200,
      fileHeaders('notebook.zip', 'application/zip'),
    ) as never;
  });
