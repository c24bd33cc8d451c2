import { createRoute } from '@hono/zod-openapi';
import { figureWords } from '../contract/figure.ts';
import {
  chanceCurve,
  chanceRequest,
  foundFactors,
  nextTile,
  nextTileRequest,
  trialAnalysis,
  trialRequest,
} from '../contract/trial.ts';
import { trialFigureFile, trialFigureOrder } from '../contract/trial-figure.ts';
import { trialFigure, trialWords } from '../services/trial-figures.ts';
import { analyseStudyTrial, chanceInStudy, nextTileOfStudy, trialFactors } from '../services/trials.ts';
import { body, drawing, fileHeaders, json, ofStudy, router } from './route.ts';

const tags = ['Fire'];
const path = '/studies/{study}/trials';

const factors = createRoute({
  ...{ method: 'get', path: `${path}/factors`, tags, summary: 'What was varied on the tiles of a study' },
  request: { params: ofStudy },
  responses: { 200: json(foundFactors, 'Factors with their settings') },
});
const analyse = createRoute({
  ...{ method: 'post', path: `${path}/analysis`, tags },
  summary: 'What mattered: each factor’s effect with its interval, and what cannot be told apart',
  request: { params: ofStudy, body: body(trialRequest) },
  responses: { 200: json(trialAnalysis, 'The analysis') },
});
const chance = createRoute({
  ...{ method: 'post', path: `${path}/chance`, tags },
  summary: 'The chance of a glossy zone against one factor, with the zones it rests on',
  request: { params: ofStudy, body: body(chanceRequest) },
  responses: { 200: json(chanceCurve, 'The curve with its band') },
});
const next = createRoute({
  ...{ method: 'post', path: `${path}/next`, tags },
  summary: 'The next tile that would tell most, and why',
  request: { params: ofStudy, body: body(nextTileRequest) },
  responses: { 200: json(nextTile, 'The tile suggested') },
});
const draw = createRoute({
  ...{ method: 'post', path: `${path}/figures/{file}`, tags },
  summary: 'A figure of what mattered: SVG, vector PDF with its fonts, or PNG',
  request: { params: ofStudy.extend({ file: trialFigureFile }), body: body(trialFigureOrder) },
  responses: { 200: drawing },
});
const write = createRoute({
  ...{ method: 'post', path: `${path}/text`, tags },
  summary: 'Captions, methods paragraph and citations of what mattered',
  request: { params: ofStudy, body: body(trialFigureOrder) },
  responses: { 200: json(figureWords, 'The words that go with the figures') },
});

export const trialRoutes = router()
  .openapi(factors, async (c) => c.json(await trialFactors(c.var.caller, c.req.valid('param').study), 200))
  .openapi(analyse, async (c) => {
    const said = await analyseStudyTrial(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  })
  .openapi(chance, async (c) => {
    const said = await chanceInStudy(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  })
  .openapi(next, async (c) => {
    const said = await nextTileOfStudy(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  })
  .openapi(draw, async (c) => {
    const { study, file } = c.req.valid('param');
    const { bytes, type } = await trialFigure(c.var.caller, study, { file, order: c.req.valid('json') });
    return c.body(bytes as Uint8Array<ArrayBuffer>, 200, fileHeaders(file, type)) as never;
  })
  .openapi(write, async (c) => {
    const said = await trialWords(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(said, 200);
  });
