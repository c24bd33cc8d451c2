import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import {
  comparison,
  comparisonRequest,
  comparisonTable,
  newPlacement,
  placement,
  placementChange,
  placementSummary,
  placements,
} from '../contract/placement.ts';
import { compare } from '../services/comparison.ts';
import { comparisonCsv } from '../services/comparison-tables.ts';
import {
  changePlacement,
  deletePlacement,
  freezePlacement,
  listPlacements,
  readPlacement,
} from '../services/placements.ts';
import { body, csv, csvHeaders, done, json, ofStudy, router } from './route.ts';

const tags = ['Placement'];
const path = '/studies/{study}/placements';
const params = z.object({ study: id, placement: id });

const weigh = createRoute({
  ...{ method: 'post', path: '/studies/{study}/comparison', tags },
  summary: 'Fit a reference model and place replicas in it; nothing is stored',
  request: { params: ofStudy, body: body(comparisonRequest) },
  responses: { 200: json(comparison, 'Model, placements, who entered and who did not, and why') },
});
const table = createRoute({
  ...{ method: 'post', path: '/studies/{study}/comparison.csv', tags },
  summary: 'One table of a comparison as CSV',
  request: {
    params: ofStudy,
    query: z.object({ table: comparisonTable.default('placements') }),
    body: body(comparisonRequest),
  },
  responses: { 200: csv },
});
const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'Placements kept, newest first' },
  request: { params: ofStudy },
  responses: { 200: json(placements, 'Placements without their results') },
});
const freeze = createRoute({
  ...{ method: 'post', path, tags, summary: 'Make a comparison and keep it as it is answered' },
  request: { params: ofStudy, body: body(newPlacement) },
  responses: { 201: json(placement, 'The placement') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{placement}`, tags, summary: 'One placement as it was kept' },
  request: { params },
  responses: { 200: json(placement, 'The placement') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{placement}`, tags, summary: 'Rename a placement, or note something' },
  request: { params, body: body(placementChange) },
  responses: { 200: json(placementSummary, 'The placement without its result') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{placement}`, tags, summary: 'Delete a placement' },
  request: { params },
  responses: { 204: done },
});

export const placementRoutes = router()
  .openapi(weigh, async (c) => {
    const answer = await compare(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(answer, 200);
  })
  .openapi(table, async (c) => {
    const { table: name } = c.req.valid('query');
    const answer = await compare(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.body(comparisonCsv(answer, name), 200, csvHeaders(`${name}.csv`));
  })
  .openapi(list, async (c) => c.json(await listPlacements(c.var.caller, c.req.valid('param').study), 200))
  .openapi(freeze, async (c) => {
    const kept = await freezePlacement(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(kept, 201);
  })
  .openapi(read, async (c) => {
    const { study, placement: placementId } = c.req.valid('param');
    return c.json(await readPlacement(c.var.caller, study, placementId), 200);
  })
  .openapi(change, async (c) => {
    const { study, placement: placementId } = c.req.valid('param');
    const changed = await changePlacement(c.var.caller, study, { placementId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, placement: placementId } = c.req.valid('param');
    await deletePlacement(c.var.caller, study, placementId);
    return c.body(null, 204);
  });
