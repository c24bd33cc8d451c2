import { helmertBasis } from '../composition/ilr.ts';
import { clr, clrInverse, logsOf } from '../composition/log-ratio.ts';
import { RequirementError } from '../requirement.ts';
import { columnDeviations, columnMeans } from '../statistics/moments.ts';
import type { ReferenceModel, Scale } from './types.ts';

/** What a scale needs to know of the references: their mean, and for `standardised` their deviations. */
export interface FittedScale {
  readonly scale: Scale;
  readonly mean: readonly number[];
  readonly sd: readonly number[] | null;
}

function unscaled(parts: readonly number[], scale: Scale): number[] {
  if (scale === 'log-ratio') return clr(parts);
  return scale === 'log10' ? logsOf(parts, 'log10').map((v) => v / Math.LN10) : [...parts];
}

/**
 * Fits a working scale to the closed compositions (wt%) of the references. `log-ratio`: centred log-ratios
 * (Aitchison 1986), the default, free of the constant sum. `log10`: logarithms of closed wt%. `standardised`: closed
 * wt% less its mean, over its standard deviation. Throws when an oxide does not vary and so cannot be standardised.
 *
 * @example
 * fitScale([[20, 80], [40, 60]], 'standardised').mean // [30, 70]
 * fitScale([[20, 80], [20, 80]], 'standardised') // throws standardising needs every oxide to vary
 */
export function fitScale(compositions: readonly (readonly number[])[], scale: Scale): FittedScale {
  const rows = compositions.map((parts) => unscaled(parts, scale));
  const mean = columnMeans(rows);
  if (scale !== 'standardised') return { scale, mean, sd: null };
  const sd = columnDeviations(rows);
  const flat = sd.findIndex((v) => !(v > 0));
  if (flat >= 0)
    throw new RequirementError(
      `standardising needs every oxide to vary; part ${flat + 1} is the same in all`,
    );
  return { scale, mean, sd };
}

/**
 * Mean of the references in a fitted working scale: where scores are zero.
 *
 * @example
 * centreOf({ mean: [20, 80], sd: [5, 5] }) // [0, 0]
 * centreOf({ mean: [1, 2], sd: null }) // [1, 2]
 */
export function centreOf({ mean, sd }: Pick<FittedScale, 'mean' | 'sd'>): readonly number[] {
  return sd ? mean.map(() => 0) : mean;
}

/**
 * Coordinates in a fitted working scale, one per part.
 *
 * @example
 * scaled([10, 90], { scale: 'log10', mean: [1, 1.9], sd: null }) // [1, 1.954243]
 * scaled([10, 90], { scale: 'standardised', mean: [20, 80], sd: [5, 5] }) // [-2, 2]
 */
export function scaled(parts: readonly number[], { scale, mean, sd }: FittedScale): number[] {
  const raw = unscaled(parts, scale);
  return sd ? raw.map((v, j) => (v - mean[j]!) / sd[j]!) : raw;
}

/**
 * Back from coordinates to wt%: the closed composition for log-ratios; for `log10` geometric means and for
 * `standardised` arithmetic means, which sum to 100 only nearly (`log10`) or exactly (`standardised`).
 *
 * @example
 * unscale([1, 1.954243], { scale: 'log10', mean: [1, 1.9], sd: null }) // [10, 90]
 * unscale([-2, 2], { scale: 'standardised', mean: [20, 80], sd: [5, 5] }) // [10, 90]
 */
export function unscale(coordinates: readonly number[], { scale, mean, sd }: FittedScale): number[] {
  if (scale === 'log-ratio') return clrInverse(coordinates);
  if (scale === 'log10') return coordinates.map((v) => 10 ** v);
  return coordinates.map((v, j) => v * sd![j]! + mean[j]!);
}

/**
 * The directions closed parts can move in: D − 1 orthonormal rows of D numbers. Parts that sum to 100 leave one
 * direction empty: (1 … 1) in log-ratios, the deviations in `standardised`, and, to first order, the geometric means
 * in `log10`; a distance taken along it would be rounding divided by rounding. Log-ratios get the Helmert
 * basis; any other gives the same D².
 *
 * @example
 * freeAxes({ scale: 'log-ratio', mean: [0, 0], sd: null }) // [[0.7071068, -0.7071068]]
 * freeAxes({ scale: 'standardised', mean: [50, 50], sd: [3, 4] }) // [[0.8, -0.6]]
 */
export function freeAxes({ scale, mean, sd }: FittedScale): number[][] {
  if (scale === 'log-ratio') {
    const basis = helmertBasis(mean.length);
    return basis[0]!.map((_, k) => basis.map((row) => row[k]!));
  }
  return complement(scale === 'log10' ? mean.map((v) => 10 ** v) : sd!);
}

/** Orthonormal rows at right angles to a vector of positive numbers: a Householder reflection less its last row. */
function complement(normal: readonly number[]): number[][] {
  const last = normal.length - 1;
  const length = Math.hypot(...normal);
  const v = normal.map((x, j) => x / length + (j === last ? 1 : 0));
  const half = v.reduce((sum, x) => sum + x * x, 0) / 2;
  return v.slice(0, last).map((x, i) => v.map((y, j) => (i === j ? 1 : 0) - (x * y) / half));
}

/**
 * Coordinates of closed parts in a model's working scale: what figures of a model's members are drawn from.
 *
 * @example
 * coordinatesOf({ settings: { scale: 'log-ratio' }, mean: [0, 0], sd: null }, [10, 90]) // [-1.098612, 1.098612]
 */
export function coordinatesOf(
  model: Pick<ReferenceModel, 'mean' | 'sd'> & {
    readonly settings: Pick<ReferenceModel['settings'], 'scale'>;
  },
  parts: readonly number[],
): number[] {
  return scaled(parts, scaleOf(model));
}

/**
 * The fitted scale of a model.
 *
 * @example
 * scaleOf({ settings: { scale: 'log10' }, mean: [1, 2], sd: null }).scale // 'log10'
 */
export function scaleOf(
  model: Pick<ReferenceModel, 'mean' | 'sd'> & {
    readonly settings: Pick<ReferenceModel['settings'], 'scale'>;
  },
): FittedScale {
  return { scale: model.settings.scale, mean: model.mean, sd: model.sd };
}
