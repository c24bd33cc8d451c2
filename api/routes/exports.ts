import { createRoute } from '@hono/zod-openapi';
import { z } from 'zod';
import { analysesCsv, CSV_FIGURES } from '../services/analyses-csv.ts';
import { csv, csvHeaders, ofStudy, router } from './route.ts';

const table = createRoute({
  ...{ method: 'get', path: '/studies/{study}/analyses.csv', tags: ['Analyses'] },
  summary: 'All analyses as CSV: as reported, or as oxides closed to 100',
  request: { params: ofStudy, query: z.object({ figures: z.enum(CSV_FIGURES).default('reported') }) },
  responses: { 200: csv },
});

export const exportRoutes = router().openapi(table, async (c) => {
  const { figures } = c.req.valid('query');
  const text = await analysesCsv(c.var.caller, c.req.valid('param').study, figures);
  return c.body(text, 200, csvHeaders(`analyses-${figures}.csv`));
});
