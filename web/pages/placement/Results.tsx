import { type ReactNode, useMemo } from 'react';
import type { Comparison } from '../../../api/contract/placement.ts';
import { Notice } from '../../parts/Notice.tsx';
import { NoReplicas } from './NoReplicas.tsx';
import { ProfileSection } from './ProfileSection.tsx';
import { ScoresSection } from './ScoresSection.tsx';
import { BehindTables } from './tables/BehindTables.tsx';
import { GroupsTable } from './tables/GroupsTable.tsx';
import { NearestTable } from './tables/NearestTable.tsx';
import { OverviewTable } from './tables/OverviewTable.tsx';
import { VerdictSection } from './Verdict.tsx';
import { soundView, type ViewState } from './view-state.ts';

export interface ResultsProps {
  readonly study: string;
  readonly result: Comparison;
  readonly view: ViewState;
  readonly onView: (change: Partial<ViewState>) => void;
  readonly sherdActions: (id: string, label: string) => ReactNode;
  /** Stands after the sentence: what is compared, and how. */
  readonly aside?: ReactNode;
}

/** A comparison, live or kept: the sentence, the figures, the tables. */
export function Results({ study, result, view: wished, onView, sherdActions, aside }: ResultsProps) {
  const view = useMemo(() => soundView(wished, result), [wished, result]);
  const slots = useMemo(
    () => Object.fromEntries(result.groups.map(({ id, position }) => [id, position])),
    [result.groups],
  );
  const placement = result.placements.find(({ id }) => id === view.replica);
  const nameOf = (group: string) => result.groups.find(({ id }) => id === group)?.name ?? group;
  const look = { result, view, onView, slots };
  return (
    <>
      <div className="placing-head">
        {placement ? (
          <VerdictSection {...look} placement={placement} />
        ) : (
          <NoReplicas study={study} result={result} />
        )}
      </div>
      {aside}
      <div className="placing-rest">
        {result.model.warnings.length > 0 && (
          <Notice kind="caution" title="Keep in mind">
            <ul>
              {result.model.warnings.map((warning) => (
                <li key={warning}>{warning}</li>
              ))}
            </ul>
          </Notice>
        )}
        <ScoresSection {...look} sherdActions={sherdActions} />
        {placement && (
          <>
            <ProfileSection {...look} placement={placement} />
            <section className="stack" aria-labelledby="groups-heading">
              <h2 id="groups-heading">{placement.label} against each ware group</h2>
              <GroupsTable placement={placement} slots={slots} />
            </section>
            <section className="stack" aria-labelledby="nearest-heading">
              <h2 id="nearest-heading">Sherds nearest to {placement.label}</h2>
              <NearestTable study={study} placement={placement} nameOf={nameOf} />
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
        )}
        <section className="stack" aria-labelledby="behind-heading">
          <h2 id="behind-heading">What these numbers rest on</h2>
          <BehindTables result={result} />
        </section>
      </div>
    </>
  );
}
