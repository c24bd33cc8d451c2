import { lab, rgb } from 'd3';

/** Ways of seeing a colour: with three kinds of cone, or with one kind missing. */
export type Vision = 'all cones' | 'protan' | 'deutan' | 'tritan';
export const VISIONS: readonly Vision[] = ['all cones', 'protan', 'deutan', 'tritan'];

type Triple = readonly [number, number, number];

/** Machado, Oliveira & Fernandes 2009, severity 1.0, on linear sRGB; doi 10.1109/TVCG.2009.113. */
const MISSING_CONE: Readonly<Record<Exclude<Vision, 'all cones'>, readonly [Triple, Triple, Triple]>> = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

const toLinear = (byte: number): number => {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};
const fromLinear = (light: number): number => {
  const c = Math.min(1, Math.max(0, light));
  return 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
};

const linear = (colour: string): Triple => {
  const { r, g, b } = rgb(colour);
  return [toLinear(r), toLinear(g), toLinear(b)];
};

/** The colour as it looks to someone with that vision, as `rgb(…)` with unrounded channels. */
export function seen(colour: string, vision: Vision): Triple {
  const light = linear(colour);
  const rows = vision === 'all cones' ? null : MISSING_CONE[vision];
  const dot = (row: Triple) => row[0] * light[0] + row[1] * light[1] + row[2] * light[2];
  const out = rows === null ? light : ([dot(rows[0]), dot(rows[1]), dot(rows[2])] as const);
  return [fromLinear(out[0]), fromLinear(out[1]), fromLinear(out[2])];
}

/** CIELAB (D50, as d3-color gives it) of a colour as seen. */
export function labSeen(colour: string, vision: Vision): Triple {
  const [r, g, b] = seen(colour, vision);
  const { l, a, b: yellow } = lab(rgb(r, g, b));
  return [l, a, yellow];
}

/** WCAG 2.2 relative luminance contrast, 1–21. */
export function contrast(one: string, other: string): number {
  const luminance = ([r, g, b]: Triple) => 0.2126 * r + 0.7152 * g + 0.0722 * b;
  const [dark, bright] = [luminance(linear(one)), luminance(linear(other))].sort((a, b) => a - b);
  return (bright! + 0.05) / (dark! + 0.05);
}
