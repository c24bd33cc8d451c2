import { Link } from 'wouter';
import type { Study } from '../../../api/contract/study.ts';
import { count } from '../../parts/numbers.ts';
import { studyPath } from '../../paths.ts';

/** Says everything that a deletion takes with it. */
export function whatIsLost({ counts }: Pick<Study, 'counts'>): string {
  const parts = [
    [counts.groups, 'ware group'],
    [counts.specimens, 'specimen'],
    [counts.analyses, 'analysis', 'analyses'],
    [counts.placements, 'saved placement'],
    [counts.batches, 'batch', 'batches'],
    [counts.tiles, 'tile'],
    [counts.firings, 'firing'],
    [counts.shares, 'share'],
  ] as const;
  const named = parts.filter(([n]) => n > 0).map(([n, one, many]) => count(n, one, many));
  if (named.length === 0) return 'It holds nothing yet. This cannot be undone.';
  const last = named.pop();
  const list = named.length > 0 ? `${named.join(', ')} and ${last}` : last;
  return `${list} will be lost. This cannot be undone.`;
}

/** The study in numbers, each leading to what it counts. */
export function StudyCounts({ study }: { readonly study: Study }) {
  const { groups, specimens, replicas, analyses, placements } = study.counts;
  const sherds = studyPath(study.id, '/sherds');
  return (
    <ul className="counts">
      <Count n={groups} words={groups === 1 ? 'ware group' : 'ware groups'} to={sherds} />
      <Count
        n={specimens - replicas}
        words="sherds and other specimens"
        to={`${sherds}${specimens > replicas ? '?kind=sherd' : ''}#specimens`}
      />
      <Count
        n={replicas}
        words={replicas === 1 ? 'replica' : 'replicas'}
        to={`${sherds}?kind=replica#specimens`}
      />
      <Count n={analyses} words={analyses === 1 ? 'analysis' : 'analyses'} to={sherds} />
      {placements > 0 && (
        <Count n={placements} words={placements === 1 ? 'saved placement' : 'saved placements'} />
      )}
    </ul>
  );
}

function Count(at: { readonly n: number; readonly words: string; readonly to?: string }) {
  const content = (
    <>
      <span className="figure">{at.n.toLocaleString('en-GB')}</span>
      <span>{at.words}</span>
    </>
  );
  return <li>{at.to ? <Link href={at.to}>{content}</Link> : <span>{content}</span>}</li>;
}
