import { QueryClientProvider } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import { I18nProvider, RouterProvider } from 'react-aria-components';
import { Route, Switch, useLocation } from 'wouter';
import SharedPage from '../pages/share/SharedPage.tsx';
import { createQueries } from '../queries/client.ts';
import { PageBoundary } from '../shell/PageBoundary.tsx';
import { SharedShell } from '../shell/SharedShell.tsx';

const queries = createQueries();
const SharedTalk = lazy(() => import('../pages/share/talk/SharedTalk.tsx'));

const waiting = (
  <p className="waiting" role="status">
    Opening …
  </p>
);

/** What is shared, with nothing of the study's own pages: it is to open at once. */
export function SharedApp() {
  const [location, navigate] = useLocation();
  return (
    <I18nProvider locale="en-GB">
      <RouterProvider navigate={navigate}>
        <QueryClientProvider client={queries}>
          <SharedShell>
            <PageBoundary key={location}>
              <Suspense fallback={waiting}>
                <Switch>
                  <Route path="/shared/:token/talk">{({ token }) => <SharedTalk token={token} />}</Route>
                  <Route path="/shared/:token">{({ token }) => <SharedPage token={token} />}</Route>
                </Switch>
              </Suspense>
            </PageBoundary>
          </SharedShell>
        </QueryClientProvider>
      </RouterProvider>
    </I18nProvider>
  );
}
