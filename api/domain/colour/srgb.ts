import type { LinearRgb } from './types.ts';

/**
 * A channel of sRGB, 0–255, in linear light, 0–1. IEC 61966-2-1:1999.
 *
 * @example
 * channelToLight(0) // 0
 * channelToLight(255) // 1
 * channelToLight(118) // 0.181164
 */
export function channelToLight(byte: number): number {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
}

/**
 * Linear light, 0–1, as a channel of sRGB, 0–255 unrounded; light beyond 0–1 is held to it. IEC 61966-2-1:1999.
 *
 * @example
 * lightToChannel(1) // 255
 * lightToChannel(0.181164) // 118
 * lightToChannel(1.7) // 255
 */
export function lightToChannel(light: number): number {
  const c = Math.min(1, Math.max(0, light));
  return 255 * (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
}

/**
 * Linear light as `#rrggbb`, held to what sRGB can show.
 *
 * @example
 * hexOf([1, 0, 0]) // '#ff0000'
 * hexOf([0.181164, 0.181164, 0.181164]) // '#767676'
 */
export function hexOf(rgb: LinearRgb): string {
  const two = (light: number) => Math.round(lightToChannel(light)).toString(16).padStart(2, '0');
  return `#${rgb.map(two).join('')}`;
}
