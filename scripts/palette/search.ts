import { hcl, randomLcg, rgb } from 'd3';
import { ciede2000 } from '../../api/domain/colour/ciede2000.ts';
import { contrast, labSeen, VISIONS, type Vision } from './colour-difference.ts';

type Lch = readonly [number, number, number];

export interface PaletteWish {
  readonly count: number;
  /** Colours the palette must also keep apart from (ink). */
  readonly apartFrom: readonly string[];
  readonly backgrounds: readonly string[];
  readonly leastContrast: number;
  /** Chroma allowed, of CIELAB. */
  readonly chroma: readonly [number, number];
  /** Lightness allowed, L* of CIELAB. */
  readonly lightness: readonly [number, number];
  /** Hues to stay within 22° of, one per colour; empty leaves hue free. */
  readonly hues: readonly number[];
  readonly seed: number;
  readonly steps: number;
}

/** Smallest CIEDE2000 between any two of the colours, as seen. */
export function leastDistance(colours: readonly string[], vision: Vision): number {
  const labs = colours.map((colour) => labSeen(colour, vision));
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < labs.length; i++)
    for (let j = 0; j < i; j++) least = Math.min(least, ciede2000(labs[i]!, labs[j]!));
  return least;
}

/** Full colour vision has more room: there the two closest colours are asked to lie twice as far apart. */
const balanced = (colours: readonly string[]): number =>
  Math.min(...VISIONS.map((vision) => leastDistance(colours, vision) / (vision === 'all cones' ? 2 : 1)));

const hex = ([l, c, h]: Lch): string => rgb(hcl(h, c, l)).formatHex();
const inGamut = ([l, c, h]: Lch): boolean => hcl(h, c, l).rgb().displayable();

function allowed(colour: Lch, wish: PaletteWish, index: number): boolean {
  const [l, c, h] = colour;
  const hue = wish.hues[index];
  if (
    l < wish.lightness[0] ||
    l > wish.lightness[1] ||
    c < wish.chroma[0] ||
    c > wish.chroma[1] ||
    !inGamut(colour)
  )
    return false;
  if (hue !== undefined && Math.abs(((h - hue + 540) % 360) - 180) > 22) return false;
  return wish.backgrounds.every((background) => contrast(hex(colour), background) >= wish.leastContrast);
}

function draw(wish: PaletteWish, index: number, random: () => number): Lch {
  for (;;) {
    const within = ([low, high]: readonly [number, number]) => low + random() * (high - low);
    const hue = wish.hues[index];
    const h = hue === undefined ? random() * 360 : hue + (random() - 0.5) * 44;
    const colour: Lch = [within(wish.lightness), within(wish.chroma), h];
    if (allowed(colour, wish, index)) return colour;
  }
}

function nudge(colour: Lch, reach: number, random: () => number): Lch {
  const by = (span: number) => (random() - 0.5) * span * reach;
  return [colour[0] + by(30), colour[1] + by(50), (colour[2] + by(120) + 360) % 360];
}

/** Simulated annealing for the palette whose two closest colours are furthest apart; the same seed, the same palette. */
export function searchPalette(wish: PaletteWish): { colours: string[]; least: number } {
  const random = randomLcg(wish.seed);
  let now = Array.from({ length: wish.count }, (_, i) => draw(wish, i, random));
  const score = (set: readonly Lch[]) => balanced([...set.map(hex), ...wish.apartFrom]);
  let value = score(now);
  let best = { set: now, value };
  for (let step = 0; step < wish.steps; step++) {
    const heat = 1 - step / wish.steps;
    const index = Math.floor(random() * wish.count);
    const moved = nudge(now[index]!, 0.05 + heat, random);
    if (!allowed(moved, wish, index)) continue;
    const next = now.with(index, moved);
    const nextValue = score(next);
    if (nextValue >= value || random() < Math.exp((nextValue - value) / (0.4 * heat + 1e-6))) {
      now = next;
      value = nextValue;
      if (value > best.value) best = { set: now, value };
    }
  }
  return { colours: best.set.map(hex), least: best.value };
}
