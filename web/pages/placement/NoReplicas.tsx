import type { Comparison } from '../../../api/contract/placement.ts';
import { LinkButton } from '../../parts/Button.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { studyPath } from '../../paths.ts';
import { measuredWord } from '../sherds/words.ts';

/** Where the references are there and nothing to set among them. */
export function NoReplicas({
  study,
  result,
}: {
  readonly study: string | null;
  readonly result: Comparison;
}) {
  const measured = measuredWord(result.request.measured).toLowerCase();
  const refused = result.excluded.filter(({ group }) => group === null);
  return (
    <EmptyState
      title="No replica to place yet"
      actions={
        study !== null && (
          <LinkButton to={studyPath(study, '/intake')} look="primary">
            Bring in the analyses of a tile
          </LinkButton>
        )
      }
    >
      {refused.length > 0 ? (
        <ul>
          {refused.map(({ specimen, analysis, label, reason }) => (
            <li key={`${specimen} ${analysis}`}>
              {label}: {reason}
            </li>
          ))}
        </ul>
      ) : (
        <p>
          No replica has an analysis of its {measured}. Bring one in, or choose above what else was measured.
          The plot below shows the sherds by themselves.
        </p>
      )}
    </EmptyState>
  );
}
