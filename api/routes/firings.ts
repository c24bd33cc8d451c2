import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { firing, firingChange, firings, newFiring, newReadings } from '../contract/firing.ts';
import { comparedFirings, firingComparison, logMove, logPreview, logQuery } from '../contract/firing-log.ts';
import { compareStudyFirings } from '../services/compare-firings.ts';
import { moveLog, previewLog, putLog, takeOffLog } from '../services/firing-logs.ts';
import {
  addReadings,
  changeFiring,
  createFiring,
  deleteFiring,
  listFirings,
  readFiring,
  takeOffReading,
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
const offReading = createRoute({
  ...{ method: 'delete', path: `${path}/{firing}/readings/{reading}`, tags },
  summary: 'Take a reading by hand off a firing; a note that is sent again does not bring it back',
  request: { params: params.extend({ reading: id }) },
  responses: { 200: json(firing, 'The firing as it is now') },
});
const log = { method: 'put', path: `${path}/{firing}/log`, tags } as const;
const LOG_BODY = { required: true, content: { 'text/csv': { schema: z.string() } } } as const;
const put = createRoute({
  ...{ ...log, summary: 'Read a thermocouple log into a firing, in place of the one it has' },
  description: 'The body is the log itself (CSV, any delimiter), read as it streams in.',
  request: { params, query: logQuery, body: LOG_BODY },
  responses: { 200: json(firing, 'The firing with what its log says') },
});
const look = createRoute({
  ...{ ...log, method: 'post', path: `${log.path}/preview` },
  summary: 'How a log is understood and what looks wrong in it; nothing is stored',
  request: { params, query: logQuery, body: LOG_BODY },
  responses: { 200: json(logPreview, 'Columns, first rows, doubts') },
});
const move = createRoute({
  ...{ ...log, method: 'patch', summary: 'Put the log elsewhere on the fire’s clock' },
  request: { params, body: body(logMove) },
  responses: { 200: json(firing, 'The firing as it is now') },
});
const takeOff = createRoute({
  ...{ ...log, method: 'delete', summary: 'Take the log off a firing' },
  request: { params },
  responses: { 200: json(firing, 'The firing as it is now') },
});
const compare = createRoute({
  ...{ method: 'post', path: `${path}/comparison`, tags, summary: 'Firings with a log side by side' },
  request: { params: ofStudy, body: body(comparedFirings) },
  responses: { 200: json(firingComparison, 'What differs beyond the errors of the sensors') },
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
  .openapi(offReading, async (c) => {
    const { study, firing: firingId, reading } = c.req.valid('param');
    return c.json(await takeOffReading(c.var.caller, study, { id: firingId, reading }), 200);
  })
  .openapi(put, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    const sent = { firing: firingId, query: c.req.valid('query'), body: c.req.raw.body };
    return c.json(await putLog(c.var.caller, study, sent), 200);
  })
  .openapi(look, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    const sent = { firing: firingId, query: c.req.valid('query'), body: c.req.raw.body };
    return c.json(await previewLog(c.var.caller, study, sent), 200);
  })
  .openapi(move, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    const wish = { id: firingId, begins: c.req.valid('json').begins };
    return c.json(await moveLog(c.var.caller, study, wish), 200);
  })
  .openapi(takeOff, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    return c.json(await takeOffLog(c.var.caller, study, firingId), 200);
  })
  .openapi(compare, async (c) => {
    const { firings: ids } = c.req.valid('json');
    return c.json(await compareStudyFirings(c.var.caller, c.req.valid('param').study, ids), 200);
  })
  .openapi(remove, async (c) => {
    const { study, firing: firingId } = c.req.valid('param');
    await deleteFiring(c.var.caller, study, firingId);
    return c.body(null, 204);
  });
