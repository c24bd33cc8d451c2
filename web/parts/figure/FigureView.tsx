import { useLayoutEffect, useRef } from 'react';
import type { Figure, Theme } from '../../../api/figures/figure.ts';
import type { Source } from './source.ts';
import { useFigureTheme } from './useFigureTheme.ts';

export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
}
export interface FigureViewProps<Data> {
  readonly figure: Figure<Data>;
  readonly source: Source<Data>;
  /** Height in px that suits the data at a width. */
  readonly height: (data: Data, width: number, theme: Theme) => number;
  /** Called after each drawing, for what lies over the figure. */
  readonly onDrawn?: (sheet: Sheet) => void;
}

const NARROW = 520;
/** On a phone type and marks are a little smaller, so that the drawing keeps its room. */
export const fittedTheme = (theme: Theme, width: number): Theme =>
  width >= NARROW ? theme : { ...theme, fontSize: 0.93 * theme.fontSize, markSize: 0.8 * theme.markSize };

/** Mounts a figure, and draws it again when its data, its width or the theme changes, at most once a frame. */
export function FigureView<Data>({ figure, source, height, onDrawn }: FigureViewProps<Data>) {
  const host = useRef<HTMLDivElement>(null);
  const theme = useFigureTheme();
  useLayoutEffect(() => {
    const box = host.current;
    if (box === null) return;
    let frame = 0;
    let drawnWidth = 0;
    const draw = () => {
      frame = 0;
      const width = Math.floor(box.clientWidth);
      if (width === 0) return;
      drawnWidth = width;
      const data = source.get();
      const fitted = fittedTheme(theme, width);
      const sheet = { width, height: Math.round(height(data, width, fitted)), theme: fitted };
      box.replaceChildren(figure(data, { document, ...sheet }));
      onDrawn?.(sheet);
    };
    const ask = () => {
      if (frame === 0) frame = requestAnimationFrame(draw);
    };
    draw();
    const stop = source.subscribe(ask);
    // An observer calls at once, and again where only the height is new: the figure itself makes that.
    const watch = new ResizeObserver(() => {
      if (Math.floor(box.clientWidth) !== drawnWidth) ask();
    });
    watch.observe(box);
    return () => {
      stop();
      watch.disconnect();
      cancelAnimationFrame(frame);
    };
  }, [figure, source, height, onDrawn, theme]);
  return <div ref={host} className="figure" />;
}
