import type { Sample } from '../composition/types.ts';
import { type DrawOffOptions, drawOff } from './mixing.ts';
import type { Analysed } from './types.ts';

/**
 * A sample with slip drawn off its paint, ready to be placed; `spent` and `dropped` say which oxides gave out.
 * The same for a replica and for a reference sherd. Throws as `drawOff` does.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0.5, sigmaBasis: 'stated', resolution: null })
 * tile = { id: 't', label: 'T1', group: null, role: 'replica', measured: 'paint', spots: 1, rawTotal: 99, amounts: { PbO: of(45), SiO2: of(55) } }
 * drawOffSample(tile, { label: 'S', spots: 1, amounts: { PbO: of(0), SiO2: of(100) } }, { f: 0.25 }).sample.amounts.SiO2.value // 40
 */
export function drawOffSample(
  sample: Sample,
  slip: Analysed,
  { f, ...options }: DrawOffOptions & { readonly f: number },
): { sample: Sample; spent: readonly string[]; dropped: readonly string[] } {
  const { amounts, spent, dropped } = drawOff(sample.amounts, slip.amounts, f, options);
  return { sample: { ...sample, amounts }, spent, dropped };
}
