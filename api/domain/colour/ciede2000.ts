import type { Lab } from './types.ts';

const RADIAN = Math.PI / 180;
const cosine = (degrees: number) => Math.cos(degrees * RADIAN);

/**
 * CIEDE2000 colour difference of two CIELAB colours, kL = kC = kH = 1; about 1 is just seen side by side. Sharma, Wu &
 * Dalal 2005, Color Research and Application 30:21–30, DOI 10.1002/col.20070.
 *
 * @example
 * ciede2000([50, 2.5, 0], [73, 25, -18]) // 27.1492
 */
export function ciede2000(one: Lab, two: Lab): number {
  const meanAb = (Math.hypot(one[1], one[2]) + Math.hypot(two[1], two[2])) / 2;
  const stretch = 1 + 0.5 * (1 - Math.sqrt(meanAb ** 7 / (meanAb ** 7 + 25 ** 7)));
  const p = polar(one, stretch);
  const q = polar(two, stretch);
  const lightness = (p.l + q.l) / 2;
  const chroma = (p.c + q.c) / 2;
  const hue = meanHue(p, q);
  const weightL = 1 + (0.015 * (lightness - 50) ** 2) / Math.sqrt(20 + (lightness - 50) ** 2);
  const weightC = 1 + 0.045 * chroma;
  const weightH = 1 + 0.015 * chroma * hueTerm(hue);
  const dL = (q.l - p.l) / weightL;
  const dC = (q.c - p.c) / weightC;
  const dH = (2 * Math.sqrt(p.c * q.c) * Math.sin((hueStep(p, q) / 2) * RADIAN)) / weightH;
  return Math.sqrt(dL ** 2 + dC ** 2 + dH ** 2 + rotation(hue, chroma) * dC * dH);
}

interface Polar {
  readonly l: number;
  readonly c: number;
  readonly h: number;
}
function polar([l, a, b]: Lab, stretch: number): Polar {
  const c = Math.hypot(a * stretch, b);
  const h = c === 0 ? 0 : Math.atan2(b, a * stretch) / RADIAN;
  return { l, c, h: h < 0 ? h + 360 : h };
}
function hueStep(p: Polar, q: Polar): number {
  const step = q.h - p.h;
  if (p.c * q.c === 0) return 0;
  if (step > 180) return step - 360;
  return step < -180 ? step + 360 : step;
}
function meanHue(p: Polar, q: Polar): number {
  const sum = p.h + q.h;
  if (p.c * q.c === 0) return sum;
  if (Math.abs(p.h - q.h) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}
const hueTerm = (h: number): number =>
  1 - 0.17 * cosine(h - 30) + 0.24 * cosine(2 * h) + 0.32 * cosine(3 * h + 6) - 0.2 * cosine(4 * h - 63);
function rotation(hue: number, chroma: number): number {
  const angle = 30 * Math.exp(-(((hue - 275) / 25) ** 2));
  const weight = 2 * Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));
  return -Math.sin(2 * angle * RADIAN) * weight;
}
