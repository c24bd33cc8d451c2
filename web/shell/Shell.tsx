import type { ReactNode } from 'react';
import { Link, useLocation, useRoute } from 'wouter';
import { isSheetPage } from '../offline/sheet-pages.ts';
import { Mark } from '../parts/icons.tsx';
import { AppearanceSwitch } from './AppearanceSwitch.tsx';
import { JobNav } from './JobNav.tsx';
import { StudySwitcher } from './StudySwitcher.tsx';

/** What stands around every page: where one is, and the way through the job. */
export function Shell({ children }: { readonly children: ReactNode }) {
  const [, params] = useRoute('/studies/:study/*?');
  const [location] = useLocation();
  // Who was given a share reaches nothing but the share.
  const [shared] = useRoute('/shared/*?');
  const study = isSheetPage(location) ? null : (params?.study ?? null);
  return (
    <>
      <a className="skip button" href="#main">
        Skip to the page
      </a>
      <header className="head">
        <div className="head-row">
          {shared ? (
            <span className="wordmark">
              <Mark />
              Nearsherd
            </span>
          ) : (
            <Link href="/" className="wordmark">
              <Mark />
              Nearsherd
            </Link>
          )}
          {study && <StudySwitcher study={study} />}
          <div className="head-end">
            <AppearanceSwitch />
          </div>
        </div>
        {study && <JobNav study={study} />}
      </header>
      <main id="main" className="page" tabIndex={-1}>
        {children}
      </main>
      <footer className="foot">
        {shared ? (
          'Shared from Nearsherd, which runs on the machine of whoever shared it.'
        ) : (
          <>
            Nearsherd on your own machine. <a href="/api/docs">How programs use it</a>
          </>
        )}
      </footer>
    </>
  );
}
