import { useLayoutEffect, useRef } from 'react';
import type { Figure, Theme } from '../../../api/figures/figure.ts';

export interface StillSheet {
  readonly width: number;
  readonly height: number;
  readonly theme: Theme;
}

/** A figure drawn once for a sheet of its own and scaled to the room it has, as on a slide or on paper. */
export function StillFigure<Data>(at: {
  readonly figure: Figure<Data>;
  readonly data: Data;
  readonly sheet: StillSheet;
  readonly className: string;
  /** Height of the frame it is shown in, px, where that is not the sheet's own. */
  readonly frame?: number;
}) {
  const { figure, data, sheet, frame } = at;
  const host = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    const drawn = figure(data, { document, ...sheet });
    drawn.removeAttribute('width');
    drawn.removeAttribute('height');
    if (frame !== undefined) drawn.setAttribute('viewBox', `0 0 ${sheet.width} ${frame}`);
    host.current?.replaceChildren(drawn);
  }, [figure, data, sheet, frame]);
  return <div ref={host} className={at.className} />;
}
