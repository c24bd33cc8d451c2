import { createRoute } from '@hono/zod-openapi';
import {
  chanceCurve,
  chanceRequest,
  foundFactors,
  nextTile,
  nextTileRequest,
  trialAnalysis,
  trialRequest,
} from '../contract/trial.ts';
import { analyseStudyTrial, chanceInStudy, nextTileOfStudy, trialFactors } from '../services/trials.ts';
import { body, json, ofStudy, router } from './route.ts';

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
  });
