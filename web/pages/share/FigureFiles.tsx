import type { ReactNode } from 'react';
import type { FigureName, FigureWish } from '../../../api/contract/figure.ts';
import { FileChoices, type FileChoicesProps, type FileSheet } from '../../parts/figure/FileChoices.tsx';
import type { ViewState } from '../placement/view-state.ts';

/** The figures of a comparison by the names they go by. */
export const FIGURES: readonly { readonly id: FigureName; readonly label: string }[] = [
  { id: 'scores', label: 'Scores' },
  { id: 'loadings', label: 'Loadings' },
  { id: 'profile', label: 'Oxides' },
  { id: 'pair', label: 'Two oxides' },
  { id: 'ternary', label: 'Three oxides' },
  { id: 'dendrogram', label: 'Tree' },
  { id: 'heatmap', label: 'Distances' },
];

export type FiguresFrom =
  | { readonly address: string }
  | { readonly fetch: (file: string, look: FigureWish) => Promise<Blob> };
interface FigureFilesProps {
  readonly view: ViewState;
  readonly from: FiguresFrom;
}

/** The figures as files, drawn by the service as they are looked at now. */
export function FigureFiles({ from, view }: FigureFilesProps) {
  const look = (file: string, sheet: FileSheet) => wishOf(view, file.split('.')[0] as FigureName, sheet);
  return (
    <FigureFilesOf figures={FIGURES} from={from} look={look}>
      <p className="faint">Each as it is looked at above.</p>
    </FigureFilesOf>
  );
}

/** Figures of any kind as files; where nothing is chosen on the page, a sheet is all there is to ask for. */
export function FigureFilesOf(at: {
  readonly figures: FileChoicesProps['figures'];
  readonly from: FiguresFrom;
  readonly look?: (file: string, sheet: FileSheet) => FigureWish;
  readonly children?: ReactNode;
}) {
  const { from, look = (_: string, sheet: FileSheet) => sheet } = at;
  const files =
    'address' in from
      ? {
          address: (file: string, sheet: FileSheet) =>
            `${from.address}/figures/${file}?${asQuery(look(file, sheet))}`,
        }
      : { fetch: (file: string, sheet: FileSheet) => from.fetch(file, look(file, sheet)) };
  return (
    <section className="stack" aria-labelledby="files-heading">
      <h2 id="files-heading">Figures as files</h2>
      {at.children}
      <FileChoices figures={at.figures} from={files} />
    </section>
  );
}

function wishOf(view: ViewState, figure: FigureName, sheet: FileSheet): FigureWish {
  const { level, naming, basis, ellipses, loadings, others, axis, linkage, replica, against } = view;
  const oxides = figure === 'pair' ? view.pair : figure === 'ternary' ? view.ternary : null;
  return {
    ...sheet,
    ...{ across: view.components[0] + 1, up: view.components[1] + 1 },
    ...{ level, naming, basis, ellipses, loadings, others, axis, linkage },
    ...(replica ? { replica } : {}),
    ...(against ? { against } : {}),
    ...(oxides ? { oxides: oxides.join(',') } : {}),
  };
}

const asQuery = (look: FigureWish) =>
  new URLSearchParams(Object.entries(look).map(([name, value]) => [name, String(value)]));
