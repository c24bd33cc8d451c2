import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { batchFigureFile, batchFigureWish } from '../contract/batch-figure.ts';
import { id } from '../contract/common.ts';
import { figureSheet, figureWords } from '../contract/figure.ts';
import { comparedFigureFile, comparedFigureWish, firingFigureFile } from '../contract/firing-figure.ts';
import { batchFigure, batchWords } from '../services/batch-figures.ts';
import { comparedFigure, firingFigure, firingWords } from '../services/firing-figures.ts';
import { drawing, fileHeaders, json, router } from './route.ts';

/** Figures of single things of a study: a firing, a batch. Those of comparisons and trials stand with them. */
const tags = ['Figures'];
const ofFiring = z.object({ study: id, firing: id });
const firingPath = '/studies/{study}/firings/{firing}';

const drawFiring = createRoute({
  ...{ method: 'get', path: `${firingPath}/figures/{file}`, tags },
  summary: 'The curve of a firing: SVG, vector PDF with its fonts, or PNG',
  request: { params: ofFiring.extend({ file: firingFigureFile }), query: figureSheet },
  responses: { 200: drawing },
});
const writeFiring = createRoute({
  ...{ method: 'get', path: `${firingPath}/text`, tags },
  summary: 'Caption, methods paragraph and standards of the curve of a firing',
  request: { params: ofFiring, query: figureSheet },
  responses: { 200: json(figureWords, 'The words that go with the figure') },
});

const drawCompared = createRoute({
  ...{ method: 'get', path: '/studies/{study}/firings/comparison/figures/{file}', tags },
  summary: 'The curves of firings over one another: SVG, PDF, or PNG',
  request: { params: z.object({ study: id, file: comparedFigureFile }), query: comparedFigureWish },
  responses: { 200: drawing },
});

const ofBatch = z.object({ study: id, batch: id });
const batchPath = '/studies/{study}/batches/{batch}';
const drawBatch = createRoute({
  ...{ method: 'get', path: `${batchPath}/figures/{file}`, tags },
  summary: 'A batch as predicted beside the tiles made of it and its target: SVG, PDF, or PNG',
  request: { params: ofBatch.extend({ file: batchFigureFile }), query: batchFigureWish },
  responses: { 200: drawing },
});
const writeBatch = createRoute({
  ...{ method: 'get', path: `${batchPath}/text`, tags },
  summary: 'Caption, methods paragraph and citations of a batch beside its tiles',
  request: { params: ofBatch, query: batchFigureWish },
  responses: { 200: json(figureWords, 'The words that go with the figure') },
});

export const studyFigureRoutes = router()
  // Before a firing by its id, which would take `comparison` for one.
  .openapi(drawCompared, async (c) => {
    const { study, file } = c.req.valid('param');
    const { bytes, type } = await comparedFigure(c.var.caller, study, { file, wish: c.req.valid('query') });
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(drawFiring, async (c) => {
    const { study, firing, file } = c.req.valid('param');
    const wish = { id: firing, file, sheet: c.req.valid('query') };
    const { bytes, type } = await firingFigure(c.var.caller, study, wish);
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(writeFiring, async (c) => {
    const { study, firing } = c.req.valid('param');
    const wish = { id: firing, sheet: c.req.valid('query') };
    return c.json(await firingWords(c.var.caller, study, wish), 200);
  })
  .openapi(drawBatch, async (c) => {
    const { study, batch, file } = c.req.valid('param');
    const wish = { id: batch, file, wish: c.req.valid('query') };
    const { bytes, type } = await batchFigure(c.var.caller, study, wish);
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(writeBatch, async (c) => {
    const { study, batch } = c.req.valid('param');
    const wish = { id: batch, wish: c.req.valid('query') };
    return c.json(await batchWords(c.var.caller, study, wish), 200);
  });
