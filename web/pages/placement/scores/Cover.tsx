import {
  type KeyboardEvent,
  type MouseEvent,
  type PointerEvent,
  type RefObject,
  useEffect,
  useMemo,
  useRef,
} from 'react';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import { scoresLayout } from '../../../../api/figures/scores-layout.ts';
import type { Sheet } from '../../../parts/figure/FigureView.tsx';
import type { Source } from '../../../parts/figure/source.ts';
import { followingFinder } from './finder.ts';
import { actionOf } from './keys.ts';
import { markRead } from './pointer-mark.ts';
import type { Reading } from './Readout.tsx';
import type { View } from './view.ts';
import { type Read, walk } from './walk.ts';
import { attachZoom, type Zooming } from './zooming.ts';

export interface CoverProps {
  /** The whole plane, and the part of it that is shown. */
  readonly source: Source<ScoresData>;
  readonly shown: Source<ScoresData>;
  readonly view: Source<View>;
  readonly reading: Source<Reading | null>;
  readonly sheet: RefObject<Sheet | null>;
  /** Called by the figure after each drawing. */
  readonly redrawn: RefObject<() => void>;
  readonly zooming: RefObject<Zooming | null>;
  readonly hint: string;
  readonly onChoose: (replica: string) => void;
}
const REACH = 22;
const STEP = 40;

/** Lies over the plot and takes pointer and keys; the drawing beneath stays plain. */
export function Cover(at: CoverProps) {
  const cover = useRef<HTMLDivElement>(null);
  const over = useRef<SVGSVGElement>(null);
  const finder = useMemo(() => followingFinder(at.source), [at.source]);
  const { source, shown, view, reading, sheet, redrawn, zooming } = at;
  useEffect(() => {
    const attached = attachZoom(cover.current!, { data: source.get, sheet: () => sheet.current, view });
    zooming.current = attached;
    return attached.stop;
  }, [source, view, sheet, zooming]);
  useEffect(() => {
    const mark = () => {
      if (sheet.current === null || over.current === null) return;
      const read = reading.get()?.read ?? null;
      const now = read && finder().byId(read.id);
      markRead(over.current, now, {
        layout: scoresLayout(shown.get(), sheet.current),
        theme: sheet.current.theme,
      });
    };
    redrawn.current = mark;
    return reading.subscribe(mark);
  }, [reading, shown, sheet, redrawn, finder]);

  const show = (read: Read | null, kept: boolean) =>
    reading.set(read && { read, kept, components: source.get().components });
  const under = (event: MouseEvent): Read | null => {
    if (sheet.current === null) return null;
    const { left, top } = cover.current!.getBoundingClientRect();
    const { x, y } = scoresLayout(shown.get(), sheet.current);
    const unit = Math.abs(x.invert(1) - x.invert(0));
    return finder().nearest(x.invert(event.clientX - left), y.invert(event.clientY - top), REACH * unit);
  };
  const choose = (read: Read | null) => {
    show(read, read !== null);
    if (read?.kind === 'replica') at.onChoose(read.id);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const action = actionOf(event);
    if (action === null) return;
    event.preventDefault();
    const here = reading.get()?.read ?? null;
    if (action.kind === 'walk') show(walk(finder().sets, here?.id ?? null, action.step), false);
    else if (action.kind === 'choose') choose(here);
    else if (action.kind === 'leave') show(null, false);
    else if (action.kind === 'zoom') zooming.current?.by(action.factor, here);
    else if (action.kind === 'move') zooming.current?.move(action.across * STEP, action.up * STEP);
    else zooming.current?.reset();
  };
  const onPointerMove = (event: PointerEvent) => {
    if (event.pointerType === 'mouse' && event.buttons === 0 && !reading.get()?.kept)
      show(under(event), false);
  };
  return (
    <div
      ref={cover}
      className="cover"
      role="application"
      aria-roledescription="plot"
      aria-label={`${source.get().title}. Arrow keys read its points.`}
      aria-describedby={at.hint}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys
      tabIndex={0}
      onKeyDown={onKeyDown}
      onPointerMove={onPointerMove}
      onPointerLeave={() => !reading.get()?.kept && show(null, false)}
      onClick={(event) => choose(under(event))}
    >
      <svg ref={over} aria-hidden="true" />
    </div>
  );
}
