import { type Box, touch, within } from './box.ts';
import { dotCounter } from './dot-counter.ts';

/** Something to be named: where it is, how large its mark, and how large its name. */
export interface LabelWish {
  readonly x: number;
  readonly y: number;
  readonly markRadius: number;
  readonly width: number;
  readonly height: number;
  /** Direction tried first, radians clockwise from the right; to the right where none is given. */
  readonly prefer?: number;
}
export interface PlacedLabel {
  readonly box: Box;
  /** True when the name stands so far off that a line must lead to it. */
  readonly leader: boolean;
}
export interface LabelRoom {
  readonly bounds: Box;
  /** Boxes no name may touch. */
  readonly kept: readonly Box[];
  /** Dots that names had better not hide. */
  readonly dots: readonly { readonly x: number; readonly y: number }[];
}

/** Directions tried, nearest the reader's habit first: right, left, above, below, then between. */
const DIRECTIONS = [0, 180, 270, 90, 315, 225, 45, 135, 337.5, 22.5, 202.5, 157.5].map(
  (d) => (d * Math.PI) / 180,
);
const RINGS = [0, 0.6, 1.4, 2.4, 3.6, 5, 6.5];
const GAP = 2;

/**
 * Finds room for each name, one after the other, the first having the first choice. No name touches another, a kept
 * box or the bounds; among free spots the one hiding the fewest dots closest by is taken. Null where there is no room.
 */
export function placeLabels(wishes: readonly LabelWish[], room: LabelRoom): (PlacedLabel | null)[] {
  const taken: Box[] = [...room.kept];
  const hidden = dotCounter(room.dots, room.bounds);
  return wishes.map((wish) => {
    let best: PlacedLabel | null = null;
    let least = Number.POSITIVE_INFINITY;
    for (const [ring, spread] of RINGS.entries()) {
      for (const [turn, direction] of DIRECTIONS.entries()) {
        const box = boxAt(wish, direction + (wish.prefer ?? 0), spread * wish.height);
        if (!within(box, room.bounds) || taken.some((other) => touch(box, other))) continue;
        const cost = hidden(box) + 1.2 * ring + 0.05 * turn;
        if (cost < least) {
          least = cost;
          best = { box, leader: ring > 1 };
        }
      }
      if (best !== null && least < 1.2 * (ring + 1)) break;
    }
    if (best !== null) taken.push(best.box);
    return best;
  });
}

function boxAt(wish: LabelWish, direction: number, spread: number): Box {
  const [cos, sin] = [Math.cos(direction), Math.sin(direction)];
  const [halfWidth, halfHeight] = [wish.width / 2, wish.height / 2];
  // The side that faces the mark slides from one end of the name to the other as the direction turns.
  const slide = (part: number) => Math.max(-1, Math.min(1, 1.6 * part));
  const reach = wish.markRadius + GAP + spread;
  const x = wish.x + cos * reach + slide(cos) * halfWidth;
  const y = wish.y + sin * reach + slide(sin) * halfHeight;
  return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, bottom: y + halfHeight };
}
