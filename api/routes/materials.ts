import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { material, materialChange, materials, newMaterial, shelf } from '../contract/material.ts';
import { answerShelf } from '../services/bench-shelf.ts';
import {
  changeMaterial,
  createMaterial,
  deleteMaterial,
  listMaterials,
  readMaterial,
} from '../services/materials.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Bench'];
const path = '/studies/{study}/materials';
const params = z.object({ study: id, material: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'The materials of a study’s own' },
  request: { params: ofStudy },
  responses: { 200: json(materials, 'All of them') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Add a material' },
  request: { params: ofStudy, body: body(newMaterial) },
  responses: { 201: json(material, 'The material') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{material}`, tags, summary: 'One material' },
  request: { params },
  responses: { 200: json(material, 'The material') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{material}`, tags, summary: 'Change a material' },
  request: { params, body: body(materialChange) },
  responses: { 200: json(material, 'The material as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{material}`, tags, summary: 'Delete a material' },
  request: { params },
  responses: { 204: done },
});
const readShelf = createRoute({
  ...{
    method: 'get',
    path: '/studies/{study}/shelf',
    tags,
    summary: 'Everything that a batch can be weighed from',
  },
  request: { params: ofStudy },
  responses: { 200: json(shelf, 'Starter materials, own materials and roasts, with their keys') },
});

export const materialRoutes = router()
  .openapi(list, async (c) => c.json(await listMaterials(c.var.caller, c.req.valid('param').study), 200))
  .openapi(create, async (c) => {
    const made = await createMaterial(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(readShelf, async (c) => c.json(await answerShelf(c.var.caller, c.req.valid('param').study), 200))
  .openapi(read, async (c) => {
    const { study, material: materialId } = c.req.valid('param');
    return c.json(await readMaterial(c.var.caller, study, materialId), 200);
  })
  .openapi(change, async (c) => {
    const { study, material: materialId } = c.req.valid('param');
    const changed = await changeMaterial(c.var.caller, study, {
      id: materialId,
      change: c.req.valid('json'),
    });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, material: materialId } = c.req.valid('param');
    await deleteMaterial(c.var.caller, study, materialId);
    return c.body(null, 204);
  });
