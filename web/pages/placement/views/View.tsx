import { type ReactNode, useMemo } from 'react';
import { RequirementError } from '../../../../api/domain/requirement.ts';
import type { Figure, Theme } from '../../../../api/figures/figure.ts';
import { FigureDownload } from '../../../parts/figure/FigureDownload.tsx';
import { FigureView } from '../../../parts/figure/FigureView.tsx';
import { useSourceOf } from '../../../parts/figure/useSource.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { Opened } from '../panel/Fold.tsx';

export interface Drawn<Data> {
  readonly data: Data;
  readonly caption: string;
}
export interface ViewProps<Data> {
  readonly figure: Figure<Data>;
  readonly height: (data: Data, width: number, theme: Theme) => number;
  /** Name of the file it is saved as. */
  readonly name: string;
  /** What is drawn; throws a `RequirementError` where the comparison has nothing to show. */
  readonly make: () => Drawn<Data>;
  /** Choices of the reader, beneath. */
  readonly children?: ReactNode;
}

/** A figure in a fold, with its caption; nothing is worked out while the fold is closed. */
export const View = <Data,>(at: ViewProps<Data>) => (
  <Opened>
    <Made {...at} />
  </Opened>
);

function Made<Data>({ make, children, ...at }: ViewProps<Data>) {
  const made = useMemo(() => tried(make), [make]);
  return (
    <>
      {'refusal' in made ? (
        <Notice>
          <p>{made.refusal}.</p>
        </Notice>
      ) : (
        <Sheet {...at} {...made} />
      )}
      {children && <div className="look">{children}</div>}
    </>
  );
}

function Sheet<Data>(at: Omit<ViewProps<Data>, 'make'> & Drawn<Data>) {
  const source = useSourceOf(at.data);
  const { figure, height, name } = at;
  return (
    <figure className="sheet figure-sheet stack tight">
      <FigureView figure={figure} source={source} height={height} />
      <div>
        <FigureDownload figure={figure} source={source} height={height} name={name} />
      </div>
      <figcaption className="faint small">{at.caption}</figcaption>
    </figure>
  );
}

function tried<Data>(make: () => Drawn<Data>): Drawn<Data> | { readonly refusal: string } {
  try {
    return make();
  } catch (error) {
    if (error instanceof RequirementError) return { refusal: error.message };
    throw error;
  }
}
