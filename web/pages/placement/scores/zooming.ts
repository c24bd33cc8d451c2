import { type D3ZoomEvent, select, zoom } from 'd3';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import { scoresLayout } from '../../../../api/figures/scores-layout.ts';
import type { Sheet } from '../../../parts/figure/FigureView.tsx';
import type { Source } from '../../../parts/figure/source.ts';
import { transformOf, type View, viewOf, wholePlane } from './view.ts';

export interface Zooming {
  /** Comes nearer round a point of the plane, or round the middle where none is given. */
  readonly by: (factor: number, about: { readonly x: number; readonly y: number } | null) => void;
  /** Moves what is seen, in px. */
  readonly move: (across: number, up: number) => void;
  readonly reset: () => void;
  readonly stop: () => void;
}
export interface Plane {
  readonly data: () => ScoresData;
  readonly sheet: () => Sheet | null;
  readonly view: Source<View>;
}

/** Lets a plot be dragged, pinched and zoomed with the wheel. One finger and a bare wheel still scroll the page. */
export function attachZoom(cover: HTMLElement, { data, sheet, view }: Plane): Zooming {
  const behaviour = zoom<HTMLElement, unknown>()
    .scaleExtent([0.5, 500])
    .extent(() => {
      const { plot } = wholePlane(data(), sheet()!);
      return [
        [plot.left, plot.top],
        [plot.right, plot.bottom],
      ];
    })
    .filter((event: Event) => sheet() !== null && takeUp() && wanted(event))
    .on('start', () => moving(true))
    .on('end', () => moving(false))
    .on('zoom', ({ transform }: D3ZoomEvent<HTMLElement, unknown>) =>
      view.set(viewOf(transform, data(), sheet()!)),
    );
  // While it moves the drawing may be coarser: half the time of a frame goes into smooth edges of marks.
  const moving = (on: boolean) => cover.parentElement?.classList.toggle('moving', on);
  const chosen = select(cover).call(behaviour);
  // The view is the truth: the figure may have been resized since the last gesture.
  function takeUp(): true {
    chosen.property('__zoom', transformOf(view.get(), data(), sheet()!));
    return true;
  }
  return {
    by: (factor, about) => {
      if (sheet() === null || !takeUp()) return;
      const { x, y } = scoresLayout({ ...data(), view: view.get() }, sheet()!);
      if (about === null) behaviour.scaleBy(chosen, factor);
      else behaviour.scaleBy(chosen, factor, [x(about.x), y(about.y)]);
    },
    move: (across, up) => {
      if (sheet() === null || !takeUp()) return;
      const { k } = transformOf(view.get(), data(), sheet()!);
      behaviour.translateBy(chosen, across / k, up / k);
    },
    reset: () => view.set(null),
    stop: () => chosen.on('.zoom', null),
  };
}

function wanted(event: Event): boolean {
  if (event.type === 'wheel') return (event as WheelEvent).ctrlKey || (event as WheelEvent).metaKey;
  if (event.type.startsWith('touch')) return (event as TouchEvent).touches.length > 1;
  return (event as MouseEvent).button === 0;
}
