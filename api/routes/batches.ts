import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { batch, batchChange, batches, fired, firing, newBatch, newBlend } from '../contract/batch.ts';
import { id } from '../contract/common.ts';
import { targetAnswer, targetProblem } from '../contract/target.ts';
import { changeBatch, createBatch, deleteBatch, listBatches, readBatch } from '../services/batches.ts';
import { fireOnBench, solveTarget } from '../services/bench.ts';
import { createBlend } from '../services/blends.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Bench'];
const path = '/studies/{study}/batches';
const params = z.object({ study: id, batch: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The batches of a study' },
  request: { params: ofStudy },
  responses: { 200: json(batches, 'All of them') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Add a batch' },
  request: { params: ofStudy, body: body(newBatch) },
  responses: { 201: json(batch, 'The batch') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{batch}`, tags, summary: 'One batch' },
  request: { params },
  responses: { 200: json(batch, 'The batch') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{batch}`, tags, summary: 'Change a batch' },
  request: { params, body: body(batchChange) },
  responses: { 200: json(batch, 'The batch as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{batch}`, tags, summary: 'Delete a batch' },
  request: { params },
  responses: { 204: done },
});
const fireIt = createRoute({
  ...{
    method: 'post',
    path: `${path}/fired`,
    tags,
    summary: 'What a batch becomes in a fire, without keeping it',
  },
  request: { params: ofStudy, body: body(firing) },
  responses: { 200: json(fired, 'Oxides, mass balance, molecular formula, advice and cautions') },
});
const blend = createRoute({
  ...{
    method: 'post',
    path: '/studies/{study}/blends',
    tags,
    summary: 'Keep a blend of two to four batches',
  },
  request: { params: ofStudy, body: body(newBlend) },
  responses: { 201: json(batches, 'One batch for each place of the line, triangle or square') },
});
const solve = createRoute({
  ...{
    method: 'post',
    path: '/studies/{study}/targets/solve',
    tags,
    summary: 'The batches nearest to a target',
  },
  request: { params: ofStudy, body: body(targetProblem) },
  responses: { 200: json(targetAnswer, 'By Aitchison distance and by weighted error, with what is missing') },
});

export const batchRoutes = router()
  .openapi(list, async (c) => c.json(await listBatches(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createBatch(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(fireIt, async (c) => {
    const said = await fireOnBench(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  })
  .openapi(blend, async (c) => {
    const made = await createBlend(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(solve, async (c) => {
    const said = await solveTarget(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  })
  .openapi(read, async (c) => {
    const { study, batch: batchId } = c.req.valid('param');
    return c.json(await readBatch(c.var.caller, study, batchId), 200);
  })
  .openapi(change, async (c) => {
    const { study, batch: batchId } = c.req.valid('param');
    const changed = await changeBatch(c.var.caller, study, { id: batchId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, batch: batchId } = c.req.valid('param');
    await deleteBatch(c.var.caller, study, batchId);
    return c.body(null, 204);
  });
