import { Route, Switch } from 'wouter';
import { type PageProps, studyPath } from '../../paths.ts';
import { NotFoundPage } from '../NotFoundPage.tsx';
import { AnalysisFormPage } from './AnalysisFormPage.tsx';
import { AnalysisPage } from './AnalysisPage.tsx';
import { SherdsPage } from './SherdsPage.tsx';
import { SpecimenPage } from './SpecimenPage.tsx';

/** Ware groups, their specimens, and what was measured on each. */
export default function SherdsStage({ study }: PageProps) {
  const base = studyPath(study, '/sherds');
  return (
    <Switch>
      <Route path={base}>
        <SherdsPage study={study} />
      </Route>
      <Route path={`${base}/:specimen`}>
        {({ specimen }) => <SpecimenPage study={study} specimen={specimen} />}
      </Route>
      <Route path={`${base}/:specimen/analyses/new`}>
        {({ specimen }) => <AnalysisFormPage study={study} specimen={specimen} analysis={null} />}
      </Route>
      <Route path={`${base}/:specimen/analyses/:analysis`}>
        {({ analysis }) => <AnalysisPage study={study} analysis={analysis} />}
      </Route>
      <Route path={`${base}/:specimen/analyses/:analysis/edit`}>
        {({ specimen, analysis }) => (
          <AnalysisFormPage study={study} specimen={specimen} analysis={analysis} />
        )}
      </Route>
      <Route component={NotFoundPage} />
    </Switch>
  );
}
