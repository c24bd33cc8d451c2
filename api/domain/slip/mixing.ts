import type { Amount, Amounts } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { effectiveDf } from './consistency.ts';
import type { DrawnOff } from './types.ts';

/** Settings of drawing off. */
export interface DrawOffOptions {
  /** Oxides not measured in the slip: left out of the result, or taken as none in the slip. */
  readonly unmeasured?: 'drop' | 'none';
  /** Share of a detection limit that stands in for a value below it; as in the reference model. */
  readonly fraction?: number;
  /** Number of standard uncertainties below which an oxide counts as spent. */
  readonly coverage?: number;
  /** Oxides left out of the result, such as tracers, of which the paint is said to hold nothing. */
  readonly leaveOut?: readonly string[];
}
export const DRAW_OFF_DEFAULTS: Required<DrawOffOptions> = {
  unmeasured: 'drop',
  fraction: 0.65,
  coverage: 2,
  leaveOut: [],
};
const NONE: Amount = { value: 0, limit: null, sigma: null, sigmaBasis: null, resolution: null };

/**
 * A paint with slip mixed in by mass: (1 − f)·paint + f·slip, wt%. Both closed to 100 on the same basis.
 * An oxide measured on one side only is left out; below detection counts as 0.65 of the limit.
 * Throws unless 0 ≤ f ≤ 1.
 * @example
 * of = (value) => ({ value, limit: null, sigma: null, sigmaBasis: null, resolution: null })
 * mixIn({ PbO: of(60), SiO2: of(40) }, { PbO: of(0), SiO2: of(100) }, 0.25).PbO.value // 45
 */
export function mixIn(paint: Amounts, slip: Amounts, f: number): Amounts {
  if (!(f >= 0 && f <= 1)) throw new RequirementError(`a slip fraction needs to lie within 0–1; it is ${f}`);
  const { fraction } = DRAW_OFF_DEFAULTS;
  const known = (a: Amount): Amount => ({ ...a, value: a.value ?? fraction * (a.limit ?? 0) });
  const shared = Object.keys(paint).filter((oxide) => slip[oxide]);
  return Object.fromEntries(
    shared.map((oxide) => [oxide, combine(known(paint[oxide]!), slip[oxide]!, { u: 1 - f, v: f, fraction })]),
  );
}

/**
 * A paint with the slip drawn off by mass: (measured − f·slip) / (1 − f), wt%, with σ and rounding carried; where σ
 * was found from spots, its degrees of freedom follow Welch and Satterthwaite.
 * An oxide that comes out below `coverage`·σ (2σ by default) is spent: below detection at that limit.
 * Errors of paint and slip are taken as independent. Throws unless 0 ≤ f < 1, and where an oxide would be negative
 * beyond its uncertainty.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0.5, sigmaBasis: 'stated', resolution: null })
 * drawOff({ PbO: of(45), SiO2: of(55) }, { PbO: of(0), SiO2: of(100) }, 0.25).amounts.PbO.value // 60
 * drawOff({ TiO2: of(1) }, { TiO2: of(10) }, 0.1).spent // ['TiO2']
 * drawOff({ TiO2: of(1) }, { TiO2: of(10) }, 1) // throws below 1
 */
export function drawOff(paint: Amounts, slip: Amounts, f: number, options: DrawOffOptions = {}): DrawnOff {
  if (!(f >= 0 && f < 1))
    throw new RequirementError(`drawing slip off needs a fraction from 0 to below 1; it is ${f}`);
  if (f === 0) return { amounts: paint, spent: [], dropped: [] };
  const { unmeasured, fraction, coverage, leaveOut } = { ...DRAW_OFF_DEFAULTS, ...options };
  const amounts: Record<string, Amount> = {};
  const [spent, dropped]: [string[], string[]] = [[], []];
  for (const [oxide, measured] of Object.entries(paint)) {
    if (leaveOut.includes(oxide)) continue;
    const under = slip[oxide] ?? (unmeasured === 'none' ? NONE : null);
    if (!under) {
      dropped.push(oxide);
      continue;
    }
    const left = combine(measured, under, { u: 1 / (1 - f), v: -f / (1 - f), fraction });
    const limit = coverage * (left.sigma ?? 0);
    const over = left.value ?? left.limit ?? 0;
    if (over + limit < -1e-12) refuseNegative(oxide, f, over);
    const isSpent = over < limit;
    if (isSpent) spent.push(oxide);
    amounts[oxide] = isSpent ? { ...left, value: null, limit } : left;
  }
  return { amounts, spent, dropped };
}

function refuseNegative(oxide: string, f: number, left: number): never {
  throw new RequirementError(
    `drawing slip off needs every oxide to stay above nothing; at f = ${f} ${oxide} comes to ${left.toPrecision(3)} wt%`,
  );
}

interface Weights {
  readonly u: number;
  readonly v: number;
  readonly fraction: number;
}

function combine(a: Amount, b: Amount, { u, v, fraction }: Weights): Amount {
  const under = b.value ?? fraction * (b.limit ?? 0);
  const shift = (x: number) => u * x + v * under;
  const parts = [
    { variance: (u * sigmaOf(a)) ** 2, df: a.sigmaDf ?? null },
    { variance: (v * sigmaOf(b)) ** 2, df: b.sigmaDf ?? null },
  ];
  const sigma = Math.sqrt(parts[0]!.variance + parts[1]!.variance);
  const df = effectiveDf(parts);
  return {
    value: a.value === null ? null : shift(a.value),
    limit: a.limit === null ? null : a.value === null ? shift(a.limit) : u * a.limit,
    sigma: sigma > 0 ? sigma : null,
    sigmaBasis: a.sigmaBasis ?? b.sigmaBasis,
    ...(df === null ? {} : { sigmaDf: df }),
    resolution: a.resolution === null ? null : u * a.resolution,
  };
}

/** Below detection: uniform between 0 and the limit. */
function sigmaOf(amount: Amount): number {
  return amount.value === null ? (amount.limit ?? 0) / Math.sqrt(12) : (amount.sigma ?? 0);
}
