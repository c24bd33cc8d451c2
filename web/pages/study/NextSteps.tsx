import type { ReactNode } from 'react';
import type { Study } from '../../../api/contract/study.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { LinkButton } from '../../parts/Button.tsx';
import { count } from '../../parts/numbers.ts';
import { studyPath } from '../../paths.ts';

interface Step {
  readonly id: string;
  readonly done: boolean;
  readonly title: string;
  readonly words: ReactNode;
  readonly to: string;
  readonly button: string;
}

/** Sherds that carry a group's spread: below four no distance in its own spread can be given at all. */
const FEWEST = 4;

function stepsOf(study: Study, groups: readonly WareGroup[]): Step[] {
  const { counts } = study;
  const usable = groups.filter((group) => group.specimens >= FEWEST).length;
  return [
    {
      id: 'intake',
      done: counts.analyses > 0 && counts.specimens > counts.replicas,
      title: 'Bring in the sherds',
      words: 'A laboratory’s file, or a table pasted from a paper: one row or more for each sherd.',
      to: '/intake',
      button: 'Bring in a file',
    },
    {
      id: 'sherds',
      done: usable > 0,
      title: 'Sort them into ware groups',
      words: `A group needs ${FEWEST} analysed sherds before a tile can be set against its spread; ten or more say much more.`,
      to: '/sherds',
      button: 'To the sherds',
    },
    {
      id: 'replicas',
      done: counts.replicas > 0,
      title: 'Bring in your replicas',
      words:
        'The analyses of your fired tiles, as a file or typed in by hand. Choose “replica” as what they are.',
      to: '/intake',
      button: 'Bring in replicas',
    },
    {
      id: 'placement',
      done: counts.placements > 0,
      title: 'Place the replicas',
      words: 'How near each tile lies to each ware group, and which oxides make up the distance.',
      to: '/placement',
      button: 'Place them',
    },
  ];
}

/** The way on: the first step not yet done stands out. */
export function NextSteps({
  study,
  groups,
}: {
  readonly study: Study;
  readonly groups: readonly WareGroup[];
}) {
  const steps = stepsOf(study, groups);
  const next = steps.find((step) => !step.done);
  return (
    <section className="stack" aria-labelledby="next">
      <h2 id="next">What to do next</h2>
      <ol className="steps">
        {steps.map((step) => (
          <li key={step.id} className={step === next ? 'sheet step now' : 'step'}>
            <h3>
              {step.title} {step.done && <span className="tag done">done</span>}
            </h3>
            <p className="faint">{step.words}</p>
            {!step.done && (
              <LinkButton to={studyPath(study.id, step.to)} look={step === next ? 'primary' : 'plain'}>
                {step.button}
              </LinkButton>
            )}
          </li>
        ))}
      </ol>
      {!next && (
        <p className="faint">Everything is here: {count(study.counts.replicas, 'replica')} to place.</p>
      )}
    </section>
  );
}
