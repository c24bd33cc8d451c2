/** Working scale of a model. Log-ratio: centred log-ratios of closed parts. */
export type Scale = 'log-ratio' | 'log10' | 'standardised';

export type CovarianceChoice =
  | { readonly kind: 'auto' }
  | { readonly kind: 'sample' }
  | { readonly kind: 'shrinkage'; readonly target: 'ledoit-wolf' | 'oas' }
  | { readonly kind: 'components'; readonly count: number };

export interface ModelSettings {
  /** Ware group ids, in the order shown. */
  readonly groups: readonly string[];
  /** Oxides compared; null takes those measured in every reference and replica. */
  readonly parts: readonly string[] | null;
  readonly scale: Scale;
  readonly covariance: CovarianceChoice;
  readonly replacement: {
    /** Share of the detection limit that stands in for a value below it (0.65 by default). */
    readonly fraction: number;
    /** Detection limits in wt% by oxide that override or supply those reported. */
    readonly limits: Readonly<Record<string, number>>;
  };
}
export const DEFAULT_MODEL: Omit<ModelSettings, 'groups'> = {
  parts: null,
  scale: 'log-ratio',
  covariance: { kind: 'auto' },
  replacement: { fraction: 0.65, limits: {} },
};

/** An oxide left out of a model, and because of which specimens. */
export interface FallenOut {
  readonly oxide: string;
  readonly because: 'not measured' | 'constant' | 'no detection limit' | 'not chosen';
  /** Labels of the specimens that are the reason; empty for `constant` and `not chosen`. */
  readonly specimens: readonly string[];
}

/** A sample that cannot enter because it lacks an oxide that was chosen by hand. */
export interface LeftOut {
  readonly sample: string;
  readonly label: string;
  readonly reason: string;
}
export interface Replaced {
  readonly sample: string;
  readonly oxide: string;
  readonly limit: number;
  /** wt% of the closed composition after replacement. */
  readonly by: number;
}

export interface Pca {
  readonly eigenvalues: readonly number[];
  /** Share of total variance, 0–1. */
  readonly explained: readonly number[];
  /** `loadings[component][part]`; the largest absolute loading of each component is positive. */
  readonly loadings: readonly (readonly number[])[];
}

/** One reference sample inside a model. */
export interface Member {
  readonly id: string;
  readonly label: string;
  readonly group: string;
  /** Closed wt% on the model's parts, after replacement; `coordinatesOf(model, parts)` gives the working scale. */
  readonly parts: readonly number[];
  /** On every component kept, so that distances between scores are distances in the working scale. */
  readonly scores: readonly number[];
}

/**
 * How a group's spread is measured. `axes[k][part]` spans the space in which D² is taken (orthonormal rows):
 * all p = D − 1 directions that closed parts can move in, or the first p principal components.
 */
export interface GroupSpread {
  readonly method: 'sample' | 'ledoit-wolf' | 'oas' | 'components';
  readonly p: number;
  /** Why this method, with n, p and degrees of freedom, in words. */
  readonly explanation: string;
  /** D² beyond which a new observation has membership p < 0.05; null under shrinkage, which has no such limit. */
  readonly limit: number | null;
  /** Shrinkage intensity 0–1, for shrinkage methods. */
  readonly shrinkage: number | null;
  readonly axes: readonly (readonly number[])[];
  readonly covariance: readonly (readonly number[])[];
  /** Packed lower triangle (row by row) of the inverse of the Cholesky factor of `covariance`. */
  readonly inverseCholesky: readonly number[];
}

export interface GroupModel {
  readonly id: string;
  readonly name: string;
  readonly n: number;
  /** Mean in the working scale, one per part. */
  readonly mean: readonly number[];
  /** The mean back in closed wt%. */
  readonly centre: readonly number[];
  /** Standard deviation in the working scale, one per part; null when n < 2. */
  readonly deviation: readonly number[] | null;
  readonly spread: GroupSpread | null;
  /** Why no distance in the group's own spread can be given. */
  readonly refusal: string | null;
  readonly warnings: readonly string[];
  readonly memberIds: readonly string[];
  /** Leave-one-out D² of each member, in the order of `memberIds`; null where the others are too few to tell. */
  readonly memberD2: readonly number[] | null;
  /**
   * Under `components` that leave something out: distance of each member off components refitted without it, which D²
   * does not see.
   */
  readonly memberOff: readonly number[] | null;
  /** Mean and covariance (divisor n − 1, null when n < 2) of scores on all components kept, for ellipses. */
  readonly scoreMean: readonly number[];
  readonly scoreCovariance: readonly (readonly number[])[] | null;
}

/** A fitted model: plain data, so that it crosses the wire and places replicas in the browser too. */
export interface ReferenceModel {
  readonly settings: ModelSettings;
  readonly parts: readonly string[];
  readonly fallenOut: readonly FallenOut[];
  readonly leftOut: readonly LeftOut[];
  readonly replaced: readonly Replaced[];
  readonly warnings: readonly string[];
  /** Largest detection limit used for each part where one was needed, wt%. */
  readonly limits: Readonly<Record<string, number>>;
  /** Mean over all references in the working scale before standardising; sd only for `standardised`. */
  readonly mean: readonly number[];
  readonly sd: readonly number[] | null;
  readonly pca: Pca;
  readonly groups: readonly GroupModel[];
  readonly members: readonly Member[];
}
