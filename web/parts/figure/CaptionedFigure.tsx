import type { FigureViewProps } from './FigureView.tsx';
import { FigureView } from './FigureView.tsx';
import { useSourceOf } from './useSource.ts';

interface CaptionedFigureProps<Data> extends Pick<FigureViewProps<Data>, 'figure' | 'height'> {
  readonly data: Data;
  readonly caption: string;
}

/** A figure on its sheet, and beneath it what goes with it when it is taken away. */
export function CaptionedFigure<Data>({ figure, height, data, caption }: CaptionedFigureProps<Data>) {
  const source = useSourceOf(data);
  return (
    <figure className="sheet figure-sheet stack tight">
      <FigureView figure={figure} source={source} height={height} />
      <figcaption className="faint small">{caption}</figcaption>
    </figure>
  );
}
