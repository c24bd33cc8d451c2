import { Route, Switch } from 'wouter';
import { SubNav, type SubPage } from '../../parts/SubNav.tsx';
import type { PageProps } from '../../paths.ts';
import { NotFoundPage } from '../NotFoundPage.tsx';
import { ComparePage } from './firings/ComparePage.tsx';
import { FiringPage } from './firings/FiringPage.tsx';
import { FiringsPage } from './firings/FiringsPage.tsx';
import { NotebookPage } from './notebook/NotebookPage.tsx';
import { firePath } from './paths.ts';
import { NewPlanPage } from './plans/NewPlanPage.tsx';
import { PlanPage } from './plans/PlanPage.tsx';
import { PlansPage } from './plans/PlansPage.tsx';
import { SheetPage } from './sheet/SheetPage.tsx';
import { TilePage } from './tiles/TilePage.tsx';
import { TilesPage } from './tiles/TilesPage.tsx';
import { MatteredPage } from './trial/MatteredPage.tsx';
import { NextTilePage } from './trial/NextTilePage.tsx';
import './fire.css';

const PAGES: readonly SubPage[] = [
  { path: '', label: 'Tiles', also: '/tiles' },
  { path: '/firings', label: 'Firings' },
  { path: '/mattered', label: 'What mattered' },
  { path: '/next', label: 'Next tile' },
  { path: '/plans', label: 'Plans' },
  { path: '/sheet', label: 'At the fire' },
  { path: '/notebook', label: 'Notebook' },
];

/** From a plan to tiles in the fire, what came of them, what mattered, and the next tile. */
export default function FireStage({ study }: PageProps) {
  const base = firePath(study);
  return (
    <>
      <SubNav label="Around the fire" pages={PAGES} to={(path) => firePath(study, path)} />
      <Switch>
        <Route path={base}>
          <TilesPage study={study} />
        </Route>
        <Route path={`${base}/tiles/:tile`}>
          {({ tile }) => <TilePage key={tile} study={study} tile={tile} />}
        </Route>
        <Route path={`${base}/firings`}>
          <FiringsPage study={study} />
        </Route>
        <Route path={`${base}/firings/compare`}>
          <ComparePage study={study} />
        </Route>
        <Route path={`${base}/firings/:firing`}>
          {({ firing }) => <FiringPage key={firing} study={study} firing={firing} />}
        </Route>
        <Route path={`${base}/mattered`}>
          <MatteredPage study={study} />
        </Route>
        <Route path={`${base}/next`}>
          <NextTilePage study={study} />
        </Route>
        <Route path={`${base}/plans`}>
          <PlansPage study={study} />
        </Route>
        <Route path={`${base}/plans/new`}>
          <NewPlanPage study={study} />
        </Route>
        <Route path={`${base}/plans/:plan`}>
          {({ plan }) => <PlanPage key={plan} study={study} plan={plan} />}
        </Route>
        <Route path={`${base}/sheet`}>
          <SheetPage study={study} />
        </Route>
        <Route path={`${base}/notebook`}>
          <NotebookPage study={study} />
        </Route>
        <Route component={NotFoundPage} />
      </Switch>
    </>
  );
}
