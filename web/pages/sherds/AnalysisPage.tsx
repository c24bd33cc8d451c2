import { useLocation } from 'wouter';
import type { Analysis } from '../../../api/contract/analysis.ts';
import { LinkButton } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { count } from '../../parts/numbers.ts';
import { PageHead } from '../../parts/PageHead.tsx';
import { useAnalysis, useDeleteAnalysis } from '../../queries/analyses.ts';
import { AnalysisFacts } from './AnalysisFacts.tsx';
import { Corrections } from './Corrections.tsx';
import { NormalisationSection } from './NormalisationSection.tsx';
import { analysisPath, specimenPath } from './paths.ts';
import { ReportedTable } from './ReportedTable.tsx';
import { measuredWord } from './words.ts';

/** One analysis: as the laboratory reported it, and step by step as it enters a comparison. */
export function AnalysisPage({ study, analysis: id }: { readonly study: string; readonly analysis: string }) {
  const query = useAnalysis(study, id);
  return (
    <Loaded query={query} what="the analysis" page>
      {(analysis) => (
        <>
          <PageHead
            title={`${analysis.specimenLabel}: ${measuredWord(analysis.measured).toLowerCase()}${analysis.spot && `, ${analysis.spot}`}`}
            up={{ to: specimenPath(study, analysis.specimen), label: analysis.specimenLabel }}
            actions={<AnalysisActions study={study} analysis={analysis} />}
          />
          <AnalysisFacts study={study} analysis={analysis} />
          <section className="stack" aria-labelledby="reported">
            <h2 id="reported">As reported</h2>
            <ReportedTable reported={analysis.reported} />
            <Corrections analysis={analysis} />
          </section>
          <NormalisationSection study={study} analysis={analysis} />
        </>
      )}
    </Loaded>
  );
}

function AnalysisActions({ study, analysis }: { readonly study: string; readonly analysis: Analysis }) {
  const remove = useDeleteAnalysis(study);
  const [, navigate] = useLocation();
  return (
    <>
      <LinkButton to={`${analysisPath(study, analysis.specimen, analysis.id)}/edit`}>Change</LinkButton>
      <ConfirmDelete
        label="Delete this analysis"
        title="Delete this analysis?"
        lost={<p>Its {count(analysis.reported.length, 'value')} will be lost. This cannot be undone.</p>}
        onDelete={async () => {
          navigate(specimenPath(study, analysis.specimen));
          await remove.mutateAsync(analysis.id);
        }}
      />
    </>
  );
}
