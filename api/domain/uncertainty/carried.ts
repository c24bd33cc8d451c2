import type { Amount } from '../composition/types.ts';
import { rangeBelow } from './draw-amount.ts';
import type { UncertaintyRequest } from './types.ts';

const share = (x: number) => String(Number(x.toPrecision(3)));
const listed = (oxides: readonly string[]) => oxides.join(', ');

/**
 * What the draws carry, in words, so that nobody takes an assumed error for a measured one. `fraction`: the share of the
 * detection limit that stands in for a sample's value below it.
 * @example
 * of = (sigmaBasis) => ({ value: 1, limit: null, sigma: sigmaBasis && 0.1, sigmaBasis, resolution: null })
 * sample = { label: 'T1', spots: 1, amounts: { PbO: of('stated'), SiO2: of(null) } }
 * carriedWords({ sample, slip: null, settings: { assumedRelative: 0.05 } }, 0.65) // ['T1: ± as stated for PbO.', 'T1: 5 % assumed for SiO2 (common practice, no published source).', 'The references are taken as measured; their own scatter holds their errors.']
 */
export function carriedWords({ sample, slip, settings }: UncertaintyRequest, fraction: number): string[] {
  const { least, most } = rangeBelow(fraction);
  const sides = [
    { ...sample, below: `${share(least)} to ${share(most)} of the detection limit` },
    ...(slip ? [{ ...slip.analysed, below: 'anything from 0 to the detection limit' }] : []),
  ];
  const { assumedRelative } = settings;
  return [
    ...sides.flatMap(({ label, spots, amounts, below }) => {
      const which = (test: (a: Amount) => boolean) =>
        Object.keys(amounts).filter((oxide) => test(amounts[oxide]!));
      const line = (oxides: readonly string[], words: string) =>
        oxides.length > 0 ? [`${label}: ${words.replace('%s', listed(oxides))}.`] : [];
      const seen = (a: Amount) => a.value !== null && a.value !== 0;
      const without = which((a) => seen(a) && a.sigma === null);
      return [
        ...line(
          which((a) => seen(a) && a.sigmaBasis === 'stated' && !a.sigmaDf),
          '± as stated for %s',
        ),
        ...line(
          which((a) => seen(a) && a.sigmaBasis === 'stated' && !!a.sigmaDf),
          'scatter between the analyses averaged for %s',
        ),
        ...line(
          which((a) => seen(a) && a.sigmaBasis === 'spots'),
          `scatter of ${spots} spots for %s`,
        ),
        ...line(
          which((a) => seen(a) && a.sigmaBasis === 'assumed'),
          'technique’s relative error assumed for %s',
        ),
        ...line(
          without,
          assumedRelative === null
            ? 'no uncertainty known, taken as exact: %s'
            : `${100 * assumedRelative} % assumed for %s (common practice, no published source)`,
        ),
        ...line(
          which((a) => seen(a) && !!a.resolution),
          'rounding of the last digit for %s',
        ),
        ...line(
          which((a) => !seen(a)),
          `${below} for %s`,
        ),
      ];
    }),
    ...(slip ? [fractionWords(slip.fraction)] : []),
    'The references are taken as measured; their own scatter holds their errors.',
  ];
}

function fractionWords({ f, sigma, from }: { f: number; sigma: number; from: string }): string {
  if (sigma === 0) return `Slip drawn off at f = ${f.toFixed(3)}, taken as exact (${from}).`;
  return `Slip drawn off at f = ${f.toFixed(3)} ± ${sigma.toFixed(3)} (${from}), its error taken as independent of the reading’s.`;
}
