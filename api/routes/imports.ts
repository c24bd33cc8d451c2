import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { dataImport, imports, startedImport, upload } from '../contract/import.ts';
import { preview } from '../contract/intake.ts';
import { previewImport } from '../services/import-preview.ts';
import { startImport } from '../services/import-start.ts';
import { endImport, listImports, readImport } from '../services/imports.ts';
import { done, json, ofStudy, router } from './route.ts';

const tags = ['Intake'];
const path = '/studies/{study}/imports';
const params = z.object({ study: id, import: id });
const form = { required: true, content: { 'multipart/form-data': { schema: upload } } } as const;

const look = createRoute({
  ...{ method: 'post', path: `${path}/preview`, tags },
  summary: 'How a file or pasted table is understood; nothing is stored',
  request: { params: ofStudy, body: form },
  responses: { 200: json(preview, 'Columns, first rows, problems') },
});
const start = createRoute({
  ...{ method: 'post', path, tags, summary: 'Bring in a file or pasted table' },
  request: { params: ofStudy, body: form },
  responses: { 202: json(startedImport, 'Under way; ask for its progress by this id') },
});
const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'Imports of a study, newest first' },
  request: { params: ofStudy },
  responses: { 200: json(imports, 'Imports') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{import}`, tags, summary: 'Progress or outcome of an import' },
  request: { params },
  responses: { 200: json(dataImport, 'The import') },
});
const end = createRoute({
  ...{ method: 'delete', path: `${path}/{import}`, tags },
  summary: 'Stop an import under way, or take back one that is done',
  request: { params },
  responses: { 204: done },
});

export const importRoutes = router()
  .openapi(look, async (c) => {
    const seen = await previewImport(c.var.caller, c.req.valid('param').study, c.req.valid('form'));
    return c.json(seen, 200);
  })
  .openapi(start, async (c) => {
    const started = await startImport(c.var.caller, c.req.valid('param').study, c.req.valid('form'));
    return c.json(started, 202);
  })
  .openapi(list, async (c) => c.json(await listImports(c.var.caller, c.req.valid('param').study), 200))
  .openapi(read, async (c) => {
    const { study, import: importId } = c.req.valid('param');
    return c.json(await readImport(c.var.caller, study, importId), 200);
  })
  .openapi(end, async (c) => {
    const { study, import: importId } = c.req.valid('param');
    await endImport(c.var.caller, study, importId);
    return c.body(null, 204);
  });
