import { cautionsFor, FIRST_RULE } from '../../../../api/domain/batch/safety.ts';
import type { Hazard } from '../../../../api/domain/batch/types.ts';
import { Notice } from '../../../parts/Notice.tsx';

/** The cautions that belong to what is handled; local codes first, sources with the day they were looked over. */
export function Cautions({ hazards }: { readonly hazards: readonly Hazard[] }) {
  const cautions = cautionsFor(hazards);
  if (cautions.length === 0) return null;
  return (
    <section aria-label="Cautions" className="cautions">
      <Notice kind="caution" title="Cautions">
        <p>{FIRST_RULE}</p>
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
      </Notice>
    </section>
  );
}
