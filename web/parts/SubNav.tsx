import { Link, useLocation } from 'wouter';

export interface SubPage {
  readonly path: string;
  readonly label: string;
  /** Another folder that belongs to it, such as `/tiles` to the list of tiles. */
  readonly also?: string;
}

/** The pages of one stage of the job. */
export function SubNav(at: {
  readonly label: string;
  readonly pages: readonly SubPage[];
  /** Where a page of the stage lies. */
  readonly to: (path: string) => string;
}) {
  const [location] = useLocation();
  const here = ({ path, also }: SubPage) =>
    (path === '' ? location === at.to('') : location.startsWith(at.to(path))) ||
    (also !== undefined && location.startsWith(at.to(also)));
  return (
    <nav className="sub-nav no-print" aria-label={at.label}>
      <ul>
        {at.pages.map((page) => (
          <li key={page.path}>
            <Link href={at.to(page.path)} aria-current={here(page) ? 'page' : undefined}>
              {page.label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
