import type { Factor, Level } from './types.ts';

/** A unit that is a word and counted: `coats`, not `µm`, `wt%` or `glass`. */
const COUNTED = /^[a-z][a-z ]*[a-z]s$/i;
const UNCOUNTED = /(ss|us|is|Celsius)$/i;

/**
 * A unit as it goes with a number: `1 coat`, `2 coats`, `10 µm`, `1 dip`.
 *
 * @example
 * unitFor(1, 'coats') // 'coat'
 * unitFor(2, 'coats') // 'coats'
 * unitFor(1, 'passes') // 'pass'
 * unitFor(1, 'µm') // 'µm'
 */
export function unitFor(amount: number, unit: string): string {
  if (amount !== 1 || !COUNTED.test(unit) || UNCOUNTED.test(unit)) return unit;
  return /(ss|sh|ch|x|z)es$/i.test(unit) ? unit.slice(0, -2) : unit.slice(0, -1);
}

/**
 * What an effect is per: `per coat`, `per 2 coats`, `per 10 µm`; without a unit, `per 10`.
 *
 * @example
 * perStep(1, 'coats') // 'per coat'
 * perStep(2, 'coats') // 'per 2 coats'
 * perStep(1, 'µm') // 'per µm'
 * perStep(1, '%') // 'per 1 %'
 * perStep(10, '') // 'per 10'
 */
export function perStep(step: number, unit: string): string {
  const word = unitFor(step, unit);
  const bare = step === 1 && /^[a-zµ]/i.test(word);
  return ['per', ...(bare ? [] : [String(step)]), ...(word === '' ? [] : [word])].join(' ');
}

/**
 * A setting as it is said on the table: `3 coats`, `thickness 40 µm`, `air smoky`. A unit that the name ends with is
 * not said twice.
 *
 * @example
 * levelInWords({ name: 'coats', kind: 'number', unit: 'coats', step: 1 }, 1) // '1 coat'
 * levelInWords({ name: 'thickness', kind: 'number', unit: 'µm', step: 10 }, 40) // 'thickness 40 µm'
 * levelInWords({ name: 'PbO (wt%)', kind: 'number', unit: 'wt%', step: 10 }, 49) // 'PbO (wt%) 49'
 * levelInWords({ name: 'air', kind: 'category', base: null }, 'smoky') // 'air smoky'
 */
export function levelInWords(factor: Factor, level: Level): string {
  if (factor.kind === 'category') return `${factor.name} ${level}`;
  const unit = unitFor(Number(level), factor.unit);
  if (factor.name === factor.unit) return `${level} ${unit}`;
  const said = unit === '' || factor.name.endsWith(`(${factor.unit})`);
  return said ? `${factor.name} ${level}` : `${factor.name} ${level} ${unit}`;
}
