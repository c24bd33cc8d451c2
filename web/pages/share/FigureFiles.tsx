import { useState } from 'react';
import type { FigureFormat } from '../../../api/contract/figure.ts';
import { Select } from '../../parts/Select.tsx';
import type { ViewState } from '../placement/view-state.ts';

const FORMATS: readonly { id: FigureFormat; label: string; hint: string }[] = [
  { id: 'slide-16-9', label: 'Slide, 16:9', hint: '339 × 191 mm, type of 20 pt' },
  { id: 'slide-4-3', label: 'Slide, 4:3', hint: '254 × 191 mm, type of 20 pt' },
  { id: 'column-single', label: 'Single column', hint: '85 mm wide' },
  { id: 'column-double', label: 'Double column', hint: '175 mm wide' },
  { id: 'page', label: 'Page, light', hint: '254 mm wide' },
  { id: 'page-dark', label: 'Page, dark', hint: '254 mm wide' },
];
/** The figures of a comparison by the names they go by. */
export const FIGURES = [
  { id: 'scores', label: 'Scores' },
  { id: 'loadings', label: 'Loadings' },
  { id: 'profile', label: 'Oxides' },
  { id: 'pair', label: 'Two oxides' },
  { id: 'ternary', label: 'Three oxides' },
  { id: 'dendrogram', label: 'Tree' },
  { id: 'heatmap', label: 'Distances' },
] as const;
const FORMS = ['svg', 'pdf', 'png'] as const;
const WIDTH = 3840;

/** The figures as files, drawn by the service as they are looked at now. */
export function FigureFiles({ from, view }: { readonly from: string; readonly view: ViewState }) {
  const [format, setFormat] = useState<FigureFormat>('slide-16-9');
  const query = new URLSearchParams({
    ...{ format, width: String(WIDTH), level: String(view.level), naming: view.naming, basis: view.basis },
    ...{ across: String(view.components[0] + 1), up: String(view.components[1] + 1) },
    ...{ ellipses: String(view.ellipses), loadings: String(view.loadings), others: String(view.others) },
    ...(view.replica ? { replica: view.replica } : {}),
    ...(view.against ? { against: view.against } : {}),
  });
  return (
    <section className="stack" aria-labelledby="files-heading">
      <h2 id="files-heading">Figures as files</h2>
      <p className="faint">
        SVG and PDF are vectors; the PDF carries its font. PNG is {WIDTH} px wide. The look is the one above.
      </p>
      <div className="look">
        <div className="wide">
          <Select label="Made for" choices={FORMATS} value={format} onChange={setFormat} />
        </div>
      </div>
      <ul className="plain-list">
        {FIGURES.map(({ id, label }) => (
          <li key={id} className="row">
            <span>{label}</span>
            {FORMS.map((form) => (
              <a key={form} className="button quiet" href={`${from}/figures/${id}.${form}?${query}`} download>
                {form.toUpperCase()}
                <span className="unseen"> of {label}</span>
              </a>
            ))}
          </li>
        ))}
      </ul>
    </section>
  );
}
