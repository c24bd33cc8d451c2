import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import {
  analysis,
  analysisChange,
  analysisPage,
  analysisQuery,
  newAnalysis,
  normalisationSettings,
  normalisedAnalysis,
} from '../contract/analysis.ts';
import { id } from '../contract/common.ts';
import {
  changeAnalysis,
  createAnalysis,
  deleteAnalysis,
  listAnalyses,
  normaliseOne,
  readAnalysis,
} from '../services/analyses.ts';
import { body, done, json, ofStudy, router } from './route.ts';

const tags = ['Analyses'];
const path = '/studies/{study}/analyses';
const params = z.object({ study: id, analysis: id });

const list = createRoute({
  ...{ method: 'get', path, tags, summary: 'Analyses as reported' },
  request: { params: ofStudy, query: analysisQuery },
  responses: { 200: json(analysisPage, 'One page of analyses, values included') },
});
const create = createRoute({
  ...{ method: 'post', path, tags, summary: 'Add an analysis by hand' },
  request: { params: ofStudy, body: body(newAnalysis) },
  responses: { 201: json(analysis, 'The analysis') },
});
const read = createRoute({
  ...{ method: 'get', path: `${path}/{analysis}`, tags, summary: 'One analysis as reported' },
  request: { params },
  responses: { 200: json(analysis, 'The analysis') },
});
const change = createRoute({
  ...{ method: 'patch', path: `${path}/{analysis}`, tags, summary: 'Correct an analysis' },
  request: { params, body: body(analysisChange) },
  responses: { 200: json(analysis, 'The analysis as it is now') },
});
const remove = createRoute({
  ...{ method: 'delete', path: `${path}/{analysis}`, tags, summary: 'Delete an analysis' },
  request: { params },
  responses: { 204: done },
});
const normalise = createRoute({
  ...{ method: 'post', path: `${path}/{analysis}/normalisation`, tags },
  summary: 'One analysis in oxides, number by number',
  request: { params, body: body(normalisationSettings) },
  responses: { 200: json(normalisedAnalysis, 'Amounts, total and every step; nothing is stored') },
});

export const analysisRoutes = router()
  .openapi(list, async (c) => {
    const page = await listAnalyses(c.var.caller, c.req.valid('param').study, c.req.valid('query'));
    return c.json(page, 200);
  })
  .openapi(create, async (c) => {
    const made = await createAnalysis(c.var.caller, c.req.valid('param').study, c.req.valid('json'));
    return c.json(made, 201);
  })
  .openapi(read, async (c) => {
    const { study, analysis: analysisId } = c.req.valid('param');
    return c.json(await readAnalysis(c.var.caller, study, analysisId), 200);
  })
  .openapi(change, async (c) => {
    const { study, analysis: analysisId } = c.req.valid('param');
    const changed = await changeAnalysis(c.var.caller, study, { analysisId, change: c.req.valid('json') });
    return c.json(changed, 200);
  })
  .openapi(remove, async (c) => {
    const { study, analysis: analysisId } = c.req.valid('param');
    await deleteAnalysis(c.var.caller, study, analysisId);
    return c.body(null, 204);
  })
  .openapi(normalise, async (c) => {
    const { study, analysis: analysisId } = c.req.valid('param');
    const settings = c.req.valid('json');
    return c.json(await normaliseOne(c.var.caller, study, { analysisId, settings }), 200);
  });
