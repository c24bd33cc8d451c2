import { Link, useLocation } from 'wouter';
import { firePath } from '../paths.ts';

const PAGES = [
  { path: '', label: 'Tiles' },
  { path: '/firings', label: 'Firings' },
  { path: '/mattered', label: 'What mattered' },
  { path: '/next', label: 'Next tile' },
  { path: '/plans', label: 'Plans' },
  { path: '/sheet', label: 'At the fire' },
  { path: '/notebook', label: 'Notebook' },
] as const;

/** What can be done around the fire. */
export function FireNav({ study }: { readonly study: string }) {
  const [location] = useLocation();
  const here = (path: string) => {
    const full = firePath(study, path);
    return path === ''
      ? location === full || location.startsWith(`${full}/tiles`)
      : location.startsWith(full);
  };
  return (
    <nav className="fire-nav no-print" aria-label="Around the fire">
      <ul>
        {PAGES.map(({ path, label }) => (
          <li key={path}>
            <Link href={firePath(study, path)} aria-current={here(path) ? 'page' : undefined}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
