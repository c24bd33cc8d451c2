import type { ReactNode } from 'react';

/** What stands around every page: a head, the page, a foot. */
export function Frame(at: {
  readonly wordmark: ReactNode;
  readonly beside?: ReactNode;
  readonly below?: ReactNode;
  readonly foot: ReactNode;
  readonly children: ReactNode;
}) {
  return (
    <>
      <a className="skip button" href="#main">
        Skip to the page
      </a>
      <header className="head">
        <div className="head-row">
          {at.wordmark}
          {at.beside}
        </div>
        {at.below}
      </header>
      <main id="main" className="page" tabIndex={-1}>
        {at.children}
      </main>
      <footer className="foot">{at.foot}</footer>
    </>
  );
}
