import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { Analysis } from '../../../api/contract/analysis.ts';
import { DoiLink } from '../../parts/DoiLink.tsx';
import { useLookups } from '../../queries/lookups.ts';
import { tilePath } from '../fire/paths.ts';

/** Who measured it, how, when, and where it was published. */
export function AnalysisFacts({ study, analysis }: { readonly study: string; readonly analysis: Analysis }) {
  const techniques = useLookups().data?.techniques ?? [];
  const technique = techniques.find((one) => one.code === analysis.technique)?.name ?? analysis.technique;
  const source = (analysis.source || analysis.doi) && (
    <>
      {analysis.source} <DoiLink doi={analysis.doi} />
    </>
  );
  const zone: [string, ReactNode][] =
    analysis.zoneLabel === null
      ? []
      : [
          [
            'Zone of the tile',
            <Link key="zone" href={tilePath(study, analysis.specimen)}>
              {analysis.zoneLabel}
            </Link>,
          ],
        ];
  const facts: [string, ReactNode][] = [
    ...zone,
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
