import type { Sample } from '../composition/types.ts';
import type { Analysed } from '../slip/types.ts';

/** A slip fraction to carry: fixed (σ 0), or drawn around f with σ (t with df, normal when null) and kept in 0–0.99. */
export interface CarriedFraction {
  readonly f: number;
  readonly sigma: number;
  readonly df: number | null;
  /** How it was come by, for the words: `tracers`, `batch` … */
  readonly from: string;
}

/** What goes into a Monte Carlo placement. */
export interface UncertaintyRequest {
  readonly sample: Sample;
  /** Slip to draw off; null leaves the sample as it is. */
  readonly slip: { readonly analysed: Analysed; readonly fraction: CarriedFraction } | null;
  readonly settings: UncertaintySettings;
}
export interface UncertaintySettings {
  readonly draws: number;
  readonly seed: number;
  /** Relative standard uncertainty for an oxide that has none stated; null takes it as exact. */
  readonly assumedRelative: number | null;
  /** Oxides not measured in the slip: refused, or taken as none. */
  readonly unmeasured: 'refuse' | 'none';
}
export const DEFAULT_UNCERTAINTY: UncertaintySettings = {
  draws: 2000,
  seed: 1,
  assumedRelative: 0.05,
  unmeasured: 'refuse',
};

/** Middle 95 % of the draws, and the middle one. */
export interface Interval {
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** How the draws lie to one ware group. */
export interface GroupUncertainty {
  readonly group: string;
  readonly name: string;
  readonly distance: Interval;
  readonly d2: Interval | null;
  readonly membership: Interval | null;
  /** Share of draws that cannot be told from the members; null where the group gives no verdict. */
  readonly inside: number | null;
  /** Share of draws that lie outside; what is neither lies at the edge. */
  readonly outside: number | null;
  /** Share of draws to whose composition this group's centre is the nearest. */
  readonly nearest: number;
}

/** What a Monte Carlo placement gives. */
export interface PlacementUncertainty {
  readonly id: string;
  readonly label: string;
  readonly draws: number;
  readonly seed: number;
  /** In the order of the model's groups. */
  readonly groups: readonly GroupUncertainty[];
  readonly fraction: Interval | null;
  /** Cloud on the model's components: mean, covariance, and some of the draws. */
  readonly scores: {
    readonly mean: readonly number[];
    readonly covariance: readonly (readonly number[])[];
    readonly some: readonly (readonly number[])[];
  };
  /** Oxides that fell to nothing in some draws, and in what share of them. */
  readonly spent: readonly { readonly oxide: string; readonly share: number }[];
  /** What was carried, in words. */
  readonly carried: readonly string[];
  readonly warnings: readonly string[];
  readonly sentence: string;
}

export interface Progress {
  readonly done: number;
  readonly of: number;
}
