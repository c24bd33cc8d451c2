import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { firing, firingChange, firings, newFiring, newReadings } from '../contract/firing.ts';
import {
  addReadings,
  changeFiring,
  createFiring,
  deleteFiring,
  listFirings,
  readFiring,
} from '../services/firings.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Fire'];
const path = '/studies/{study}/firings';
const params = z.object({ study: id, firing: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The firings of a study, in the order they were done' },
  request: { params: ofStudy },
  responses: { 200: json(firings, 'All of them') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Record a firing' },
  request: { params: ofStudy, body: body(newFiring) },
  responses: { 201: json(firing, 'The firing') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{firing}`, tags, summary: 'One firing' },
  request: { params },
  responses: { 200: json(firing, 'The firing') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{firing}`, tags, summary: 'Change a firing' },
  request: { params, body: body(firingChange) },
  responses: { 200: json(firing, 'The firing as it is now') },
});
const readings = createRoute({
  ...{ method: 'post', path: `${path}/{firing}/readings`, tags, summary: 'Add readings taken by hand' },
  request: { params, body: body(newReadings) },
  responses: { 200: json(firing, 'The firing as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{firing}`, tags },
  summary: 'Delete a firing; its tiles stay, in no known fire',
  request: { params },
  responses: { 204: done },
});

export const firingRoutes = router()
  .openapi(list, async (c) => c.json(await listFirings(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createFiring(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(read, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    return c.json(await readFiring(c.var.caller, study, firingId), 200);
  })
  .openapi(change, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    const changed = await changeFiring(c.var.caller, study, { id: firingId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(readings, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    const wish = { id: firingId, readings: c.req.valid('json') };
    return c.json(await addReadings(c.var.caller, study, wish), 200);
  })
  .openapi(remove, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    await deleteFiring(c.var.caller, study, firingId);
    return c.body(null, 204);
  });
