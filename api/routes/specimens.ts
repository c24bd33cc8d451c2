import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import {
  counted,
  newSpecimen,
  specimen,
  specimenBulk,
  specimenBulkDelete,
  specimenChange,
  specimenPage,
  specimenQuery,
} from '../contract/specimen.ts';
import {
  changeSpecimen,
  changeSpecimens,
  createSpecimen,
  deleteSpecimen,
  deleteSpecimens,
  listSpecimens,
  readSpecimen,
} from '../services/specimens.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Specimens'];
const path = '/studies/{study}/specimens';
const params = z.object({ study: id, specimen: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'Search and sort the specimens of a study' },
  request: { params: ofStudy, query: specimenQuery },
  responses: { 200: json(specimenPage, 'One page of specimens') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Add a specimen' },
  request: { params: ofStudy, body: body(newSpecimen) },
  responses: { 201: json(specimen, 'The specimen') },
});
const changeMany = createRoute({
  ...{ method: 'post', path: `${path}/change`, tags, summary: 'Change kind or ware group of many at once' },
  request: { params: ofStudy, body: body(specimenBulk) },
  responses: { 200: json(counted, 'How many were changed') },
});
const removeMany = createRoute({
  ...{ method: 'post', path: `${path}/delete`, tags, summary: 'Delete many specimens with their analyses' },
  request: { params: ofStudy, body: body(specimenBulkDelete) },
  responses: { 200: json(counted, 'How many were deleted') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{specimen}`, tags, summary: 'One specimen' },
  request: { params },
  responses: { 200: json(specimen, 'The specimen') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{specimen}`, tags, summary: 'Change a specimen' },
  request: { params, body: body(specimenChange) },
  responses: { 200: json(specimen, 'The specimen as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{specimen}`, tags, summary: 'Delete a specimen with its analyses' },
  request: { params },
  responses: { 204: done },
});

export const specimenRoutes = router()
  .openapi(list, async (c) => {
    const page = await listSpecimens(c.var.caller, c.req.valid('param').study, c.req.valid('query'));
    return c.json(page, 200);
  })
  .openapi(create, async (c) => {
    const made = await createSpecimen(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(changeMany, async (c) => {
    const changed = await changeSpecimens(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(changed, 200);
  })
  .openapi(removeMany, async (c) => {
    const { specimens } = c.req.valid('json');
    return c.json(await deleteSpecimens(c.var.caller, c.req.valid('param').study, specimens), 200);
  })
  .openapi(read, async (c) => {
    const { study, specimen: specimenId } = c.req.valid('param');
    return c.json(await readSpecimen(c.var.caller, study, specimenId), 200);
  })
  .openapi(change, async (c) => {
    const { study, specimen: specimenId } = c.req.valid('param');
    const changed = await changeSpecimen(c.var.caller, study, { specimenId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, specimen: specimenId } = c.req.valid('param');
    await deleteSpecimen(c.var.caller, study, specimenId);
    return c.body(null, 204);
  });
