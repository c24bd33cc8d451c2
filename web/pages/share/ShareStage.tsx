import { Route, Switch } from 'wouter';
import type { PageProps } from '../../paths.ts';
import { NotFoundPage } from '../NotFoundPage.tsx';
import { sharePath } from './paths.ts';
import { ReportPage } from './report/ReportPage.tsx';
import { SharesPage } from './SharesPage.tsx';
import { TalkPage } from './talk/TalkPage.tsx';

/** From a kept placement to others: addresses, files, a talk, a report. */
export default function ShareStage({ study }: PageProps) {
  const base = sharePath(study);
  return (
    <Switch>
      <Route path={base}>
        <SharesPage study={study} />
      </Route>
      <Route path={`${base}/talk/:placement`}>
        {({ placement }) => <TalkPage study={study} placement={placement} />}
      </Route>
      <Route path={`${base}/report/:placement`}>
        {({ placement }) => <ReportPage study={study} placement={placement} />}
      </Route>
      <Route component={NotFoundPage} />
    </Switch>
  );
}
