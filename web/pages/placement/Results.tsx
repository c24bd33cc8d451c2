import { type ComponentType, type ReactNode, useMemo } from 'react';
import type { Comparison } from '../../../api/contract/placement.ts';
import type { Placement } from '../../../api/domain/placement/types.ts';
import { FirstWithout } from '../../parts/FirstWithout.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { NoReplicas } from './NoReplicas.tsx';
import { ProfileSection } from './ProfileSection.tsx';
import { ScoresSection } from './ScoresSection.tsx';
import { SlipKept } from './slip/SlipKept.tsx';
import type { SlipSectionProps } from './slip/section-props.ts';
import { type Slip, useFollowed, useFollowedLater } from './slip/useSlip.ts';
import { BehindTables } from './tables/BehindTables.tsx';
import { GroupsTable } from './tables/GroupsTable.tsx';
import { NearestTable } from './tables/NearestTable.tsx';
import { OverviewTable } from './tables/OverviewTable.tsx';
import { type LookProps, VerdictSection } from './Verdict.tsx';
import { soundView, type ViewState } from './view-state.ts';
import { OtherViews } from './views/OtherViews.tsx';

/** A comparison, live or kept, and how it is looked at. */
export interface ResultsProps {
  /** Null where nothing of the study can be reached, as in a share. */
  readonly study: string | null;
  readonly result: Comparison;
  readonly view: ViewState;
  readonly onView: (change: Partial<ViewState>) => void;
  /** Slip drawn off as one goes; without it the comparison stays as it was answered. */
  readonly slip?: Slip | undefined;
}

function useLook({ result, view: wished, onView }: ResultsProps): Look {
  const view = useMemo(() => soundView(wished, result), [wished, result]);
  const slots = useMemo(
    () => Object.fromEntries(result.groups.map(({ id, position }) => [id, position])),
    [result.groups],
  );
  const placement = result.placements.find(({ id }) => id === view.replica) ?? null;
  return { result, view, onView, slots, placement };
}
interface Look extends LookProps {
  readonly slots: Readonly<Record<string, number>>;
  readonly placement: Placement | null;
}

/** The sentence first, and what to keep in mind. */
export function ResultsHead(asked: ResultsProps) {
  const at = { ...asked, result: useFollowed(asked.slip, asked.result) };
  const { placement, ...look } = useLook(at);
  const { warnings } = at.result.model;
  return (
    <>
      {placement ? (
        <VerdictSection {...look} placement={placement} />
      ) : (
        <NoReplicas study={at.study} result={at.result} />
      )}
      {warnings.length > 0 && (
        <Notice kind="caution" title="Keep in mind">
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </Notice>
      )}
    </>
  );
}

export interface ResultsRestProps extends ResultsProps {
  /** Where slip is drawn off, if it can be. */
  readonly slipPanel?: ComponentType<SlipSectionProps>;
  readonly sherdActions: (id: string, label: string) => ReactNode;
}

/** Then the figures, then the tables. */
export function ResultsRest({ sherdActions, slipPanel: SlipPanel, ...at }: ResultsRestProps) {
  const { placement, ...look } = useLook(at);
  const { slip, result } = at;
  return (
    <>
      {placement && slip && SlipPanel && (
        <SlipPanel key={placement.id} slip={slip} result={result} replica={placement} />
      )}
      {placement && !slip && <SlipKept result={result} replica={placement} />}
      <ScoresSection {...look} sherdActions={sherdActions} slip={slip} />
      <FirstWithout>
        <Later {...at} />
        <section className="stack" aria-labelledby="behind-heading">
          <h2 id="behind-heading">What these numbers rest on</h2>
          <BehindTables result={at.result} />
        </section>
      </FirstWithout>
    </>
  );
}

/** What may lag a little behind the slider. */
function Later(asked: ResultsProps) {
  const at = { ...asked, result: useFollowedLater(asked.slip, asked.result) };
  const { placement, ...look } = useLook(at);
  return (
    <>
      {placement && <OfOneReplica {...look} placement={placement} study={at.study} />}
      <OtherViews {...look} />
    </>
  );
}

function OfOneReplica(at: Look & { readonly placement: Placement; readonly study: string | null }) {
  const { placement, result, slots, onView } = at;
  const nameOf = (group: string) => result.groups.find(({ id }) => id === group)?.name ?? group;
  return (
    <>
      <ProfileSection {...at} />
      <section className="stack" aria-labelledby="groups-heading">
        <h2 id="groups-heading">{placement.label} against each ware group</h2>
        <GroupsTable placement={placement} slots={slots} />
      </section>
      <section className="stack" aria-labelledby="nearest-heading">
        <h2 id="nearest-heading">Sherds nearest to {placement.label}</h2>
        <NearestTable study={at.study} placement={placement} nameOf={nameOf} />
      </section>
      <section className="stack" aria-labelledby="overview-heading">
        <h2 id="overview-heading">All replicas at a glance</h2>
        <OverviewTable
          placements={result.placements}
          chosen={placement.id}
          onChoose={(replica) => onView({ replica })}
        />
      </section>
    </>
  );
}
