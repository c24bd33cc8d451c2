import { createRoute } from '@hono/zod-openapi';
import { newStudy, studies, study, studyChange } from '../contract/study.ts';
import { loadDemo } from '../services/demo.ts';
import { changeStudy, createStudy, deleteStudy, listStudies, readStudy } from '../services/studies.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Studies'];
const list = createRoute({
  ...{ method: 'get', path: '/studies', tags, summary: 'All studies, newest first' },
  responses: { 200: json(studies, 'Studies with their counts') },
});
const create = createRoute({
  ...{ method: 'post', path: '/studies', tags, summary: 'Begin a study' },
  request: { body: body(newStudy) },
  responses: { 201: json(study, 'The study') },
});
const read = createRoute({
  ...{ method: 'get', path: '/studies/{study}', tags, summary: 'One study' },
  request: { params: ofStudy },
  responses: { 200: json(study, 'The study') },
});
const change = createRoute({
  ...{ method: 'patch', path: '/studies/{study}', tags, summary: 'Change what a study is called or says' },
  request: { params: ofStudy, body: body(studyChange) },
  responses: { 200: json(study, 'The study as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: '/studies/{study}', tags, summary: 'Delete a study and everything in it' },
  request: { params: ofStudy },
  responses: { 204: done },
});
const demo = createRoute({
  ...{ method: 'post', path: '/demo', tags, summary: 'Make the demo study: invented data, invented place' },
  responses: { 201: json(study, 'The demo study') },
});

export const studyRoutes = router()
  .openapi(list, async (c) => c.json(await listStudies(c.var.caller), 200))
  .openapi(create, async (c) => c.json(await createStudy(c.var.caller, c.req.valid('json')), 201))
  .openapi(read, async (c) => c.json(await readStudy(c.var.caller, c.req.valid('param').study), 200))
  .openapi(change, async (c) => {
    const changed = await changeStudy(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    await deleteStudy(c.var.caller, c.req.valid('param').study);
    return c.body(null, 204);
  })
  .openapi(demo, async (c) => c.json(await loadDemo(c.var.caller), 201));
