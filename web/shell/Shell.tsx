import type { ReactNode } from 'react';
import { Link, useLocation, useRoute } from 'wouter';
import { isSheetPage } from '../offline/sheet-pages.ts';
import { Mark } from '../parts/icons.tsx';
import { AppearanceSwitch } from './AppearanceSwitch.tsx';
import { Frame } from './Frame.tsx';
import { JobNav } from './JobNav.tsx';
import { SharedShell } from './SharedShell.tsx';
import { StudySwitcher } from './StudySwitcher.tsx';

/** Where one is, and the way through the job. */
export function Shell({ children }: { readonly children: ReactNode }) {
  const [, params] = useRoute('/studies/:study/*?');
  const [location] = useLocation();
  const [shared] = useRoute('/shared/*?');
  if (shared) return <SharedShell>{children}</SharedShell>;
  const study = isSheetPage(location) ? null : (params?.study ?? null);
  return (
    <Frame
      wordmark={
        <Link href="/" className="wordmark">
          <Mark />
          Nearsherd
        </Link>
      }
      beside={
        <>
          {study && <StudySwitcher study={study} />}
          <div className="head-end">
            <AppearanceSwitch />
          </div>
        </>
      }
      below={study && <JobNav study={study} />}
      foot={
        <>
          Nearsherd on your own machine. <a href="/api/docs">How programs use it</a>
        </>
      }
    >
      {children}
    </Frame>
  );
}
