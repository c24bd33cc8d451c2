import type { Amount, Amounts } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { DRAW_OFF_DEFAULTS, type DrawOffOptions } from './mixing.ts';

/** How far the slip can be drawn off, and which oxide says so. */
export interface DrawOffLimit {
  /** Largest f that leaves no oxide negative beyond its uncertainty; below 1. */
  readonly f: number;
  /** The oxide that sets it; null when no oxide does. */
  readonly oxide: string | null;
  /** The largest f that leaves no oxide negative at all. */
  readonly strict: number;
  readonly strictOxide: string | null;
  readonly byOxide: readonly { readonly oxide: string; readonly f: number; readonly strict: number }[];
}

/** Where no oxide sets a bound: the whole of the reading but one hundredth. */
const MOST = 0.99;

/**
 * The largest share of slip that can be drawn off a paint (by mass, 0–0.99): the smallest f at which an oxide,
 * measured − f·slip, falls below −k·√(σ² + f²·σ_slip²), k = `coverage` (2 by default); the exact root, as in
 * Fieller's interval for a ratio. Below detection the paint may hold up to its limit. Throws when no oxide is shared.
 * @example
 * of = (value, sigma) => ({ value, limit: null, sigma, sigmaBasis: 'stated', resolution: null })
 * largestDrawOff({ PbO: of(45, 1), TiO2: of(0.2, 0) }, { PbO: of(0, 0), TiO2: of(0.8, 0) }) // { f: 0.25, oxide: 'TiO2', strict: 0.25 }
 * largestDrawOff({ TiO2: of(0.2, 0.02) }, { TiO2: of(0.8, 0) }).f // 0.3
 */
export function largestDrawOff(paint: Amounts, slip: Amounts, options: DrawOffOptions = {}): DrawOffLimit {
  const { fraction, coverage, leaveOut } = { ...DRAW_OFF_DEFAULTS, ...options };
  const shared = Object.keys(paint).filter((oxide) => slip[oxide] && !leaveOut.includes(oxide));
  if (shared.length === 0)
    throw new RequirementError(
      'drawing slip off needs an oxide measured in both paint and slip; there is none',
    );
  const byOxide = shared
    .map((oxide) => ({
      oxide,
      f: bound(paint[oxide]!, slip[oxide]!, { fraction, k: coverage }),
      strict: bound(paint[oxide]!, slip[oxide]!, { fraction, k: 0 }),
    }))
    .sort((a, b) => a.f - b.f);
  const least = byOxide[0]!;
  const strict = byOxide.reduce((a, b) => (b.strict < a.strict ? b : a));
  return {
    f: Math.min(least.f, MOST),
    oxide: least.f < MOST ? least.oxide : null,
    strict: Math.min(strict.strict, MOST),
    strictOxide: strict.strict < MOST ? strict.oxide : null,
    byOxide,
  };
}

function bound(paint: Amount, slip: Amount, { fraction, k }: { fraction: number; k: number }): number {
  const measured = paint.value ?? paint.limit ?? 0;
  const under = slip.value ?? fraction * (slip.limit ?? 0);
  const known = (a: Amount) => (a.value === null ? (a.limit ?? 0) / Math.sqrt(12) : (a.sigma ?? 0));
  const [a, b] = [known(paint), known(slip)].map((sigma) => (k * sigma) ** 2) as [number, number];
  const square = under ** 2 - b;
  if (under <= 0 || square <= 0) return Number.POSITIVE_INFINITY;
  const half = measured * under;
  return (half + Math.sqrt(Math.max(0, half ** 2 - square * (measured ** 2 - a)))) / square;
}
