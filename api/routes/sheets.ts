import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { sheet, sheetNotes, sheetPicture } from '../contract/sheet.ts';
import { noteOnSharedSheet, pictureOnSharedSheet, readSharedSheet } from '../services/shared-sheet.ts';
import { noteOnSheet, pictureOnSheet, sheetOfStudy } from '../services/sheet-notes.ts';
import { body, json, router } from './route.ts';
import { ofToken, visitor } from './visitor.ts';

const tags = ['Fire'];
const path = '/studies/{study}/firings/{firing}/sheet';
const params = z.object({ study: id, firing: id });

const read = createRoute({
  ...{
    method: 'get',
    path,
    tags,
    summary: 'What the sheet at the fire needs: one firing, its tiles, their zones',
  },
  request: { params },
  responses: { 200: json(sheet, 'The sheet as it is now') },
});
const note = createRoute({
  ...{
    method: 'post',
    path: `${path}/notes`,
    tags,
    summary: 'Note what is seen at the fire; a note sent twice counts once',
  },
  request: { params, body: body(sheetNotes) },
  responses: { 200: json(sheet, 'The sheet as it is now') },
});

const form = { required: true, content: { 'multipart/form-data': { schema: sheetPicture } } } as const;
const picture = createRoute({
  ...{ method: 'post', path: `${path}/pictures`, tags, summary: 'Keep a picture taken at the fire, once' },
  request: { params, body: form },
  responses: { 200: json(sheet, 'The sheet as it is now') },
});
const shared = '/shared/{token}/sheet';
const readShared = createRoute({
  ...{
    method: 'get',
    path: shared,
    tags: ['Sharing'],
    summary: 'The sheet that a link opens: one firing, no more',
  },
  request: { params: ofToken },
  responses: { 200: json(sheet, 'The sheet as it is now') },
});
const noteShared = createRoute({
  ...{ method: 'post', path: `${shared}/notes`, tags: ['Sharing'], summary: 'Note what is seen at the fire' },
  request: { params: ofToken, body: body(sheetNotes) },
  responses: { 200: json(sheet, 'The sheet as it is now') },
});

const pictureShared = createRoute({
  ...{
    method: 'post',
    path: `${shared}/pictures`,
    tags: ['Sharing'],
    summary: 'Keep a picture taken at the fire',
  },
  request: { params: ofToken, body: form },
  responses: { 200: json(sheet, 'The sheet as it is now') },
});

export const sheetRoutes = router()
  .openapi(read, async (c) => {
    const { study, firing } = c.req.valid('param');
    return c.json(await sheetOfStudy(c.var.caller, study, firing), 200);
  })
  .openapi(note, async (c) => {
    const { study: studyId, firing: firingId } = c.req.valid('param');
    return c.json(await noteOnSheet(c.var.caller, { studyId, firingId }, c.req.valid('json')), 200);
  })
  .openapi(readShared, async (c) =>
    c.json(await readSharedSheet(visitor(c, c.req.valid('param').token)), 200),
  )
  .openapi(noteShared, async (c) => {
    const { token } = c.req.valid('param');
    return c.json(await noteOnSharedSheet(visitor(c, token), c.req.valid('json')), 200);
  })
  .openapi(picture, async (c) => {
    const { study: studyId, firing: firingId } = c.req.valid('param');
    return c.json(await pictureOnSheet(c.var.caller, { studyId, firingId }, c.req.valid('form')), 200);
  })
  .openapi(pictureShared, async (c) => {
    const { token } = c.req.valid('param');
    return c.json(await pictureOnSharedSheet(visitor(c, token), c.req.valid('form')), 200);
  });
