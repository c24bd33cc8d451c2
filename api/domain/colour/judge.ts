import { RequirementError } from '../requirement.ts';
import type { Grey, LinearRgb, Patch } from './types.ts';

export const METHOD =
  'Mean of the pixels inside the outline in linear light (sRGB, IEC 61966-2-1), each channel scaled so that the grey patch reflects what is said of it; CIE 1976 L*a*b* against D65. The error is from the unevenness of zone and grey, read in squares of 16 pixels. Not in it: shine, light that falls differently on zone and grey, what the camera made of the colours, and how true the grey itself is.';

const MOST_BURNT = 0.01;
/** Linear light of a grey below which noise and rounding weigh: about three stops under what it should be. */
const LEAST_LIGHT = 0.02;

export const inPercent = (share: number): string => {
  const percent = 100 * share;
  return `${percent >= 10 ? Math.round(percent) : Number(percent.toPrecision(1))} %`;
};

/**
 * Gives the patch back if it can serve as grey. Throws where it is burnt out, too dark, or its reflectance is none.
 *
 * @example
 * const patch = { pixels: 400, mean: [0.2, 0.2, 0.2], blocks: [], burnt: 0, drowned: 0 }
 * const outline = [[0, 0], [1, 0], [1, 1]]
 * requireGrey(patch, { outline, reflectance: 0.18 }).pixels // 400
 * requireGrey({ ...patch, burnt: 0.2 }, { outline, reflectance: 0.18 }) // throws 20 % of its pixels are
 * requireGrey({ ...patch, mean: [0.2, 0.2, 0.001] }, { outline, reflectance: 0.18 }) // throws too dark
 */
export function requireGrey(patch: Patch, { reflectance }: Grey): Patch {
  if (!(reflectance > 0 && reflectance <= 1))
    throw new RequirementError(
      `a grey needs to reflect more than 0 and at most 100 %; found ${100 * reflectance} %`,
    );
  if (patch.burnt > MOST_BURNT)
    throw new RequirementError(
      `a grey patch needs to be free of burnt-out pixels; ${inPercent(patch.burnt)} of its pixels are`,
    );
  const least = Math.min(...patch.mean);
  if (least < LEAST_LIGHT)
    throw new RequirementError(
      `a grey patch needs at least ${inPercent(LEAST_LIGHT)} of full light in each channel, or it is too dark to measure against; found ${inPercent(least)}`,
    );
  return patch;
}

interface Judged {
  readonly patch: Patch;
  readonly reference: Patch;
  readonly light: LinearRgb;
}

/**
 * What a reader of a measured colour should know of it.
 *
 * @example
 * const patch = { pixels: 400, mean: [0.2, 0.2, 0.2], blocks: [], burnt: 0, drowned: 0 }
 * colourCautions({ patch, reference: patch, light: [0.2, 0.2, 0.2] }) // []
 * colourCautions({ patch: { ...patch, burnt: 0.12 }, reference: patch, light: [0.2, 0.2, 0.2] }).length // 1
 */
export function colourCautions({ patch, reference, light }: Judged): string[] {
  const cast = Math.max(...reference.mean) / Math.min(...reference.mean);
  const uneven = unevenness(reference);
  const say = (told: boolean, words: string) => (told ? [words] : []);
  return [
    ...say(
      patch.burnt > MOST_BURNT,
      `${inPercent(patch.burnt)} of the zone is burnt out, by shine most likely: its true mean is lighter than this`,
    ),
    ...say(
      patch.drowned > MOST_BURNT,
      `${inPercent(patch.drowned)} of the zone is as dark as the picture can hold: its true mean may be darker`,
    ),
    ...say(
      cast > 1.6,
      `the light was strongly coloured: the grey’s channels differ by a factor of ${cast.toFixed(1)}`,
    ),
    ...say(uneven > 0.1, `the light on the grey varies by ${inPercent(uneven)}`),
    ...say(
      light.some((channel) => channel > 1),
      'brighter than a screen can show: the swatch is held to its brightest',
    ),
  ];
}

/** Relative standard deviation of the brightness of its squares. */
function unevenness({ blocks }: Patch): number {
  if (blocks.length < 2) return 0;
  const bright = blocks.map(([r, g, b]) => 0.2126 * r + 0.7152 * g + 0.0722 * b);
  const mean = bright.reduce((sum, one) => sum + one, 0) / bright.length;
  const square = bright.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (bright.length - 1);
  return Math.sqrt(square) / mean;
}
