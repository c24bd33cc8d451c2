import { Link, useLocation } from 'wouter';
import { studyPath } from '../paths.ts';
import { STAGES } from '../routes.ts';

/** The stages of the job in their order. */
export function JobNav({ study }: { readonly study: string }) {
  const [location] = useLocation();
  const here = (path: string) => {
    const full = studyPath(study, path);
    return location === full || (path !== '' && location.startsWith(`${full}/`));
  };
  return (
    <nav className="job" aria-label="The job, step by step">
      <ol>
        {STAGES.map((stage) => (
          <li key={stage.id}>
            <Link href={studyPath(study, stage.path)} aria-current={here(stage.path) ? 'page' : undefined}>
              {stage.label}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
