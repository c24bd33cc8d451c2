import { Route, Switch } from 'wouter';
import type { PageProps } from '../../paths.ts';
import { NotFoundPage } from '../NotFoundPage.tsx';
import { KeptPage } from './KeptPage.tsx';
import { PlacementPage } from './PlacementPage.tsx';
import { placementPath } from './paths.ts';
import './placement.css';
import './slip/slip.css';

/** Placing replicas, and the placements that were kept. */
export default function PlacementStage({ study }: PageProps) {
  return (
    <Switch>
      <Route path={placementPath(study)}>
        <PlacementPage study={study} />
      </Route>
      <Route path={`${placementPath(study)}/kept/:placement`}>
        {({ placement }) => <KeptPage key={placement} study={study} placement={placement} />}
      </Route>
      <Route component={NotFoundPage} />
    </Switch>
  );
}
