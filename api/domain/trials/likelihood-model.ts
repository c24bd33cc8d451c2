/** A likelihood by its parts at given parameters. `information` is the expected one. */
export interface LikelihoodModel {
  readonly names: readonly string[];
  readonly start: readonly number[];
  /** −Infinity where the parameters are not allowed. */
  readonly logLik: (at: readonly number[]) => number;
  readonly score: (at: readonly number[]) => number[];
  readonly information: (at: readonly number[]) => number[][];
  /** Slope of ½ log det of the information, where it is known in closed form. */
  readonly penaltyScore?: (at: readonly number[]) => number[];
}

export interface FitOptions {
  /** Adds Jeffreys' penalty, ½ log det of the information. */
  readonly penalised: boolean;
  /** A parameter held at a value, by its place. */
  readonly held?: { readonly place: number; readonly value: number };
  readonly start?: readonly number[];
  /** Largest relative move of a parameter in the last round; 1e-10 by default. */
  readonly tolerance?: number;
}
