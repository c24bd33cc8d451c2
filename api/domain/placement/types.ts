/** One oxide's part in the gap between a replica and a group's centre. */
export interface Contribution {
  readonly oxide: string;
  readonly measured: number;
  readonly centre: number;
  /**
   * exp of the log-ratio difference: 0.5 means half of what the group has, against the geometric mean of all oxides (so
   * one oxide of nine that is doubled reads 2^(8/9), the others 2^(−1/9)); in log10 and standardised wt% over wt%.
   */
  readonly factor: number;
  /** Share of the squared Aitchison (or working-scale) distance, 0–1; sums to 1. */
  readonly share: number;
  /** Part of D², may be negative; sums to D²; null where D² is refused. */
  readonly d2: number | null;
  /** Difference divided by the group's standard deviation on this oxide; null when n < 2. */
  readonly z: number | null;
}

/**
 * What the numbers allow one to say. `inside`: cannot be told from the members. `unknown`: refused.
 * The rule is in verdict.ts.
 */
export type Verdict = 'inside' | 'borderline' | 'outside' | 'unknown';

/**
 * Place among a group's members: (1 + members at least as far out) / (of + 1). Free of any distribution for D²
 * (pooled-rank.ts: the sample among them, everything fitted to all alike); nearly so for a distance off components.
 */
export interface Rank {
  readonly value: number;
  readonly atLeastAsFar: number;
  readonly of: number;
}

/** A sample set against one ware group. */
export interface GroupPlacement {
  readonly group: string;
  readonly name: string;
  readonly n: number;
  readonly p: number | null;
  /** Distance to the centre in the working scale (Aitchison distance for log-ratios). */
  readonly distance: number;
  /** Squared Mahalanobis distance; leave-one-out when the sample is a member. */
  readonly d2: number | null;
  /** Chance that a true member lies at least this far out (Hotelling's T² through F). */
  readonly membership: number | null;
  /** Why no membership probability is given although D² is; null when it is given, or when D² is refused. */
  readonly membershipRefusal: string | null;
  readonly df: readonly [number, number] | null;
  readonly typicality: Rank | null;
  /** Under `components`: distance off those components, and its rank among the members'; else null. */
  readonly off: { readonly distance: number; readonly furthestMember: number; readonly rank: Rank } | null;
  readonly verdict: Verdict;
  readonly method: string;
  readonly refusal: string | null;
  readonly warnings: readonly string[];
  readonly leaveOneOut: boolean;
  readonly contributions: readonly Contribution[];
}

export interface NearSherd {
  readonly id: string;
  readonly label: string;
  readonly group: string;
  readonly distance: number;
}

/** Where one sample lies. */
export interface Placement {
  readonly id: string;
  readonly label: string;
  readonly spots: number;
  readonly parts: readonly number[];
  readonly coordinates: readonly number[];
  readonly scores: readonly number[];
  /** Ordered from the nearest group outward. */
  readonly groups: readonly GroupPlacement[];
  readonly nearest: readonly NearSherd[];
  readonly replaced: readonly { readonly oxide: string; readonly limit: number; readonly by: number }[];
  /** Plain words first: one or two sentences for the nearest (or chosen) group. */
  readonly sentence: string;
}
