import { Link } from 'wouter';
import { usePlacements } from '../../queries/placements.ts';
import { keptPath } from './paths.ts';
import { day } from './words.ts';

/** Placements kept so far, newest first. */
export function KeptList({ study }: { readonly study: string }) {
  const kept = usePlacements(study);
  if (!kept.data || kept.data.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="kept-heading">
      <h2 id="kept-heading">Kept placements</h2>
      <ul className="plain-list">
        {kept.data.map(({ id, name, createdAt, sentences }) => (
          <li key={id}>
            <Link href={keptPath(study, id)}>{name}</Link>{' '}
            <span className="faint small">{day(createdAt)}</span>
            {sentences[0] && <p className="small faint">{sentences[0]}</p>}
          </li>
        ))}
      </ul>
    </section>
  );
}
