import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { bundleTaken, bundleUpload } from '../contract/bundle.ts';
import { id } from '../contract/common.ts';
import { placementBundle, takeBundle } from '../services/bundles.ts';
import { fileHeaders, json, router } from './route.ts';

const tags = ['Sharing'];
const give = createRoute({
  ...{ method: 'get', path: '/studies/{study}/placements/{placement}/bundle.zip', tags },
  summary: 'A kept placement with everything it rests on: a Data Package in a zip',
  request: { params: z.object({ study: id, placement: id }) },
  responses: { 200: { description: 'The zip', content: { 'application/zip': { schema: z.string() } } } },
});
const take = createRoute({
  ...{ method: 'post', path: '/bundles', tags, summary: 'Bring a bundle in as a study of its own' },
  request: { body: { required: true, content: { 'multipart/form-data': { schema: bundleUpload } } } },
  responses: {
    201: json(bundleTaken, 'Its numbers came out again, one by one, or it says why they are others'),
  },
});

export const bundleRoutes = router()
  .openapi(give, async (c) => {
    const { study, placement } = c.req.valid('param');
    const bytes = await placementBundle(c.var.caller, study, placement);
    return c.body(
      bytes as Uint8Array<ArrayBuffer>,
      200,
      fileHeaders('placement.zip', 'application/zip'),
    ) as never;
  })
  .openapi(take, async (c) => {
    const bytes = new Uint8Array(await c.req.valid('form').file.arrayBuffer());
    return c.json(await takeBundle(c.var.caller, bytes), 201);
  });
