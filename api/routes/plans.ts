import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { newPlan, plan, plans, tilesOfPlan } from '../contract/plan.ts';
import { tiles } from '../contract/tile.ts';
import { createPlan, deletePlan, listPlans, makeTilesOfPlan, readPlan } from '../services/plans.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Fire'];
const path = '/studies/{study}/plans';
const params = z.object({ study: id, plan: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The plans of a study, newest first' },
  request: { params: ofStudy },
  responses: { 200: json(plans, 'All of them') },
});
const create = createRoute({
  ...{ method: 'post', path, tags },
  summary:
    'Draw up a plan: a ladder, factors one at a time, all together or a fraction; or accept a suggested tile',
  request: { params: ofStudy, body: body(newPlan) },
  responses: { 201: json(plan, 'The plan, its places drawn at random by its seed') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{plan}`, tags, summary: 'One plan' },
  request: { params },
  responses: { 200: json(plan, 'The plan') },
});
const make = createRoute({
  ...{ method: 'post', path: `${path}/{plan}/tiles`, tags, summary: 'Make the tiles of a plan' },
  request: { params, body: body(tilesOfPlan) },
  responses: { 201: json(tiles, 'Tiles with their zones, outcome still open') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{plan}`, tags, summary: 'Delete a plan; tiles made of it stay' },
  request: { params },
  responses: { 204: done },
});

export const planRoutes = router()
  .openapi(list, async (c) => c.json(await listPlans(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createPlan(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(read, async (c) => {
    const { study, plan: planId } = c.req.valid('param');
    return c.json(await readPlan(c.var.caller, study, planId), 200);
  })
  .openapi(make, async (c) => {
    const { study, plan: planId } = c.req.valid('param');
    const wish = { id: planId, wish: c.req.valid('json') };
    return c.json(await makeTilesOfPlan(c.var.caller, study, wish), 201);
  })
  .openapi(remove, async (c) => {
    const { study, plan: planId } = c.req.valid('param');
    await deletePlan(c.var.caller, study, planId);
    return c.body(null, 204);
  });
