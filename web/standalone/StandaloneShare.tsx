import { I18nProvider, RouterProvider } from 'react-aria-components';
import { Route, Router, Switch, useLocation } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import type { ShareFile } from '../../api/contract/shared.ts';
import { SharedPlacement } from '../pages/share/shared/SharedPlacement.tsx';
import { Talk } from '../pages/share/talk/Talk.tsx';
import { Mark } from '../parts/icons.tsx';

/** Addresses within the file stay within the file. */
const location = memoryLocation({ path: '/' });

export function StandaloneShare({ content }: { readonly content: ShareFile }) {
  return (
    <Router hook={location.hook}>
      <Page content={content} />
    </Router>
  );
}

function Page({ content: { shared, tables } }: { readonly content: ShareFile }) {
  const [, navigate] = useLocation();
  return (
    <I18nProvider locale="en-GB">
      <RouterProvider navigate={navigate}>
        <header className="head">
          <div className="head-row">
            <span className="wordmark">
              <Mark />
              Nearsherd
            </span>
          </div>
        </header>
        <main id="main" className="page" tabIndex={-1}>
          <Switch>
            <Route path="/talk">
              <Talk kept={shared.placement} replica={null} back="/" />
            </Route>
            <Route>
              <SharedPlacement shared={shared} files={{ tables, talk: '/talk' }} />
            </Route>
          </Switch>
        </main>
        <footer className="foot">
          All that is shown stands in this one file; it asks nothing of any network.
        </footer>
      </RouterProvider>
    </I18nProvider>
  );
}
