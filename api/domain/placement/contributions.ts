import { type FittedScale, unscale } from '../reference/scale.ts';
import { type FittedSpread, sharesOfD2 } from '../reference/spread.ts';
import type { Contribution } from './types.ts';

type Row = readonly number[];

/** A sample and the centre it is compared with. */
export interface Gap {
  readonly oxides: readonly string[];
  readonly scale: FittedScale;
  /** The sample: closed wt%, and coordinates in the working scale. */
  readonly parts: Row;
  readonly coordinates: Row;
  /** The group: mean in the working scale, deviations, spread. */
  readonly mean: Row;
  readonly deviation: Row | null;
  readonly spread: FittedSpread | null;
}

/**
 * How far each oxide takes a sample from a group's centre: its share of the squared distance (all 0 for a sample at
 * the centre), the factor by which it is off (in log-ratios exp of the difference, so relative to the geometric mean
 * of all oxides; in log10 and standardised, wt% over wt%), its part of D², and the difference in the group's
 * standard deviations.
 *
 * @example
 * const gap = { oxides: ['PbO', 'SiO2'], scale: { scale: 'log10', mean: [1, 1], sd: null }, parts: [40, 60], coordinates: [1.60206, 1.778151], mean: [1.90309, 1.30103], deviation: [0.1, 0.2], spread: null };
 * contributionsOf(gap)[0] // { oxide: 'PbO', measured: 40, centre: 80, factor: 0.5, share: 0.2847297, z: -3.0103 }
 */
export function contributionsOf(gap: Gap): Contribution[] {
  const { oxides, coordinates, mean, deviation, spread, parts } = gap;
  const centre = unscale(mean, gap.scale);
  const differences = coordinates.map((v, j) => v - mean[j]!);
  const total = differences.reduce((sum, d) => sum + d * d, 0);
  const d2 = spread && sharesOfD2(coordinates, spread);
  return oxides.map((oxide, j) => ({
    oxide,
    measured: parts[j]!,
    centre: centre[j]!,
    factor: gap.scale.scale === 'log-ratio' ? Math.exp(differences[j]!) : parts[j]! / centre[j]!,
    share: total > 0 ? differences[j]! ** 2 / total : 0,
    d2: d2 ? d2[j]! : null,
    z: deviation && deviation[j]! > 0 ? differences[j]! / deviation[j]! : null,
  }));
}
