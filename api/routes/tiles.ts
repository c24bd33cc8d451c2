import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { newTile, newZone, tile, tileChange, tiles, zoneChange } from '../contract/tile.ts';
import { changeTile, createTile, deleteTile, listTiles, readTile } from '../services/tiles.ts';
import { addZone, changeZone, deleteZone } from '../services/zones.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Fire'];
const path = '/studies/{study}/tiles';
const params = z.object({ study: id, tile: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The tiles of a study with their zones' },
  request: { params: ofStudy },
  responses: { 200: json(tiles, 'All of them') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Lay a grid of zones on a replica, or on a new one' },
  request: { params: ofStudy, body: body(newTile) },
  responses: { 201: json(tile, 'The tile') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{tile}`, tags, summary: 'One tile' },
  request: { params },
  responses: { 200: json(tile, 'The tile') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{tile}`, tags },
  summary: 'Change a tile; zones, where given, take the place of those there and are known by their labels',
  request: { params, body: body(tileChange) },
  responses: { 200: json(tile, 'The tile as it is now') },
});
const changeOne = createRoute({
  ...{
    method: 'patch',
    path: `${path}/{tile}/zones/{zone}`,
    tags,
    summary: 'Note what was seen of one zone',
  },
  request: { params: params.extend({ zone: id }), body: body(zoneChange) },
  responses: { 200: json(tile, 'The tile as it is now') },
});
const addOne = createRoute({
  ...{ method: 'post', path: `${path}/{tile}/zones`, tags },
  summary: 'Add a zone, on the grid or drawn on a picture',
  request: { params, body: body(newZone) },
  responses: { 201: json(tile, 'The tile as it is now') },
});
const removeOne = createRoute({
  ...{ method: 'delete', path: `${path}/{tile}/zones/{zone}`, tags },
  summary: 'Delete a zone; its analyses stay with the tile',
  request: { params: params.extend({ zone: id }) },
  responses: { 204: done },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{tile}`, tags },
  summary: 'Take the zones off a replica; the replica and its analyses stay',
  request: { params },
  responses: { 204: done },
});

export const tileRoutes = router()
  .openapi(list, async (c) => c.json(await listTiles(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createTile(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(read, async (c) => {
    const { study, tile: tileId } = c.req.valid('param');
    return c.json(await readTile(c.var.caller, study, tileId), 200);
  })
  .openapi(change, async (c) => {
    const { study, tile: tileId } = c.req.valid('param');
    const changed = await changeTile(c.var.caller, study, { id: tileId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(changeOne, async (c) => {
    const { study, tile: tileId, zone: zoneId } = c.req.valid('param');
    const wish = { id: tileId, zoneId, change: c.req.valid('json') };
    return c.json(await changeZone(c.var.caller, study, wish), 200);
  })
  .openapi(addOne, async (c) => {
    const { study, tile: tileId } = c.req.valid('param');
    const wish = { id: tileId, wish: c.req.valid('json') };
    return c.json(await addZone(c.var.caller, study, wish), 201);
  })
  .openapi(removeOne, async (c) => {
    const { study, tile: tileId, zone: zoneId } = c.req.valid('param');
    await deleteZone(c.var.caller, study, { id: tileId, zoneId });
    return c.body(null, 204);
  })
  .openapi(remove, async (c) => {
    const { study, tile: tileId } = c.req.valid('param');
    await deleteTile(c.var.caller, study, tileId);
    return c.body(null, 204);
  });
