import { type ZoomTransform, zoomIdentity } from 'd3';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import { type ScoresLayout, scoresLayout } from '../../../../api/figures/scores-layout.ts';
import type { Sheet } from '../../../parts/figure/FigureView.tsx';

export type View = ScoresData['view'];

let last: { readonly data: ScoresData; readonly sheet: Sheet; readonly layout: ScoresLayout } | null = null;

/** The whole plane as it lies on the sheet before anything is zoomed; asked for many times in one gesture. */
export function wholePlane(data: ScoresData, sheet: Sheet): ScoresLayout {
  if (last?.data !== data || last.sheet !== sheet)
    last = { data, sheet, layout: scoresLayout({ ...data, view: null }, sheet) };
  return last.layout;
}

/** The part of the plane that a zoom leaves in sight. */
export function viewOf(transform: ZoomTransform, data: ScoresData, sheet: Sheet): View {
  if (transform.k === 1 && transform.x === 0 && transform.y === 0) return null;
  const { x, y } = wholePlane(data, sheet);
  const [left, right] = transform.rescaleX(x).domain() as [number, number];
  const [low, high] = transform.rescaleY(y).domain() as [number, number];
  return { x: [left, right], y: [low, high] };
}

/** The zoom that leaves a part of the plane in sight; the other way round. */
export function transformOf(view: View, data: ScoresData, sheet: Sheet): ZoomTransform {
  if (view === null) return zoomIdentity;
  const whole = wholePlane(data, sheet);
  const part = scoresLayout({ ...data, view }, sheet);
  const k = width(whole.x.domain()) / width(part.x.domain());
  const [left] = part.x.domain();
  const [low] = part.y.domain();
  return zoomIdentity
    .translate(whole.plot.left - k * whole.x(left!), whole.plot.bottom - k * whole.y(low!))
    .scale(k);
}
const width = ([from, to]: number[]): number => to! - from!;
