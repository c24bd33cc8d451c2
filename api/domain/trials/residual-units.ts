import { centreWithin, takeOut } from './columns.ts';
import type { BlockedUnits } from './permutation-slope.ts';

/**
 * Units with other factors taken out of both x and y by least squares within blocks, so that what is permuted is what
 * those factors do not explain (Kennedy 1995, doi 10.1080/07350015.1995.10524581: approximate, exact without others).
 *
 * @example
 * residualUnits({ blocks: [1, 1, 1, 1], x: [0, 1, 0, 1], y: [1, 2, 3, 4] }, [[0, 0, 1, 1]]) // { x: [-0.5, 0.5, -0.5, 0.5], y: [-0.5, 0.5, -0.5, 0.5] }
 */
export function residualUnits(
  { blocks, x, y }: BlockedUnits,
  others: readonly (readonly number[])[],
): BlockedUnits {
  if (others.length === 0) return { blocks, x, y };
  const within = blocks.map(String);
  const columns = others.map((o) => centreWithin(o, within));
  const rest = (v: readonly number[]) => takeOut(centreWithin(v, within), columns).left;
  return { blocks, x: rest(x), y: rest(y) };
}
