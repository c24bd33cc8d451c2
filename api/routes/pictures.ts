import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { picture, pictureChange, pictureQuery, pictures, pictureUpload } from '../contract/picture.ts';
import {
  changePicture,
  createPicture,
  deletePicture,
  listPictures,
  pictureFile,
  readPictureOf,
} from '../services/pictures.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Fire'];
const path = '/studies/{study}/pictures';
const params = z.object({ study: id, picture: id });
const form = { required: true, content: { 'multipart/form-data': { schema: pictureUpload } } } as const;

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'Pictures of a study, of one tile or of one firing' },
  request: { params: ofStudy, query: pictureQuery },
  responses: { 200: json(pictures, 'What is known of them; their bytes are asked for one by one') },
});
const create = createRoute({
  ...{ method: 'post', path, tags },
  summary:
    'Keep a JPEG, PNG or WebP of a tile or firing; place, camera and every other note in it are dropped',
  request: { params: ofStudy, body: form },
  responses: { 201: json(picture, 'The picture') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{picture}`, tags, summary: 'What is known of one picture' },
  request: { params },
  responses: { 200: json(picture, 'The picture') },
});
const file = createRoute({
  ...{ method: 'get', path: `${path}/{picture}/file`, tags, summary: 'The picture itself' },
  request: { params },
  responses: {
    200: {
      description: 'JPEG, PNG or WebP, with nothing in it but the picture',
      content: {
        'image/jpeg': { schema: z.string() },
        'image/png': { schema: z.string() },
        'image/webp': { schema: z.string() },
      },
    },
  },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{picture}`, tags },
  summary: 'Say what a picture shows, when it was taken, and where its grey patch lies',
  request: { params, body: body(pictureChange) },
  responses: { 200: json(picture, 'The picture as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{picture}`, tags },
  summary: 'Delete a picture; zones drawn on it lose their outline and keep what was measured',
  request: { params },
  responses: { 204: done },
});

export const pictureRoutes = router()
  .openapi(list, async (c) => {
    const found = await listPictures(c.var.caller, c.req.valid('param').study, c.req.valid('query'));
    return c.json(found, 200);
  })
  .openapi(create, async (c) => {
    const made = await createPicture(c.var.caller, c.req.valid('param').study, c.req.valid('form'));
    return c.json(made, 201);
  })
  .openapi(read, async (c) => {
    const { study, picture: pictureId } = c.req.valid('param');
    return c.json(await readPictureOf(c.var.caller, study, pictureId), 200);
  })
  .openapi(file, async (c) => {
    const { study, picture: pictureId } = c.req.valid('param');
    const { type, bytes } = await pictureFile(c.var.caller, study, pictureId);
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, {
      'content-type': type,
      'content-disposition': `inline; filename="picture.${type.slice('image/'.length)}"`,
      'x-content-type-options': 'nosniff',
    }) as never;
  })
  .openapi(change, async (c) => {
    const { study, picture: pictureId } = c.req.valid('param');
    const wish = { id: pictureId, change: c.req.valid('json') };
    return c.json(await changePicture(c.var.caller, study, wish), 200);
  })
  .openapi(remove, async (c) => {
    const { study, picture: pictureId } = c.req.valid('param');
    await deletePicture(c.var.caller, study, pictureId);
    return c.body(null, 204);
  });
