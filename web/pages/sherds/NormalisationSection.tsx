import type { Analysis } from '../../../api/contract/analysis.ts';
import { DEFAULT_NORMALISATION, type NormalisedAnalysis } from '../../../api/domain/composition/types.ts';
import { CsvDownload } from '../../parts/CsvDownload.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import { useNormalisation } from '../../queries/analyses.ts';
import { ClosureTable } from './ClosureTable.tsx';
import { NormalisationControls } from './NormalisationControls.tsx';
import { StepsTable } from './StepsTable.tsx';
import { conversionsOf } from './steps.ts';

/** From the reported figures to the composition that is compared, each step to be followed. */
export function NormalisationSection({
  study,
  analysis,
}: {
  readonly study: string;
  readonly analysis: Analysis;
}) {
  const settings = useDraft(`normalisation.${study}`, DEFAULT_NORMALISATION);
  const query = useNormalisation(study, analysis.id, settings.value);
  return (
    <section className="stack" aria-labelledby="normalised">
      <h2 id="normalised">As it enters a comparison</h2>
      <p className="faint">
        Nothing here is stored: it is worked out from the reported figures each time, with the settings below.
      </p>
      <NormalisationControls settings={settings.value} onChange={settings.set} />
      <Loaded query={query} what="the normalisation">
        {(normalised) => <Normalised analysis={analysis} normalised={normalised} />}
      </Loaded>
    </section>
  );
}

function Normalised({
  analysis,
  normalised,
}: {
  readonly analysis: Analysis;
  readonly normalised: NormalisedAnalysis;
}) {
  const { total, steps } = normalised;
  const warnings = normalised.warnings.filter((warning) => warning !== total.message);
  const rows = () =>
    steps.map((s) => [s.analyte, s.before.value, s.before.unit, s.factor, s.after, s.oxide, s.what]);
  return (
    <>
      <h3>1. To oxides, in wt%</h3>
      <StepsTable steps={conversionsOf(normalised)} reported={analysis.reported} />
      <div>
        <CsvDownload
          name={`${analysis.specimenLabel} steps`}
          header={['analyte', 'from', 'unit', 'factor', 'wt%', 'of', 'why']}
          rows={rows}
        />
      </div>
      <h3>2. The total</h3>
      <Notice kind={total.judgement === 'usual' || total.judgement === 'unknown' ? 'info' : 'caution'}>
        <p>{total.message}</p>
      </Notice>
      {warnings.length > 0 && (
        <Notice kind="caution" title="Keep in mind">
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </Notice>
      )}
      <h3>3. Closed to 100</h3>
      <ClosureTable normalised={normalised} />
    </>
  );
}
