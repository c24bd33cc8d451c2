import { Suspense, useCallback } from 'react';
import { I18nProvider, RouterProvider } from 'react-aria-components';
import { Route, Router, Switch, useLocation } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import type { FigureWish } from '../../api/contract/figure.ts';
import type { ShareFile } from '../../api/contract/shared.ts';
import { SharedThing } from '../pages/share/shared/SharedThing.tsx';
import { Talk } from '../pages/share/talk/Talk.tsx';
import { Frame } from '../shell/Frame.tsx';
import { PlainWordmark } from '../shell/SharedShell.tsx';
import { drawFile } from './draw-file.ts';

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
  const draw = useCallback((file: string, look: FigureWish) => drawFile(shared, file, look), [shared]);
  return (
    <I18nProvider locale="en-GB">
      <RouterProvider navigate={navigate}>
        <Frame
          wordmark={<PlainWordmark />}
          foot="All that is shown stands in this one file; it asks nothing of any network."
        >
          <Switch>
            {shared.kind === 'placement' && (
              <Route path="/talk">
                <Talk kept={shared.placement} replica={null} back="/" />
              </Route>
            )}
            <Route>
              <Suspense>
                <SharedThing shared={shared} files={{ tables, draw, talk: '/talk' }} />
              </Suspense>
            </Route>
          </Switch>
        </Frame>
      </RouterProvider>
    </I18nProvider>
  );
}
