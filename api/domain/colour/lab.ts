import { RequirementError } from '../requirement.ts';
import type { Lab, LinearRgb } from './types.ts';

/** Linear sRGB to CIE XYZ (1931, 2°), IEC 61966-2-1:1999; the rows sum to its white, D65. */
const TO_XYZ = [
  [0.4124, 0.3576, 0.1805],
  [0.2126, 0.7152, 0.0722],
  [0.0193, 0.1192, 0.9505],
] as const;

/**
 * Linear light of sRGB, 0–1, as CIE 1976 L*a*b* against D65, the white of sRGB. CIE 15 (ISO/CIE 11664-4).
 *
 * @example
 * labOf([1, 1, 1]) // [100, 0, 0]
 * labOf([1, 0, 0]) // [53.2329, 80.1053, 67.2228]
 */
export function labOf(rgb: LinearRgb): Lab {
  const [x, y, z] = TO_XYZ.map((row) => {
    const white = row[0] + row[1] + row[2];
    return bent((row[0] * rgb[0] + row[1] * rgb[1] + row[2] * rgb[2]) / white);
  }) as [number, number, number];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const EDGE = 6 / 29;
const bent = (t: number): number => (t > EDGE ** 3 ? Math.cbrt(t) : t / (3 * EDGE ** 2) + 4 / 29);

/**
 * Lightness L* of a grey that reflects a share of the light. CIE 15 (ISO/CIE 11664-4). Throws outside 0–1.
 *
 * @example
 * lightnessOf(0.18) // 49.4961
 * lightnessOf(18) // throws a share of 0 to 1
 */
export function lightnessOf(reflectance: number): number {
  if (!(reflectance >= 0 && reflectance <= 1))
    throw new RequirementError(`a reflectance needs to be a share of 0 to 1; found ${reflectance}`);
  return 116 * bent(reflectance) - 16;
}

/**
 * Share of the light that a grey of lightness L* reflects; the inverse of `lightnessOf`. Throws outside 0–100.
 *
 * @example
 * reflectanceOf(49.4961) // 0.18
 * reflectanceOf(120) // throws an L* of 0 to 100
 */
export function reflectanceOf(lightness: number): number {
  if (!(lightness >= 0 && lightness <= 100))
    throw new RequirementError(`a grey needs an L* of 0 to 100; found ${lightness}`);
  const t = (lightness + 16) / 116;
  return t > EDGE ? t ** 3 : 3 * EDGE ** 2 * (t - 4 / 29);
}
