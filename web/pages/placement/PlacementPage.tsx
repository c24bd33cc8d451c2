import { useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { Comparison, ComparisonRequest } from '../../../api/contract/placement.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import type { Sample } from '../../../api/domain/composition/types.ts';
import { Button } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { ErrorNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { keepDraft, useDraft } from '../../parts/useDraft.ts';
import type { PageProps } from '../../paths.ts';
import { useGroups } from '../../queries/groups.ts';
import { useComparison, useKeepPlacement } from '../../queries/placements.ts';
import { useSlipSamples } from '../../queries/slip.ts';
import { useSpecimens } from '../../queries/specimens.ts';
import { specimenPath } from '../sherds/paths.ts';
import { KeepDialog } from './KeepDialog.tsx';
import { KeptList } from './KeptList.tsx';
import { LeaveOut } from './LeaveOut.tsx';
import { NothingToCompare } from './NothingToCompare.tsx';
import { SettingsPanel } from './panel/SettingsPanel.tsx';
import { keptPath } from './paths.ts';
import { ResultsHead, ResultsRest } from './Results.tsx';
import { requestOf, type Settings, settingsKey, USUAL } from './settings.ts';
import { useSlipChoices } from './slip/choices.ts';
import { SlipSection } from './slip/SlipSection.tsx';
import { useReferenceSlip } from './slip/useReferenceSlip.ts';
import { type Slip, useSlip } from './slip/useSlip.ts';
import { UnkeptFiles, withSlipAsked } from './UnkeptFiles.tsx';
import { FIRST_VIEW, keptViewKey, type ViewState, viewKey } from './view-state.ts';
import { day } from './words.ts';

/** Replicas set among the ware groups of a study. */
export function PlacementPage({ study }: PageProps) {
  const groups = useGroups(study);
  return (
    <Loaded query={groups} what="the ware groups">
      {(rows) => <Placing study={study} groups={rows} />}
    </Loaded>
  );
}

function Placing({ study, groups }: PageProps & { readonly groups: readonly WareGroup[] }) {
  const settings = useDraft<Settings>(settingsKey(study), USUAL);
  const view = useDraft<ViewState>(viewKey(study), FIRST_VIEW);
  const replicas = useSpecimens(study, { kind: 'replica', limit: 1_000 });
  const references = useReferenceSlip(study);
  const request = useMemo(() => {
    const plain = requestOf(settings.value, groups);
    return plain && { ...plain, slip: references.value };
  }, [settings.value, groups, references.value]);
  const comparison = useComparison(study, request);
  const slips = useSlipSamples(study, request);
  const choices = useSlipChoices(study);
  const samples = slips.data?.samples ?? NO_SAMPLES;
  const slip = useSlip({
    ...{ study, result: comparison.data, samples, groups, choices },
    against: view.value.against,
    references,
  });
  const last = useLast(comparison.data);
  const change = (part: Partial<Settings>) => settings.set({ ...settings.value, ...part });
  const look = (part: Partial<ViewState>) => view.set({ ...view.value, ...part });
  const empty = groups.every(({ specimens }) => specimens === 0);
  const shown = request !== null &&
    comparison.data &&
    !comparison.isError && { study, result: comparison.data, view: view.value, onView: look, slip };
  const comparing = request !== null && comparison.isPlaceholderData;
  const sherdActions = (specimen: string, label: string) => (
    <>
      <Link href={specimenPath(study, specimen)}>Open {label}</Link>
      <LeaveOut
        key={specimen}
        specimen={specimen}
        label={label}
        onLeaveOut={(one) => change({ leaveOut: [...settings.value.leaveOut, one] })}
      />
    </>
  );
  return (
    <>
      <PageHead
        title="Placement"
        lead="How near each replica lies to each ware group, and what holds it off."
        actions={shown && request && <Keep {...shown} request={request} />}
      />
      {empty ? (
        <NothingToCompare study={study} groups={groups.length} />
      ) : (
        <div className="placing" aria-busy={comparing}>
          <p className="unseen" role="status">
            {comparing ? 'Comparing …' : ''}
          </p>
          <div className="placing-head">
            {shown ? (
              <ResultsHead {...shown} />
            ) : (
              <Waiting asked={request !== null} error={comparison.error} />
            )}
          </div>
          <SettingsPanel
            settings={settings.value}
            onChange={change}
            groups={groups}
            replicas={replicas.data?.rows ?? []}
            comparison={last}
            stale={!shown}
          />
          <div className="placing-rest">
            {shown && <ResultsRest {...shown} slipPanel={SlipSection} sherdActions={sherdActions} />}
            {shown && request && <UnkeptFiles {...shown} request={request} />}
          </div>
        </div>
      )}
      <KeptList study={study} />
    </>
  );
}

/** The last value there was: the panel must stay usable after settings that cannot be compared. */
function useLast<Value>(value: Value | undefined): Value | undefined {
  const [last, setLast] = useState(value);
  if (value !== undefined && value !== last) setLast(value);
  return value ?? last;
}

function Waiting({ asked, error }: { readonly asked: boolean; readonly error: unknown }) {
  if (!asked) return <p>Choose at least one ware group.</p>;
  if (error !== null) return <ErrorNotice error={error} title="This comparison cannot be made" />;
  return (
    <p className="waiting" role="status">
      Comparing …
    </p>
  );
}

const NO_SAMPLES: Sample[] = [];

interface KeepProps {
  readonly study: string;
  readonly request: ComparisonRequest;
  readonly result: Comparison;
  readonly view: ViewState;
  readonly slip: Slip;
}
function Keep({ study, request, result, view, slip }: KeepProps) {
  const [open, setOpen] = useState(false);
  const keep = useKeepPlacement(study);
  const [, navigate] = useLocation();
  return (
    <>
      <Button onPress={() => setOpen(true)}>Keep this placement …</Button>
      {open && (
        <KeepDialog
          title="Keep this placement"
          lead="Sherds, settings and every number are kept as they are now, whatever changes in the study later."
          start={{ name: `Placement of ${day(new Date().toISOString())}`, note: '' }}
          action="Keep it"
          open
          onClose={() => setOpen(false)}
          onKeep={async ({ name, note }) => {
            const comparison = withSlipAsked({ request, slip, result });
            const { id } = await keep.mutateAsync({ name, note, comparison });
            keepDraft(keptViewKey(study, id), view);
            navigate(keptPath(study, id));
          }}
        />
      )}
    </>
  );
}
