import { cautionsFor, FIRST_RULE } from '../../../../api/domain/batch/safety.ts';
import { Notice } from '../../../parts/Notice.tsx';

/** What belongs on every page about an open fire and paint with lead; local codes first. */
export function FireCautions() {
  return (
    <section aria-label="Cautions">
      <Notice kind="caution" title="Fire, smoke and lead">
        <p>{FIRST_RULE}</p>
        <ul>
          {cautionsFor(['fire', 'lead']).map(({ text, source }) => (
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
