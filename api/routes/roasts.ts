import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { newRoast, roast, roastAnswer, roastChange, roastRecord, roasts } from '../contract/roast.ts';
import {
  assessRoast,
  changeRoast,
  createRoast,
  deleteRoast,
  listRoasts,
  readRoast,
} from '../services/roasts.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Bench'];
const path = '/studies/{study}/roasts';
const params = z.object({ study: id, roast: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The roasts of a study' },
  request: { params: ofStudy },
  responses: { 200: json(roasts, 'All of them') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Add a roast' },
  request: { params: ofStudy, body: body(newRoast) },
  responses: { 201: json(roast, 'The roast') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{roast}`, tags, summary: 'One roast' },
  request: { params },
  responses: { 200: json(roast, 'The roast') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{roast}`, tags, summary: 'Change a roast' },
  request: { params, body: body(roastChange) },
  responses: { 200: json(roast, 'The roast as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{roast}`, tags, summary: 'Delete a roast' },
  request: { params },
  responses: { 204: done },
});
const assess = createRoute({
  ...{
    method: 'post',
    path: `${path}/assess`,
    tags,
    summary: 'What a weighing says of a roast, without keeping it',
  },
  request: { params: ofStudy, body: body(roastRecord) },
  responses: { 200: json(roastAnswer, 'Ranges of lead compounds, sulfur and sulfur dioxide, with cautions') },
});

export const roastRoutes = router()
  .openapi(list, async (c) => c.json(await listRoasts(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createRoast(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(assess, async (c) => {
    const said = await assessRoast(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  })
  .openapi(read, async (c) => {
    const { study, roast: roastId } = c.req.valid('param');
    return c.json(await readRoast(c.var.caller, study, roastId), 200);
  })
  .openapi(change, async (c) => {
    const { study, roast: roastId } = c.req.valid('param');
    const changed = await changeRoast(c.var.caller, study, { id: roastId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, roast: roastId } = c.req.valid('param');
    await deleteRoast(c.var.caller, study, roastId);
    return c.body(null, 204);
  });
