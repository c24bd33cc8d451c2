import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { comparisonText, figureFile, figureLook, figureOrder } from '../contract/figure.ts';
import {
  comparisonFigure,
  placementFigure,
  placementText,
  textOfComparison,
} from '../services/placement-figures.ts';
import { body, drawing, fileHeaders, json, ofStudy, router } from './route.ts';

const tags = ['Figures'];
const kept = '/studies/{study}/placements/{placement}';
const ofPlacement = z.object({ study: id, placement: id });
const draw = createRoute({
  ...{ method: 'get', path: `${kept}/figures/{file}`, tags },
  summary: 'A figure of a kept placement: SVG, vector PDF with its fonts, or PNG',
  request: { params: ofPlacement.extend({ file: figureFile }), query: figureLook },
  responses: { 200: drawing },
});
const write = createRoute({
  ...{ method: 'get', path: `${kept}/text`, tags },
  summary: 'Captions, methods paragraph and citations of a kept placement',
  request: { params: ofPlacement, query: figureLook },
  responses: { 200: json(comparisonText, 'The words that go with the figures') },
});
const drawUnkept = createRoute({
  ...{ method: 'post', path: '/studies/{study}/comparison/figures/{file}', tags },
  summary: 'A figure of a comparison that is not kept',
  request: { params: ofStudy.extend({ file: figureFile }), body: body(figureOrder) },
  responses: { 200: drawing },
});
const writeUnkept = createRoute({
  ...{ method: 'post', path: '/studies/{study}/comparison/text', tags },
  summary: 'Captions, methods paragraph and citations of a comparison that is not kept',
  request: { params: ofStudy, body: body(figureOrder) },
  responses: { 200: json(comparisonText, 'The words that go with the figures') },
});

export const figureRoutes = router()
  .openapi(draw, async (c) => {
    const { study, placement: placementId, file } = c.req.valid('param');
    const look = c.req.valid('query');
    const { bytes, type } = await placementFigure(c.var.caller, study, { placementId, file, look });
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(write, async (c) => {
    const { study, placement: placementId } = c.req.valid('param');
    const look = c.req.valid('query');
    return c.json(await placementText(c.var.caller, study, { placementId, look }), 200);
  })
  .openapi(drawUnkept, async (c) => {
    const { study, file } = c.req.valid('param');
    const { bytes, type } = await comparisonFigure(c.var.caller, study, { ...c.req.valid('json'), file });
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(writeUnkept, async (c) => {
    const text = await textOfComparison(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(text, 200);
  });
