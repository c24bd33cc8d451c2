import { requireOutline } from '../../../../api/domain/colour/outline.ts';
import type { Corner, Outline } from '../../../../api/domain/colour/types.ts';
import { messageOf } from '../../../problem.ts';

/** An outline on its way: its corners so far, where the crosshair stands, and what to read out. */
export interface Drawing {
  readonly corners: Outline;
  readonly at: Corner;
  readonly closed: boolean;
  readonly said: string;
}
export const BLANK: Drawing = { corners: [], at: [0.5, 0.5], closed: false, said: '' };

/** Shares of the picture within which a press means the first corner again. */
const NEAR = 0.02;
const near = (a: Corner, b: Corner) => Math.hypot(a[0] - b[0], a[1] - b[1]) < NEAR;
/** Inside the picture, to a hundredth of a pixel of any picture there is. */
const hold = (share: number) => Math.round(1e5 * Math.min(1, Math.max(0, share))) / 1e5;
const place = ([x, y]: Corner) =>
  `${Math.round(100 * x)} % from the left, ${Math.round(100 * y)} % from the top`;

export function moved(drawing: Drawing, [dx, dy]: Corner): Drawing {
  const at: Corner = [hold(drawing.at[0] + dx), hold(drawing.at[1] + dy)];
  return { ...drawing, at, said: `Crosshair at ${place(at)}` };
}

/** One more corner; on the first again, or twice on one place, the outline is closed. */
export function cornered(drawing: Drawing, to: Corner = drawing.at): Drawing {
  const at: Corner = [hold(to[0]), hold(to[1])];
  const { corners } = drawing;
  const [first, last] = [corners[0], corners.at(-1)];
  if (first && last && corners.length >= 3 && (near(at, first) || near(at, last)))
    return closed({ ...drawing, at });
  if (last && last[0] === at[0] && last[1] === at[1])
    return { ...drawing, said: 'There is a corner here already' };
  const next = [...corners, at];
  return { corners: next, at, closed: false, said: `Corner ${next.length} at ${place(at)}` };
}

export function boxed(drawing: Drawing, from: Corner, to: Corner): Drawing {
  const [left, top, right, bottom] = [...from, ...to].map(hold) as [number, number, number, number];
  const corners: Outline = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ];
  return closed({ ...drawing, corners, at: [right, bottom] });
}

export function closed(drawing: Drawing): Drawing {
  try {
    requireOutline(drawing.corners);
    return { ...drawing, closed: true, said: `Outline closed, ${drawing.corners.length} corners` };
  } catch (error) {
    return { ...drawing, said: messageOf(error) };
  }
}

export function takenBack(drawing: Drawing): Drawing {
  const corners = drawing.corners.slice(0, -1);
  const said = drawing.corners.length === 0 ? 'No corner to take back' : `${corners.length} corners left`;
  return { ...drawing, corners, said };
}

export const dropped = (drawing: Drawing): Drawing => ({ ...BLANK, at: drawing.at, said: 'Outline dropped' });

const STEP = 0.01;
const LARGE = 0.05;
const ARROWS: Readonly<Record<string, Corner>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** What a key does to an outline; null where it does nothing here. */
export function keyed(
  drawing: Drawing,
  { key, shiftKey }: { key: string; shiftKey: boolean },
): Drawing | null {
  const arrow = ARROWS[key];
  const step = shiftKey ? LARGE : STEP;
  if (arrow) return moved(drawing, [step * arrow[0], step * arrow[1]]);
  if (key === 'Enter' || key === ' ') return cornered(drawing);
  if (key === 'Backspace') return takenBack(drawing);
  if (key === 'Escape') return drawing.corners.length > 0 ? dropped(drawing) : null;
  return null;
}
