import { RequirementError } from '../requirement.ts';
import { colourCautions, inPercent, METHOD, requireGrey } from './judge.ts';
import { labOf } from './lab.ts';
import { eachPixel, readPatch } from './patch.ts';
import { hexOf } from './srgb.ts';
import type { Grey, Lab, LinearRgb, MeasuredColour, Outline, Patch, Pixels } from './types.ts';

/** Beyond half, the mean is one of the picture's end, not of the zone. */
const MOST_BURNT = 0.5;

/**
 * Colour of a zone in a picture, measured against a grey patch in the same picture: mean of the pixels in linear light,
 * each channel scaled so that the grey reflects what is said of it, as L*a*b* (D65), with the standard error that the
 * unevenness of both leaves and the spread between pixels. Throws where the grey is missing, burnt out or too dark,
 * where most of the zone is burnt out, and as `readPatch`.
 *
 * @example
 * const bytes = Array.from({ length: 400 }, (_, i) => (i % 20 < 10 ? [118, 118, 118, 255] : [64, 48, 40, 255])).flat()
 * const picture = { width: 20, height: 20, data: bytes }
 * const half = (from) => [[from, 0], [from + 0.5, 0], [from + 0.5, 1], [from, 1]]
 * measureColour(picture, half(0.5), { outline: half(0), reflectance: 0.18 }).hex // '#403028'
 * measureColour(picture, half(0.5), null) // throws a grey patch in the same picture
 */
export function measureColour(pixels: Pixels, outline: Outline, grey: Grey | null): MeasuredColour {
  if (grey === null)
    throw new RequirementError(
      'a measured colour needs a grey patch in the same picture; none is outlined in this one',
    );
  const reference = requireGrey(readPatch(pixels, grey.outline), grey);
  const patch = readPatch(pixels, outline);
  if (patch.burnt > MOST_BURNT)
    throw new RequirementError(
      `a measured colour needs a zone that is not burnt out in the picture; ${inPercent(patch.burnt)} of its pixels are`,
    );
  const scale = scaleBy(reference.mean, grey.reflectance);
  const light = scaled(patch.mean, scale);
  return {
    lab: labOf(light),
    error: errorOf(patch, reference, grey.reflectance),
    spread: spreadInside(pixels, outline, scale),
    hex: hexOf(light),
    shown: light.every((channel) => channel <= 1),
    ...{ pixels: patch.pixels, burnt: patch.burnt, drowned: patch.drowned, grey, method: METHOD },
    cautions: colourCautions({ patch, reference, light }),
  };
}

const scaleBy = (grey: LinearRgb, reflectance: number) =>
  grey.map((channel) => reflectance / channel) as unknown as LinearRgb;
const scaled = (light: LinearRgb, by: LinearRgb): LinearRgb => [
  light[0] * by[0],
  light[1] * by[1],
  light[2] * by[2],
];

function spreadInside(pixels: Pixels, outline: Outline, scale: LinearRgb): Lab {
  const spread = new Spread();
  eachPixel(pixels, outline, (light) => spread.add(labOf(scaled(light, scale))));
  return spread.deviation();
}

/** Squares of either patch vary; the error of a mean of n of them is their deviation by √n, both together. */
function errorOf(patch: Patch, reference: Patch, reflectance: number): Lab | null {
  if (patch.blocks.length < 2 || reference.blocks.length < 2) return null;
  const scale = scaleBy(reference.mean, reflectance);
  const ofZone = patch.blocks.map((block) => labOf(scaled(block, scale)));
  const ofGrey = reference.blocks.map((block) => labOf(scaled(patch.mean, scaleBy(block, reflectance))));
  const [zone, grey] = [ofZone, ofGrey].map((labs) =>
    deviation(labs).map((sd) => sd / Math.sqrt(labs.length)),
  ) as [number[], number[]];
  return zone.map((error, i) => Math.hypot(error, grey[i]!)) as unknown as Lab;
}

function deviation(labs: readonly Lab[]): Lab {
  const spread = new Spread();
  for (const lab of labs) spread.add(lab);
  return spread.deviation();
}

/** Standard deviation as it goes: a zone may hold millions of pixels. */
class Spread {
  #n = 0;
  #mean = [0, 0, 0];
  #square = [0, 0, 0];
  add(lab: Lab): void {
    this.#n++;
    for (let i = 0; i < 3; i++) {
      const off = lab[i]! - this.#mean[i]!;
      this.#mean[i]! += off / this.#n;
      this.#square[i]! += off * (lab[i]! - this.#mean[i]!);
    }
  }
  deviation(): Lab {
    return this.#square.map((sum) => Math.sqrt(sum / Math.max(1, this.#n - 1))) as unknown as Lab;
  }
}
