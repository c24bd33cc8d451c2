import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { id } from '../contract/common.ts';
import { figureSheet, figureWords } from '../contract/figure.ts';
import { firingFigureFile } from '../contract/firing-figure.ts';
import { firingFigure, firingWords } from '../services/firing-figures.ts';
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

export const studyFigureRoutes = router()
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
  });
