import type { ComparisonText } from '../../../api/contract/figure.ts';
import { DoiLink } from '../../parts/DoiLink.tsx';
import { FIGURES } from './FigureFiles.tsx';

/** Captions, methods and citations, ready to be copied into a paper. */
export function Words({ text }: { readonly text: ComparisonText }) {
  const sources = text.sources.filter(({ n }) => n > 0);
  return (
    <section className="stack" aria-labelledby="words-heading">
      <h2 id="words-heading">Methods, captions and sources</h2>
      <h3>Methods</h3>
      <p>{text.methods}</p>
      <h3>Captions</h3>
      <dl className="stack tight">
        {FIGURES.map(({ id, label }) => (
          <div key={id}>
            <dt>
              <strong>{label}</strong>
            </dt>
            <dd>{text.captions[id]}</dd>
          </div>
        ))}
      </dl>
      <h3>Whose figures these are</h3>
      <ul>
        {sources.map(({ kind, name, source, doi, n }) => (
          <li key={`${kind} ${name} ${source} ${doi}`}>
            {name} ({n} {kind === 'analyses' ? (n === 1 ? 'analysis' : 'analyses') : 'specimens'})
            {source && `: ${source}`} <DoiLink doi={doi} />
          </li>
        ))}
      </ul>
      <h3>References</h3>
      <ul>
        {text.references.map(({ text: words, doi }) => (
          <li key={doi}>
            {words} <DoiLink doi={doi} />
          </li>
        ))}
      </ul>
    </section>
  );
}
