import { createRoute } from '@hono/zod-openapi';
import { figureWords } from '../contract/figure.ts';
import {
  drawOffAnswer,
  drawOffRequest,
  slipSamples,
  slipSamplesRequest,
  uncertaintyAnswer,
  uncertaintyRequest,
} from '../contract/slip.ts';
import { estimateAnswer, estimateRequest } from '../contract/slip-estimate.ts';
import { slipFigureFile, slipFigureOrder } from '../contract/slip-figure.ts';
import {
  depthAnswer,
  depthRequest,
  recastAnswer,
  recastRequest,
  uptakeAnswer,
  uptakeRequest,
} from '../contract/slip-layer.ts';
import { drawSlipOff, drawUncertainty, listSlipSamples } from '../services/slip.ts';
import { estimateSlip, learnUptake, readDepth, recastPaint } from '../services/slip-estimates.ts';
import { slipFigure, slipWords } from '../services/slip-figures.ts';
import { body, drawing, fileHeaders, json, ofStudy, router } from './route.ts';

const tags = ['Slip'];
const at = <Name extends string>(name: Name) =>
  ({ method: 'post', path: `/studies/{study}/slip/${name}`, tags }) as const;

const samples = createRoute({
  ...at('samples'),
  summary: 'Slip and body analyses as a calculation takes them',
  request: { params: ofStudy, body: body(slipSamplesRequest) },
  responses: { 200: json(slipSamples, 'One sample for each specimen and thing measured') },
});
const drawOff = createRoute({
  ...at('draw-off'),
  summary: 'Place a specimen with a share of slip drawn off its paint',
  request: { params: ofStudy, body: body(drawOffRequest) },
  responses: { 200: json(drawOffAnswer, 'The placement, how far slip can be drawn off, and the path') },
});
const uncertainty = createRoute({
  ...at('uncertainty'),
  summary: 'Carry uncertainties through drawing off and placing by seeded draws',
  request: { params: ofStudy, body: body(uncertaintyRequest) },
  responses: {
    200: json(uncertaintyAnswer, 'Intervals of distances and probabilities, and what was carried'),
  },
});
const estimate = createRoute({
  ...at('estimate'),
  summary: 'How much of a reading is slip',
  request: { params: ofStudy, body: body(estimateRequest) },
  responses: { 200: json(estimateAnswer, 'The fraction with its interval, or why it cannot be told') },
});
const recast = createRoute({
  ...at('recast'),
  summary: 'Take out lead and what was added, and set the rest beside body and slip',
  request: { params: ofStudy, body: body(recastRequest) },
  responses: { 200: json(recastAnswer, 'Oxide by oxide, with what the ratios are consistent with') },
});
const depth = createRoute({
  ...at('depth'),
  summary: 'How deep a paint is read, oxide by oxide',
  request: { params: ofStudy, body: body(depthRequest) },
  responses: {
    200: json(depthAnswer, 'Depths, shares from beneath, and the reading corrected line by line'),
  },
});
const uptake = createRoute({
  ...at('uptake'),
  summary: 'Learn from tiles how slip falls with thickness, and apply it',
  request: { params: ofStudy, body: body(uptakeRequest) },
  responses: { 200: json(uptakeAnswer, 'The law fitted, and a fraction for each paint of known thickness') },
});
const draw = createRoute({
  ...at('figures/{file}'),
  summary: 'The line that a paint and its slip lie on: SVG, vector PDF with its fonts, or PNG',
  request: { params: ofStudy.extend({ file: slipFigureFile }), body: body(slipFigureOrder) },
  responses: { 200: drawing },
});
const write = createRoute({
  ...at('text'),
  summary: 'Caption, methods paragraph and citations of a mixing line',
  request: { params: ofStudy, body: body(slipFigureOrder) },
  responses: { 200: json(figureWords, 'The words that go with the figure') },
});

export const slipRoutes = router()
  .openapi(samples, async (c) =>
    c.json(await listSlipSamples(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(drawOff, async (c) =>
    c.json(await drawSlipOff(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(uncertainty, async (c) =>
    c.json(await drawUncertainty(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(estimate, async (c) =>
    c.json(await estimateSlip(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(recast, async (c) =>
    c.json(await recastPaint(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(depth, async (c) =>
    c.json(await readDepth(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(uptake, async (c) =>
    c.json(await learnUptake(c.var.caller, c.req.valid('param').study, c.req.valid('json')), 200),
  )
  .openapi(draw, async (c) => {
    const { study, file } = c.req.valid('param');
    const { bytes, type } = await slipFigure(c.var.caller, study, { file, order: c.req.valid('json') });
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(write, async (c) => {
    const said = await slipWords(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  });
