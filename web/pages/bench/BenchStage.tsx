import { Route, Switch } from 'wouter';
import { SubNav, type SubPage } from '../../parts/SubNav.tsx';
import type { PageProps } from '../../paths.ts';
import { NotFoundPage } from '../NotFoundPage.tsx';
import { BatchesPage } from './batches/BatchesPage.tsx';
import { BatchPage } from './batches/BatchPage.tsx';
import { NewBatchPage } from './batches/NewBatchPage.tsx';
import { SheetPage } from './batches/SheetPage.tsx';
import { BlendsPage } from './blends/BlendsPage.tsx';
import { MaterialFormPage } from './materials/MaterialFormPage.tsx';
import { MaterialsPage } from './materials/MaterialsPage.tsx';
import { MeasuredPage } from './measured/MeasuredPage.tsx';
import { benchPath } from './paths.ts';
import { PercentagesPage } from './percentages/PercentagesPage.tsx';
import { RoastPage } from './roasts/RoastPage.tsx';
import { RoastsPage } from './roasts/RoastsPage.tsx';
import { TargetPage } from './target/TargetPage.tsx';
import './bench.css';

const PAGES: readonly SubPage[] = [
  { path: '', label: 'Batches', also: '/batches' },
  { path: '/materials', label: 'Materials' },
  { path: '/roasts', label: 'Roasts' },
  { path: '/target', label: 'Target to batch' },
  { path: '/blends', label: 'Blends' },
  { path: '/percentages', label: 'Why percentages mislead' },
];

/** From what is on the shelf to a fired paint, and from a paint back to the scale. */
export default function BenchStage({ study }: PageProps) {
  const base = benchPath(study);
  return (
    <>
      <SubNav label="The bench" pages={PAGES} to={(path) => benchPath(study, path)} />
      <Switch>
        <Route path={base}>
          <BatchesPage study={study} />
        </Route>
        <Route path={`${base}/batches/new`}>
          <NewBatchPage study={study} />
        </Route>
        <Route path={`${base}/batches/:batch`}>
          {({ batch }) => <BatchPage key={batch} study={study} batch={batch} />}
        </Route>
        <Route path={`${base}/batches/:batch/sheet`}>
          {({ batch }) => <SheetPage study={study} batch={batch} />}
        </Route>
        <Route path={`${base}/materials`}>
          <MaterialsPage study={study} />
        </Route>
        <Route path={`${base}/materials/new`}>
          <MaterialFormPage study={study} material={null} />
        </Route>
        <Route path={`${base}/materials/:material`}>
          {({ material }) => <MaterialFormPage key={material} study={study} material={material} />}
        </Route>
        <Route path={`${base}/roasts`}>
          <RoastsPage study={study} />
        </Route>
        <Route path={`${base}/roasts/new`}>
          <RoastPage study={study} roast={null} />
        </Route>
        <Route path={`${base}/roasts/:roast`}>
          {({ roast }) => <RoastPage key={roast} study={study} roast={roast} />}
        </Route>
        <Route path={`${base}/target`}>
          <TargetPage study={study} />
        </Route>
        <Route path={`${base}/blends`}>
          <BlendsPage study={study} />
        </Route>
        <Route path={`${base}/percentages`}>
          <PercentagesPage study={study} />
        </Route>
        <Route path={`${base}/batches/:batch/measured`}>
          {({ batch }) => <MeasuredPage key={batch} study={study} batch={batch} />}
        </Route>
        <Route component={NotFoundPage} />
      </Switch>
    </>
  );
}
