import type { ReactNode } from 'react';
import type { Analysis } from '../../../api/contract/analysis.ts';
import { DoiLink } from '../../parts/DoiLink.tsx';
import { useLookups } from '../../queries/lookups.ts';

/** Who measured it, how, when, and where it was published. */
export function AnalysisFacts({ analysis }: { readonly analysis: Analysis }) {
  const techniques = useLookups().data?.techniques ?? [];
  const technique = techniques.find((one) => one.code === analysis.technique)?.name ?? analysis.technique;
  const source = (analysis.source || analysis.doi) && (
    <>
      {analysis.source} <DoiLink doi={analysis.doi} />
    </>
  );
  const facts: [string, ReactNode][] = [
    ['Technique', technique],
    ['Laboratory', analysis.laboratory],
    ['Instrument', analysis.instrument],
    ['Date', analysis.date],
    ['Source', source],
    ['Note', analysis.note],
    ['Came from', analysis.row === null ? 'typed in' : `an imported file, row ${analysis.row}`],
  ];
  return (
    <dl className="facts">
      {facts.map(([term, fact]) => (
        <div key={term}>
          <dt>{term}</dt>
          <dd>{fact || <span className="faint">not given</span>}</dd>
        </div>
      ))}
    </dl>
  );
}
