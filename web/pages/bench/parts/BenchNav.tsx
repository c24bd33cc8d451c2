import { Link, useLocation } from 'wouter';
import { benchPath } from '../paths.ts';

export const TABLES = [
  { path: '', label: 'Batches' },
  { path: '/materials', label: 'Materials' },
  { path: '/roasts', label: 'Roasts' },
  { path: '/target', label: 'Target to batch' },
  { path: '/blends', label: 'Blends' },
  { path: '/percentages', label: 'Why percentages mislead' },
] as const;

/** What can be done at the bench. */
export function BenchNav({ study }: { readonly study: string }) {
  const [location] = useLocation();
  const here = (path: string) => {
    const full = benchPath(study, path);
    if (path === '') return location === full || location.startsWith(`${full}/batches`);
    return location.startsWith(full);
  };
  return (
    <nav className="bench-nav" aria-label="The bench">
      <ul>
        {TABLES.map(({ path, label }) => (
          <li key={path}>
            <Link href={benchPath(study, path)} aria-current={here(path) ? 'page' : undefined}>
              {label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
