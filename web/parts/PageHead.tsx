import { type ReactNode, useEffect, useRef } from 'react';
import { Link } from 'wouter';

let firstPage = true;

/** A page's title. Coming from another page, it takes the focus, so that a screen reader says where one is. */
export function PageHead(at: {
  readonly title: string;
  readonly lead?: ReactNode;
  readonly actions?: ReactNode;
  /** The page above this one. */
  readonly up?: { readonly to: string; readonly label: string };
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${at.title} – Nearsherd`;
  }, [at.title]);
  useEffect(() => {
    if (!firstPage) heading.current?.focus({ preventScroll: true });
    firstPage = false;
  }, []);
  return (
    <header className="page-head">
      <div>
        {at.up && (
          <p className="trail">
            <Link href={at.up.to}>← {at.up.label}</Link>
          </p>
        )}
        <h1 ref={heading} tabIndex={-1}>
          {at.title}
        </h1>
        {at.lead && <div className="lead">{at.lead}</div>}
      </div>
      {at.actions && <div className="row">{at.actions}</div>}
    </header>
  );
}
