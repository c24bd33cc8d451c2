import { Link } from 'wouter';
import type { Study } from '../../../api/contract/study.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { LinkButton } from '../../parts/Button.tsx';
import { studyPath } from '../../paths.ts';
import { standingSteps, stepsOf } from './steps.ts';

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
      <Standing study={study} />
    </section>
  );
}

function Standing({ study }: { readonly study: Study }) {
  const standing = standingSteps(study);
  if (standing.length === 0) return null;
  return (
    <p>
      After every tile:{' '}
      {standing.map((step, i) => (
        <span key={step.to}>
          {i > 0 && ', '}
          <Link href={studyPath(study.id, step.to)}>{step.title}</Link>
        </span>
      ))}
      .
    </p>
  );
}
