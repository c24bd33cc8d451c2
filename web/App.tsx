import { QueryClientProvider } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import { I18nProvider, RouterProvider } from 'react-aria-components';
import { Redirect, Route, Switch, useLocation } from 'wouter';
import { NotFoundPage } from './pages/NotFoundPage.tsx';
import { StudiesPage } from './pages/studies/StudiesPage.tsx';
import { createQueries } from './queries/client.ts';
import { STAGES } from './routes.ts';
import { PageBoundary } from './shell/PageBoundary.tsx';
import { Shell } from './shell/Shell.tsx';
import { StudyGate } from './shell/StudyGate.tsx';

const queries = createQueries();

const PhoneSheet = lazy(() => import('./pages/fire/sheet/PhoneSheet.tsx'));

const waiting = (
  <p className="waiting" role="status">
    Opening …
  </p>
);

function Pages() {
  const [location] = useLocation();
  return (
    <PageBoundary key={location}>
      <Suspense fallback={waiting}>
        <Switch>
          <Route path="/" component={StudiesPage} />
          {/* Before the stages: it must open where the service does not answer, so it asks for nothing of the study. */}
          <Route path="/studies/:study/fire/sheet/:firing">
            {({ study, firing }) => <PhoneSheet key={firing} address={{ kind: 'study', study, firing }} />}
          </Route>
          {STAGES.map((stage) => (
            <Route key={stage.id} path={`/studies/:study${stage.path}${stage.path ? '/*?' : ''}`}>
              {({ study = '' }) => (
                <StudyGate study={study}>
                  <stage.page study={study} />
                </StudyGate>
              )}
            </Route>
          ))}
          <Route path="/shared/:token/sheet">
            {({ token }) => <PhoneSheet key={token} address={{ kind: 'link', token }} />}
          </Route>
          <Route path="/studies">
            <Redirect to="/" replace />
          </Route>
          <Route component={NotFoundPage} />
        </Switch>
      </Suspense>
    </PageBoundary>
  );
}

export function App() {
  const [, navigate] = useLocation();
  return (
    <I18nProvider locale="en-GB">
      <RouterProvider navigate={navigate}>
        <QueryClientProvider client={queries}>
          <Shell>
            <Pages />
          </Shell>
        </QueryClientProvider>
      </RouterProvider>
    </I18nProvider>
  );
}
