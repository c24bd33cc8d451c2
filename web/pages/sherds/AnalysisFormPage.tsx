import type { Analysis } from '../../../api/contract/analysis.ts';
import { Loaded } from '../../parts/Loaded.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { useAnalysis } from '../../queries/analyses.ts';
import { useSpecimen } from '../../queries/specimens.ts';
import { AnalysisForm } from './AnalysisForm.tsx';
import { analysisPath, specimenPath } from './paths.ts';

interface AnalysisFormPageProps {
  readonly study: string;
  readonly specimen: string;
  /** The analysis to change; null for a new one. */
  readonly analysis: string | null;
}

export function AnalysisFormPage({ study, specimen, analysis }: AnalysisFormPageProps) {
  if (analysis === null) return <NewAnalysisPage study={study} specimen={specimen} />;
  return <ChangeAnalysisPage study={study} analysis={analysis} />;
}

function NewAnalysisPage({ study, specimen: id }: { readonly study: string; readonly specimen: string }) {
  const query = useSpecimen(study, id);
  return (
    <Loaded query={query} what="the specimen" page>
      {(specimen) => (
        <>
          <PageHead
            title={`New analysis of ${specimen.label}`}
            up={{ to: specimenPath(study, id), label: specimen.label }}
          />
          <AnalysisForm study={study} specimen={id} analysis={null} />
        </>
      )}
    </Loaded>
  );
}

function ChangeAnalysisPage({ study, analysis: id }: { readonly study: string; readonly analysis: string }) {
  const query = useAnalysis(study, id);
  const up = (analysis: Analysis) => analysisPath(study, analysis.specimen, id);
  return (
    <Loaded query={query} what="the analysis" page>
      {(analysis) => (
        <>
          <PageHead
            title={`Change an analysis of ${analysis.specimenLabel}`}
            lead="Correct what was misread or mistyped. What was entered first is kept beside it."
            up={{ to: up(analysis), label: 'Back to the analysis' }}
          />
          <AnalysisForm study={study} specimen={analysis.specimen} analysis={analysis} />
        </>
      )}
    </Loaded>
  );
}
