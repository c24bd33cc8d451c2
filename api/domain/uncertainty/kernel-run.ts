import type { Kernel, KernelGroup } from './kernel.ts';
import { blockProducts } from './kernel-block.ts';

/**
 * Distances of draws to groups: draw i of group g at [g·draws + i]. D² stays NaN where it is refused; off² stays 0
 * there and where D² sees every direction.
 */
export interface KernelDistances {
  readonly draws: number;
  readonly distance2: Float64Array;
  readonly d2: Float64Array;
  /** Squared distance off the axes that D² is taken on. */
  readonly off2: Float64Array;
}

/**
 * Room for the distances of so many draws to so many groups.
 * @example
 * distancesFor(2, 3).d2.length // 6
 */
export function distancesFor(groups: number, draws: number): KernelDistances {
  const room = () => new Float64Array(groups * draws);
  return { draws, distance2: room(), d2: room().fill(Number.NaN), off2: room() };
}

/**
 * Places a block of draws: squared distance to every group's centre, D² and squared distance off the axes, written
 * from column `first` on. Four draws at a time, so that each number of a group's factor is read once for four.
 * @example
 * kernel = { axes: [Float64Array.of(1, 0, 0)], groups: [{ mean: Float64Array.of(1, 1, 0), axes: 0, p: 1, centre: Float64Array.of(1), shift: Float64Array.of(0.5), inverseCholesky: Float64Array.of(0.5), offAxes: 0, offCentre: Float64Array.of(1) }] }
 * out = distancesFor(1, 1)
 * placeBlock(kernel, Float64Array.of(4, 5, 0), { out, first: 0 })
 * out.distance2 // [25]
 * out.d2 // [2.25]
 * out.off2 // [16]
 */
export function placeBlock(
  kernel: Pick<Kernel, 'axes' | 'groups'>,
  y: Float64Array,
  { out, first }: { readonly out: KernelDistances; readonly first: number },
): void {
  const width = kernel.groups[0]?.mean.length ?? 0;
  if (width === 0) return;
  const size = y.length / width;
  const products = kernel.axes.map((flat) => blockProducts(y, rowsOf(flat, width), null));
  kernel.groups.forEach((group, g) => {
    const to = g * out.draws + first;
    squaredDistances(y, group.mean, { into: out.distance2, to, size });
    if (group.offAxes >= 0) offAxes(products[group.offAxes]!, group, { out, to, size });
    if (group.axes >= 0) mahalanobisBlock(products[group.axes]!, group, { into: out.d2, to, size });
  });
}

/** Off² is what the axes leave of the distance. */
function offAxes(
  z: Float64Array,
  { offCentre }: KernelGroup,
  { out, to, size }: { out: KernelDistances; to: number; size: number },
): void {
  squaredDistances(z, offCentre, { into: out.off2, to, size });
  for (let i = to; i < to + size; i++) out.off2[i] = Math.max(0, out.distance2[i]! - out.off2[i]!);
}

const rowsOf = (flat: Float64Array, width: number) =>
  Array.from({ length: flat.length / width }, (_, r) => flat.subarray(r * width, (r + 1) * width));

interface Target {
  readonly into: Float64Array;
  readonly to: number;
  readonly size: number;
}

function squaredDistances(rows: Float64Array, mean: Float64Array, { into, to, size }: Target): void {
  for (let i = 0; i < size; i++) into[to + i] = 0;
  for (let j = 0, k = 0; j < mean.length; j++) {
    const m = mean[j]!;
    for (let i = 0; i < size; i++, k++) {
      const d = rows[k]! - m;
      into[to + i]! += d * d;
    }
  }
}

function mahalanobisBlock(z: Float64Array, group: KernelGroup, { into, to, size }: Target): void {
  const { p, shift, inverseCholesky: inverse } = group;
  // Fewer than four draws share lanes; the last four of a block may be placed twice, to the same result.
  const [second, third, fourth] = [1, 2, 3].map((lane) => Math.min(lane, size - 1)) as [
    number,
    number,
    number,
  ];
  for (let start = 0; start < size; start += 4) {
    const i = Math.max(0, Math.min(start, size - 4));
    let [a, b, c, d] = [0, 0, 0, 0];
    for (let k = 0, at = 0; k < p; k++) {
      let u = -shift[k]!;
      let [v, w, x] = [u, u, u];
      for (let j = 0, from = i; j <= k; j++, from += size) {
        const l = inverse[at++]!;
        u += l * z[from]!;
        v += l * z[from + second]!;
        w += l * z[from + third]!;
        x += l * z[from + fourth]!;
      }
      a += u * u;
      b += v * v;
      c += w * w;
      d += x * x;
    }
    into[to + i] = a;
    into[to + i + second] = b;
    into[to + i + third] = c;
    into[to + i + fourth] = d;
  }
}
