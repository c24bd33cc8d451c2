import { RequirementError } from '../requirement.ts';
import { consistencyOf, twoSided95 } from './consistency.ts';
import { bisect, profile } from './minimise.ts';
import type { Consistency } from './types.ts';
import { settleUptake, type UptakeTile, uptakeChiSquare, uptakeSpread } from './uptake-fit.ts';
import { UPTAKE_LAWS, type UptakeLaw } from './uptake-law.ts';

/** How f falls with thickness, learnt from tiles. */
export interface Uptake {
  readonly law: UptakeLaw;
  readonly reason: string;
  /** The law's one length, µm, with its 95 % interval. */
  readonly depth: number;
  readonly low: number;
  readonly high: number;
  /** Standard uncertainty of ln depth. */
  readonly logSigma: number;
  /** Tile-to-tile scatter of ln depth beyond the uncertainties; 0 where they explain all. */
  readonly scatter: number;
  /** Degrees of freedom of the interval: n − 1 where a scatter was found or tiles are few; null: σ as stated. */
  readonly df: number | null;
  readonly n: number;
  readonly thicknesses: readonly [number, number];
  /** Against the stated uncertainties alone, before any scatter is allowed. */
  readonly consistency: Consistency;
  readonly tiles: readonly (UptakeTile & { readonly expected: number; readonly z: number })[];
  readonly warnings: readonly string[];
}

/** Depths searched, as multiples of the thinnest and thickest paint. */
const SPAN = 300;
/** With fewer tiles a scatter easily hides: Student's t is used even where none shows (docs/coverage.md). */
const FEW = 6;

/**
 * Fits how the slip fraction falls with paint thickness: one length by weighted least squares on f, the thickness's
 * own uncertainty carried. Where tiles scatter by more than their uncertainties, a scatter of ln depth is added until
 * χ² equals n − 1 (Mandel & Paule 1970, doi 10.1021/ac60293a019), and the interval (profile, Student's t with n − 1)
 * follows it. Throws with fewer than three tiles, when the thicknesses cannot be told apart, and when the depth has
 * no bound.
 * @example
 * tile = (thickness, f) => ({ label: 't' + thickness, thickness, thicknessSigma: 1, f, sigma: 0.01 })
 * fitUptake([tile(10, 0.5), tile(20, 1 / 3), tile(40, 0.2)], 'dissolved layer').depth // 10
 * fitUptake([tile(10, 0.5), tile(10, 0.5), tile(10, 0.5)], 'dissolved layer') // throws cannot be told apart
 */
export function fitUptake(tiles: readonly UptakeTile[], law: UptakeLaw): Uptake {
  need(tiles);
  const thick = tiles.map((tile) => tile.thickness);
  const thicknesses = [Math.min(...thick), Math.max(...thick)] as const;
  const range = { from: Math.log(thicknesses[0] / SPAN), to: Math.log(thicknesses[1] * SPAN) };
  const df = tiles.length - 1;
  const start = profile((u) => uptakeChiSquare(tiles, law, { u, at: u, scatter: 0 }), {
    ...range,
    rise: () => 1,
  }).best;
  const settled = (scatter: number) => settleUptake(tiles, law, { scatter, start });
  const exact = settled(0).chiSquare;
  const scatter = exact <= df ? 0 : bisect((s) => settled(s).chiSquare <= df, 0, 5);
  const { u: at } = settled(scatter);
  const ownDf = scatter > 0 || tiles.length < FEW ? df : null;
  const q = twoSided95(ownDf);
  const cost = (u: number) => uptakeChiSquare(tiles, law, { u, at, scatter });
  const { best, low, high } = bounded(profile(cost, { ...range, rise: () => q ** 2 }));
  return {
    law,
    reason: UPTAKE_LAWS[law].reason,
    depth: Math.exp(best),
    low: Math.exp(low),
    high: Math.exp(high),
    logSigma: (high - low) / 2 / q,
    scatter,
    df: ownDf,
    n: tiles.length,
    thicknesses,
    consistency: consistencyOf(exact, df),
    tiles: tiles.map((tile) => described(tile, law, Math.exp(best))),
    warnings: warningsOf(scatter),
  };
}

function need(tiles: readonly UptakeTile[]): void {
  if (tiles.length < 3)
    throw new RequirementError(
      `uptake needs at least three tiles of known batch and thickness; there are ${tiles.length}`,
    );
  for (const { label, thickness, sigma } of tiles)
    if (!(thickness > 0 && sigma > 0))
      throw new RequirementError(
        `uptake needs a thickness and an uncertainty of f above 0; ${label} has ${thickness} µm and ±${sigma}`,
      );
  const thin = tiles.reduce((a, b) => (b.thickness < a.thickness ? b : a));
  const thick = tiles.reduce((a, b) => (b.thickness > a.thickness ? b : a));
  const apart = thick.thickness - thin.thickness;
  if (apart <= 2 * Math.hypot(thin.thicknessSigma, thick.thicknessSigma))
    throw new RequirementError(
      `how f falls with thickness needs tiles of different thickness; those from ${thin.thickness} to ${thick.thickness} µm cannot be told apart within their uncertainty`,
    );
}

function bounded({ best, low, high }: { best: number; low: number | null; high: number | null }) {
  if (low !== null && high !== null) return { best, low, high };
  throw new RequirementError(
    `uptake needs tiles that bound its depth on both sides; these allow any depth ${low === null ? 'down to nothing' : 'however great'}`,
  );
}

function described(tile: UptakeTile, law: UptakeLaw, depth: number) {
  const expected = UPTAKE_LAWS[law].fraction(tile.thickness, depth);
  return { ...tile, expected, z: (tile.f - expected) / uptakeSpread(tile, law, { depth, scatter: 0 }) };
}

function warningsOf(scatter: number): string[] {
  if (scatter === 0) return [];
  return [
    `The tiles scatter by a factor of ${Math.exp(scatter).toFixed(2)} in depth beyond their uncertainties; this is carried into every f taken from them.`,
  ];
}
