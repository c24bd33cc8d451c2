import type { Sample } from '../composition/types.ts';

/** What a slip calculation needs of an analysis: amounts closed to 100 over all oxides measured. */
export type Analysed = Pick<Sample, 'label' | 'spots' | 'amounts'>;

/** A number with its variance, and the degrees of freedom of that variance (null when it is taken as known). */
export interface Measurement {
  readonly value: number;
  readonly variance: number;
  readonly df: number | null;
}

/** χ² of what a model leaves unexplained, against the stated uncertainties. */
export interface Consistency {
  readonly chiSquare: number;
  readonly df: number;
  /** Chance of a χ² at least as large if the model and the uncertainties are right. */
  readonly p: number;
  /** p ≥ 0.05. */
  readonly agree: boolean;
  readonly sentence: string;
}

/** How well two end members can be told apart, seen in units of the uncertainties. */
export interface Direction {
  /** Angle between the two end members, degrees; 0 when one is a multiple of the other. */
  readonly angle: number;
  /** Condition number of the two, each scaled to length one: √((1 + cos)/(1 − cos)). */
  readonly condition: number;
}

/** What one oxide says on its own, and how it sits with the rest. */
export interface OxideWitness {
  readonly oxide: string;
  /** The slip fraction that this oxide alone would give; null when it cannot give one. */
  readonly alone: number | null;
  readonly aloneSigma: number | null;
  readonly measured: number;
  readonly explained: number;
  /** (measured − explained) / standard uncertainty. */
  readonly z: number;
}

/** A slip fraction f (share by mass of what the beam read), with a 95 % interval and how it was come by. */
export interface FractionEstimate {
  readonly kind: 'stated' | 'tracers' | 'batch' | 'group' | 'thickness';
  /** Kept within 0–1. */
  readonly f: number;
  /** As computed, before it was kept within 0–1. */
  readonly unbounded: number;
  readonly low: number;
  readonly high: number;
  /** Half-width of the unbounded interval divided by its quantile: a standard uncertainty. */
  readonly sigma: number;
  /** Degrees of freedom of the t quantile used; null for the normal one. */
  readonly df: number | null;
  readonly consistency: Consistency | null;
  readonly direction: Direction | null;
  /** Why f cannot be told from these data; null when it can. */
  readonly cannotTell: string | null;
  readonly witnesses: readonly OxideWitness[];
  readonly assumptions: readonly string[];
  readonly warnings: readonly string[];
}

/** A composition with the slip drawn off. */
export interface DrawnOff {
  readonly amounts: Sample['amounts'];
  /** Oxides drawn down to nothing within their uncertainty: they are below detection in `amounts`. */
  readonly spent: readonly string[];
  /** Oxides of the paint that were not measured in the slip, and so left out. */
  readonly dropped: readonly string[];
}
