import { useMemo } from 'react';
import type { ComparisonText } from '../../../../api/contract/figure.ts';
import type { FrozenPlacement } from '../../../../api/contract/placement.ts';
import { Button } from '../../../parts/Button.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { usePlacement } from '../../../queries/placements.ts';
import { usePlacementText } from '../../../queries/shares.ts';
import { keptPath } from '../../placement/paths.ts';
import { LoadingsTable } from '../../placement/tables/LoadingsTable.tsx';
import { SpreadsTable } from '../../placement/tables/SpreadsTable.tsx';
import { day, withFormulas } from '../../placement/words.ts';
import { Words } from '../Words.tsx';
import { ReportFigures } from './ReportFigures.tsx';
import { ExcludedTable, GroupDistancesTable, MembersTable, ReplicasTable } from './ReportTables.tsx';
import { SettingsList } from './SettingsList.tsx';
import '../../placement/placement.css';
import './report.css';

/** Everything needed to check a placement and to repeat it, on paper. */
export function ReportPage({ study, placement }: PageProps & { readonly placement: string }) {
  const query = usePlacement(study, placement);
  const text = usePlacementText(study, placement);
  return (
    <Loaded query={query} what="the placement" page>
      {(kept) => (
        <Loaded query={text} what="the methods">
          {(words) => <Report study={study} kept={kept} text={words} />}
        </Loaded>
      )}
    </Loaded>
  );
}

interface ReportProps extends PageProps {
  readonly kept: FrozenPlacement;
  readonly text: ComparisonText;
}

function Report({ study, kept, text }: ReportProps) {
  const { result } = kept;
  const { model, placements } = result;
  const slots = useMemo(
    () => Object.fromEntries(result.groups.map(({ id, position }) => [id, position])),
    [result.groups],
  );
  return (
    <div className="report stack">
      <PageHead
        title={kept.name}
        lead={kept.note}
        up={{ to: keptPath(study, kept.id), label: 'The placement' }}
        actions={
          <Button look="primary" onPress={() => print()}>
            Print, or save as PDF
          </Button>
        }
      />
      <p className="faint">
        Computed on {day(kept.createdAt)} by Nearsherd {kept.version}; placement {kept.id}.
      </p>
      <section className="stack tight" aria-labelledby="findings">
        <h2 id="findings">Findings</h2>
        {placements.length === 0 && <p>No replica was placed.</p>}
        {placements.map(({ id, sentence }) => (
          <p key={id}>{withFormulas(sentence, model.parts)}</p>
        ))}
      </section>
      <ReportFigures result={result} slots={slots} text={text} />
      <SettingsList result={result} />
      <Words text={text} />
      <section className="stack" aria-labelledby="numbers">
        <h2 id="numbers">Numbers</h2>
        <h3>Replicas against each ware group</h3>
        <GroupDistancesTable placements={placements} />
        <h3>Replicas: wt% of the oxides compared, closed to 100</h3>
        <ReplicasTable model={model} placements={placements} />
        <h3>Reference sherds: wt% of the oxides compared, closed to 100</h3>
        <MembersTable model={model} slots={slots} />
        <h3>Spread of each ware group</h3>
        <SpreadsTable model={model} />
        <h3>Principal components</h3>
        <LoadingsTable model={model} />
        <h3>Specimens left out</h3>
        <ExcludedTable excluded={result.excluded} />
      </section>
    </div>
  );
}
