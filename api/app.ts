import path from 'node:path';
import type { Database } from '../db/connect.ts';
import { docsPage } from './docs.ts';
import { guard, limitBody } from './guard.ts';
import { openApiDocument } from './openapi.ts';
import { answerProblem, problemOf } from './problem.ts';
import { analysisRoutes } from './routes/analyses.ts';
import { batchRoutes } from './routes/batches.ts';
import { bundleRoutes } from './routes/bundles.ts';
import { exportRoutes } from './routes/exports.ts';
import { figureRoutes } from './routes/figures.ts';
import { firingRoutes } from './routes/firings.ts';
import { importRoutes } from './routes/imports.ts';
import { lookupRoutes } from './routes/lookups.ts';
import { materialRoutes } from './routes/materials.ts';
import { notebookRoutes } from './routes/notebook.ts';
import { pictureRoutes } from './routes/pictures.ts';
import { placementRoutes } from './routes/placements.ts';
import { planRoutes } from './routes/plans.ts';
import { roastRoutes } from './routes/roasts.ts';
import { router } from './routes/route.ts';
import { shareRoutes } from './routes/shares.ts';
import { sheetRoutes } from './routes/sheets.ts';
import { slipRoutes } from './routes/slip.ts';
import { specimenRoutes } from './routes/specimens.ts';
import { studyRoutes } from './routes/studies.ts';
import { studyFigureRoutes } from './routes/study-figures.ts';
import { tileRoutes } from './routes/tiles.ts';
import { trialRoutes } from './routes/trials.ts';
import { wareGroupRoutes } from './routes/ware-groups.ts';
import { servePages } from './web-files.ts';

export interface AppNeeds {
  readonly db: Database;
  /** Folder of the built pages; without it only the API is served. */
  readonly pages?: string;
  /** Origin of the outside door; without it there is none. */
  readonly outside?: string | undefined;
}

/** The whole service as one fetch handler. */
export function createApp({ db, pages, outside }: AppNeeds) {
  const api = router()
    .route('/', lookupRoutes)
    .route('/', studyRoutes)
    .route('/', wareGroupRoutes)
    .route('/', specimenRoutes)
    .route('/', exportRoutes)
    .route('/', analysisRoutes)
    .route('/', importRoutes)
    .route('/', placementRoutes)
    .route('/', figureRoutes)
    .route('/', studyFigureRoutes)
    .route('/', shareRoutes)
    .route('/', bundleRoutes)
    .route('/', slipRoutes)
    .route('/', materialRoutes)
    .route('/', roastRoutes)
    .route('/', batchRoutes)
    .route('/', firingRoutes)
    .route('/', sheetRoutes)
    .route('/', tileRoutes)
    .route('/', pictureRoutes)
    .route('/', trialRoutes)
    .route('/', planRoutes)
    .route('/', notebookRoutes);

  const app = router();
  app.onError(problemOf);
  app.use(guard(outside));
  app.use('/api/*', limitBody());
  app.use('/api/*', async (c, next) => {
    c.set('caller', { db, who: 'local' });
    c.set('shareFile', pages === undefined ? null : path.join(pages, '../share-file'));
    await next();
    c.header('cache-control', 'no-store');
  });
  const served = app.route('/api', api);

  const document = openApiDocument(app);
  app.get('/api/openapi.json', (c) => c.json(document));
  app.get('/api/docs', (c) => c.html(docsPage(document)));
  app.get('/api', (c) => c.redirect('/api/docs'));
  app.all('/api/*', (c) =>
    answerProblem(c, 404, {
      detail: `${c.req.method} ${c.req.path} is no address of this service; see /api/docs.`,
    }),
  );
  if (pages !== undefined) servePages(app, pages);
  app.notFound((c) => answerProblem(c, 404, { detail: `${c.req.path} is no page of this service.` }));
  return served;
}

export type AppType = ReturnType<typeof createApp>;
