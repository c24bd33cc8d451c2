import type { Direction } from './types.ts';
import { dot } from './weighted.ts';

/** Above this a result leans on small differences (Belsley, Kuh & Welsch 1980; from memory, not read). */
const WORST_CONDITION = 30;

/**
 * Angle (degrees) and condition number between two end members, both in units of the uncertainties (whitened):
 * κ = √((1 + |cos|)/(1 − |cos|)), that of two columns scaled to length one. κ grows without bound as they line up,
 * and then no reading can say how much is the one and how much the other.
 * @example
 * directionBetween([1, 0], [0, 1]) // { angle: 90, condition: 1 }
 * directionBetween([1, 1], [1, 0.9]).condition // 38.0263
 */
export function directionBetween(a: readonly number[], b: readonly number[]): Direction {
  const cosine = Math.min(1, Math.abs(dot(a, b)) / Math.sqrt(dot(a, a) * dot(b, b)));
  // 1 − cos by way of the difference of unit vectors keeps its digits when they nearly line up.
  const [la, lb] = [Math.sqrt(dot(a, a)), Math.sqrt(dot(b, b)) * Math.sign(dot(a, b) || 1)];
  const gap = a.reduce((sum, x, i) => sum + (x / la - b[i]! / lb) ** 2, 0) / 2;
  return {
    angle: (2 * Math.asin(Math.min(1, Math.sqrt(gap / 2))) * 180) / Math.PI,
    condition: gap > 0 ? Math.sqrt((1 + cosine) / gap) : Number.POSITIVE_INFINITY,
  };
}

/**
 * The figures of a direction in words, and a warning where two end members nearly line up; null where they do not.
 * @example
 * directionWords({ angle: 90, condition: 1 }, 'batch and slip') // { figures: 'angle between batch and slip 90.0°, condition number 1.0', warning: null }
 */
export function directionWords(
  { angle, condition }: Direction,
  pair: string,
): { figures: string; warning: string | null } {
  const figures = `angle between ${pair} ${angle.toFixed(1)}°, condition number ${condition.toPrecision(2)}`;
  const warning =
    condition > WORST_CONDITION
      ? `${pair} lie nearly in the same direction (${figures}): f leans on small differences.`
      : null;
  return { figures, warning };
}
