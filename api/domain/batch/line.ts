import type { BatchLine } from './types.ts';

/**
 * Dry grams of a line: the amount without its water.
 * @example
 * dryMass({ material: materialFromFormula({ id: 'c', name: 'clay' }, 'SiO2'), amount: 50, water: 20 }) // 40
 */
export function dryMass({ amount, water = 0 }: BatchLine): number {
  return amount * (1 - water / 100);
}
