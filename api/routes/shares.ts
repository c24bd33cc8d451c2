import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { figureLook } from '../contract/figure.ts';
import {
  newComment,
  newShare,
  share,
  shareComment,
  sharedFigureFile,
  shareMade,
  shares,
  sharedTable as tableName,
} from '../contract/share.ts';
import { shared } from '../contract/shared.ts';
import { placementFile, sharedFile } from '../services/share-files.ts';
import { comment, readShared, sharedBundle, sharedFigure, sharedTable } from '../services/shared.ts';
import { createShare, deleteShare, listShares, revokeShare } from '../services/shares.ts';
import { body, csv, csvHeaders, done, drawing, fileHeaders, json, ofStudy, router } from './route.ts';
import { ofToken, visitor } from './visitor.ts';

const tags = ['Sharing'];
const path = '/studies/{study}/shares';
const ofShare = z.object({ study: id, share: id });
const html = { description: 'The file', content: { 'text/html': { schema: z.string() } } } as const;
const pageHeaders = (kind: string) => fileHeaders(`${kind}.html`, 'text/html; charset=utf-8');

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'Shares of a study, newest first, with what was said on them' },
  request: { params: ofStudy },
  responses: { 200: json(shares, 'Shares without their tokens, which nobody keeps') },
});
const make = createRoute({
  ...{ method: 'post', path, tags, summary: 'Share something of a study at an address nobody can guess' },
  request: { params: ofStudy, body: body(newShare) },
  responses: { 201: json(shareMade, 'The share with its token, told this once') },
});
const revoke = createRoute({
  ...{ method: 'post', path: `${path}/{share}/revocation`, tags, summary: 'Close a share for good' },
  request: { params: ofShare },
  responses: { 200: json(share, 'The share as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{share}`, tags, summary: 'Delete a share and its comments' },
  request: { params: ofShare },
  responses: { 204: done },
});
const read = createRoute({
  ...{ method: 'get', path: '/shared/{token}', tags, summary: 'What is shared at an address' },
  request: { params: ofToken },
  responses: { 200: json(shared, 'What was frozen when it was shared, and its words') },
});
const draw = createRoute({
  ...{ method: 'get', path: '/shared/{token}/figures/{file}', tags, summary: 'A figure of what is shared' },
  request: { params: ofToken.extend({ file: sharedFigureFile }), query: figureLook },
  responses: { 200: drawing },
});
const table = createRoute({
  ...{ method: 'get', path: '/shared/{token}/tables/{table}', tags, summary: 'A table of what is shared' },
  request: { params: ofToken.extend({ table: tableName }) },
  responses: { 200: csv },
});
const bundle = createRoute({
  ...{
    method: 'get',
    path: '/shared/{token}/bundle.zip',
    tags,
    summary: 'Everything that is shared as one zip',
  },
  request: { params: ofToken },
  responses: { 200: { description: 'A zip', content: { 'application/zip': { schema: z.string() } } } },
});
const page = createRoute({
  ...{ method: 'get', path: '/shared/{token}/page.html', tags, summary: 'What is shared as one HTML file' },
  request: { params: ofToken },
  responses: { 200: html },
});
const placementPage = createRoute({
  ...{ method: 'get', path: '/studies/{study}/placements/{placement}/page.html', tags },
  summary: 'A kept placement as one HTML file that opens from a disk without a network',
  request: { params: z.object({ study: id, placement: id }) },
  responses: { 200: html },
});
const say = createRoute({
  ...{
    method: 'post',
    path: '/shared/{token}/comments',
    tags,
    summary: 'Leave a comment, where they are taken',
  },
  request: { params: ofToken, body: body(newComment) },
  responses: { 201: json(shareComment, 'The comment') },
});

export const shareRoutes = router()
  .openapi(list, async (c) => c.json(await listShares(c.var.caller, c.req.valid('param').study), 200))
  .openapi(make, async (c) => {
    const wish = { wish: c.req.valid('json'), outside: c.var.outside };
    return c.json(await createShare(c.var.caller, c.req.valid('param').study, wish), 201);
  })
  .openapi(revoke, async (c) => {
    const { study, share: shareId } = c.req.valid('param');
    return c.json(await revokeShare(c.var.caller, study, shareId), 200);
  })
  .openapi(remove, async (c) => {
    const { study, share: shareId } = c.req.valid('param');
    await deleteShare(c.var.caller, study, shareId);
    return c.body(null, 204);
  })
  .openapi(read, async (c) => c.json(await readShared(visitor(c, c.req.valid('param').token)), 200))
  .openapi(draw, async (c) => {
    const { token, file } = c.req.valid('param');
    const { bytes, type } = await sharedFigure(visitor(c, token), file, c.req.valid('query'));
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(table, async (c) => {
    const { token, table: name } = c.req.valid('param');
    return c.body(await sharedTable(visitor(c, token), name), 200, csvHeaders(`${name}.csv`));
  })
  .openapi(bundle, async (c) => {
    const bytes = await sharedBundle(visitor(c, c.req.valid('param').token));
    const headers = fileHeaders('placement.zip', 'application/zip');
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, headers) as never;
  })
  .openapi(page, async (c) => {
    const { file, kind } = await sharedFile(visitor(c, c.req.valid('param').token), c.var.shareFile);
    return c.body(file, 200, pageHeaders(kind));
  })
  .openapi(placementPage, async (c) => {
    const { study, placement } = c.req.valid('param');
    const wish = { placement, built: c.var.shareFile };
    return c.body(await placementFile(c.var.caller, study, wish), 200, pageHeaders('placement'));
  })
  .openapi(say, async (c) =>
    c.json(await comment(visitor(c, c.req.valid('param').token), c.req.valid('json')), 201),
  );
