import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { newWareGroup, wareGroup, wareGroupChange, wareGroups } from '../contract/ware-group.ts';
import {
  changeWareGroup,
  createWareGroup,
  deleteWareGroup,
  listWareGroups,
  readWareGroup,
} from '../services/ware-groups.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Ware groups'];
const path = '/studies/{study}/groups';
const params = z.object({ study: id, group: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The ware groups of a study, in the order shown' },
  request: { params: ofStudy },
  responses: { 200: json(wareGroups, 'Ware groups with their counts') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Add a ware group' },
  request: { params: ofStudy, body: body(newWareGroup) },
  responses: { 201: json(wareGroup, 'The ware group') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{group}`, tags, summary: 'One ware group' },
  request: { params },
  responses: { 200: json(wareGroup, 'The ware group') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{group}`, tags, summary: 'Change or move a ware group' },
  request: { params, body: body(wareGroupChange) },
  responses: { 200: json(wareGroup, 'The ware group as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{group}`, tags, summary: 'Delete a ware group; its specimens stay' },
  request: { params },
  responses: { 204: done },
});

export const wareGroupRoutes = router()
  .openapi(list, async (c) => c.json(await listWareGroups(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createWareGroup(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(read, async (c) => {
    const { study, group } = c.req.valid('param');
    return c.json(await readWareGroup(c.var.caller, study, group), 200);
  })
  .openapi(change, async (c) => {
    const { study, group: groupId } = c.req.valid('param');
    const changed = await changeWareGroup(c.var.caller, study, { groupId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, group } = c.req.valid('param');
    await deleteWareGroup(c.var.caller, study, group);
    return c.body(null, 204);
  });
