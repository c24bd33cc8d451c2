import { type Caution, cautionsFor, FIRST_RULE } from '../../api/domain/batch/safety.ts';
import type { Hazard } from '../../api/domain/batch/types.ts';
import { Notice } from './Notice.tsx';

/**
 * The cautions that belong to what is handled; local codes first, sources with the day they were looked over. Folded
 * where the page is for reading and planning, open where the work itself is done.
 */
export function Cautions(at: { readonly hazards: readonly Hazard[]; readonly folded?: boolean }) {
  const cautions = cautionsFor(at.hazards);
  if (cautions.length === 0) return null;
  return (
    <section aria-label="Cautions" className="cautions">
      <Notice kind="caution" title="Cautions">
        <p>{FIRST_RULE}</p>
        {at.folded ? (
          <details>
            <summary>The usual cautions in full</summary>
            <List cautions={cautions} />
          </details>
        ) : (
          <List cautions={cautions} />
        )}
      </Notice>
    </section>
  );
}

function List({ cautions }: { readonly cautions: readonly Caution[] }) {
  return (
    <ul>
      {cautions.map(({ text, source }) => (
        <li key={text}>
          {text}{' '}
          {source && (
            <span className="small">
              ({source.title}, looked over {source.checked})
            </span>
          )}
        </li>
      ))}
    </ul>
  );
}
