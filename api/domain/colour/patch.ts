import { RequirementError } from '../requirement.ts';
import { runsInside } from './outline.ts';
import { channelToLight } from './srgb.ts';
import type { LinearRgb, Outline, Patch, Pixels } from './types.ts';

export const LEAST_PIXELS = 100;
/** Pixels along a side of the squares that a JPEG shares colour in. */
const BLOCK = 16;
const WHOLE_ENOUGH = (BLOCK * BLOCK) / 2;
const TOP = 254;
const BOTTOM = 1;
const LIGHT = Float64Array.from({ length: 256 }, (_, byte) => channelToLight(byte));

/**
 * Walks over the pixels inside an outline, each as linear light; those that are not opaque hold no light of the scene
 * and are passed over. Throws as `requireOutline`.
 *
 * @example
 * const seen = []
 * const clear = { width: 2, height: 1, data: [255, 255, 255, 255, 9, 9, 9, 0] }
 * eachPixel(clear, [[0, 0], [1, 0], [1, 1], [0, 1]], (light, { x }) => seen.push([x, ...light]))
 * seen // [[0, 1, 1, 1]]
 */
export function eachPixel(
  { width, height, data }: Pixels,
  outline: Outline,
  visit: (light: LinearRgb, place: { at: number; x: number; y: number }) => void,
): void {
  for (const { row, from, to } of runsInside(outline, { width, height }))
    for (let x = from; x < to; x++) {
      const at = 4 * (row * width + x);
      if (data[at + 3]! < 255) continue;
      visit([LIGHT[data[at]!]!, LIGHT[data[at + 1]!]!, LIGHT[data[at + 2]!]!], { at, x, y: row });
    }
}

/**
 * The light inside an outline: its mean, the means of its squares of 16 pixels, and the shares of pixels at the ends
 * of what the picture holds. Throws where fewer than 100 pixels lie inside, and as `requireOutline`.
 *
 * @example
 * const pixels = { width: 20, height: 10, data: new Uint8Array(800).fill(255) }
 * readPatch(pixels, [[0, 0], [1, 0], [1, 1], [0, 1]]) // { pixels: 200, mean: [1, 1, 1], burnt: 1, drowned: 0 }
 * readPatch(pixels, [[0, 0], [0.2, 0], [0.2, 0.2]]) // throws at least 100 pixels
 */
export function readPatch(pixels: Pixels, outline: Outline): Patch {
  const all = new Sum();
  const blocks = new Map<number, Sum>();
  let [burnt, drowned] = [0, 0];
  eachPixel(pixels, outline, (light, { at, x, y }) => {
    all.add(light);
    const block = Math.floor(y / BLOCK) * pixels.width + Math.floor(x / BLOCK);
    if (!blocks.has(block)) blocks.set(block, new Sum());
    blocks.get(block)!.add(light);
    const [r, g, b] = [pixels.data[at]!, pixels.data[at + 1]!, pixels.data[at + 2]!];
    if (Math.max(r, g, b) >= TOP) burnt++;
    if (Math.max(r, g, b) <= BOTTOM) drowned++;
  });
  if (all.n < LEAST_PIXELS)
    throw new RequirementError(`an outline needs at least ${LEAST_PIXELS} pixels inside; found ${all.n}`);
  const whole = [...blocks.values()].filter((sum) => sum.n >= WHOLE_ENOUGH);
  return {
    ...{ pixels: all.n, mean: all.mean(), blocks: whole.map((sum) => sum.mean()) },
    ...{ burnt: burnt / all.n, drowned: drowned / all.n },
  };
}

class Sum {
  n = 0;
  #light: [number, number, number] = [0, 0, 0];
  add(light: LinearRgb): void {
    this.n++;
    for (let i = 0; i < 3; i++) this.#light[i]! += light[i]!;
  }
  mean(): LinearRgb {
    return this.#light.map((sum) => sum / this.n) as unknown as LinearRgb;
  }
}
