/**
 * Trials: plans, what mattered, the next tile. Plain JSON in and out. Public functions:
 *
 *   planTrial(request: PlanRequest): Plan                                               plan.ts
 *   analyseTrial(zones: Zone[], request: TrialRequest): TrialAnalysis                   analyse.ts
 *   predictChance(zones: Zone[], request: ChanceRequest): ChanceCurve                   chance.ts
 *   proposeTile(zones: Zone[], request: NextTileRequest): NextTile                      next-tile.ts
 *   planFromProposal(proposal: NextTile, { seed, rows?, columns? }): Plan                                next-tile-plan.ts
 *
 * All throw RequirementError with the requirement, then what was found.
 */

export const GRADES = ['matt', 'satin', 'glossy'] as const;
export type Grade = (typeof GRADES)[number];

/** A setting of a factor: a number in the factor's unit, or the name of a level. */
export type Level = number | string;

/** One zone of a fired tile. The tile and the firing are identities, not names for show. */
export interface Zone {
  readonly id: string;
  readonly label: string;
  readonly tile: string;
  readonly tileLabel: string;
  readonly firing: string | null;
  readonly factors: Readonly<Record<string, Level | null>>;
  readonly grade: Grade | null;
  /** Share of the zone that is glassy, 0–1. */
  readonly glassyShare: number | null;
}

/** A factor as analysed. An effect of a number factor is stated per `step` of it (10 µm, 50 °C). */
export type Factor =
  | { readonly name: string; readonly kind: 'number'; readonly unit: string; readonly step: number }
  | { readonly name: string; readonly kind: 'category'; readonly base: string | null };

/** What counts as the outcome. `grade` keeps all three; `share` is the share glassy. */
export const OUTCOMES = ['glossy', 'satin-or-better', 'grade', 'share'] as const;
export type Outcome = (typeof OUTCOMES)[number];

export interface TrialRequest {
  readonly factors: readonly Factor[];
  readonly outcome: Outcome;
  /** Confidence level of intervals; 0.95 where absent. */
  readonly level?: number;
  /** Seed of sampled permutations, used where there are too many to enumerate. */
  readonly seed: number;
}

/** Where a factor varies: between zones of a tile, between tiles of a firing, or only between firings. */
export type UnitOfChange = 'zone' | 'tile' | 'firing';

/**
 * How an interval was made. `exact-conditional`: every arrangement of the outcomes within the units, tilted by the
 * effect; `exact-permutation`: every order of the settings; `sampled-permutation`: the same by seeded draws;
 * `approximate-permutation`: orders of what other factors leave, listed or drawn; `penalised`: profile penalised
 * likelihood.
 */
export type EffectMethod =
  | 'exact-conditional'
  | 'exact-permutation'
  | 'sampled-permutation'
  | 'approximate-permutation'
  | 'penalised';

export type EffectVerdict = 'matters' | 'no sign' | 'cannot tell';

export interface Effect {
  readonly factor: string;
  /** `per 10 µm`, or `long roast instead of short roast`. */
  readonly contrast: string;
  readonly unitOfChange: UnitOfChange;
  readonly method: EffectMethod;
  /**
   * Of zones within tiles `log-odds` (log of the odds ratio for one contrast); between tiles or firings, and wherever
   * an effect within tiles is by permutation, the difference in the `share` of glossy zones or of glassy area
   * (−1 … 1), or in `grades` (−2 … 2).
   */
  readonly scale: 'log-odds' | 'share' | 'grades';
  /** null where it is unbounded (separation) or cannot be told. */
  readonly estimate: number | null;
  /** null: unbounded on that side. */
  readonly low: number | null;
  readonly high: number | null;
  readonly level: number;
  /** Two-sided p of no effect; always beside the interval, null where there is no test. */
  readonly p: number | null;
  readonly arrangements: number | null;
  /** Seeded draws, where the arrangements are too many to list. */
  readonly draws?: number;
  /** The smallest p that these data could have given. */
  readonly smallestP: number | null;
  readonly separated: boolean;
  readonly zones: number;
  readonly tiles: number;
  readonly adjustedFor: readonly string[];
  readonly verdict: EffectVerdict;
  readonly sentence: string;
  readonly cautions: readonly string[];
}

/** Factors that moved together, so that their effects cannot be told apart. */
export interface Tangle {
  readonly factors: readonly string[];
  /** `same`: one follows from the others; `partly`: mostly; `constant`: one setting only, tied to everything kept. */
  readonly kind: 'same' | 'partly' | 'constant';
  /** Largest condition index of the columns concerned; null where the tie is exact. */
  readonly condition: number | null;
  readonly tiles: readonly string[];
  readonly sentence: string;
}

export interface ModelTerm {
  readonly name: string;
  readonly estimate: number;
  readonly se: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly p: number | null;
}

/** A fitted model, for the methods paragraph and the tables. */
export interface FittedModel {
  readonly kind: 'firth-logistic' | 'proportional-odds' | 'penalised-proportional-odds';
  readonly terms: readonly ModelTerm[];
  readonly separated: boolean;
  readonly n: number;
  readonly parameters: number;
  readonly note: string;
}

export interface TrialAnalysis {
  readonly outcome: Outcome;
  readonly zones: number;
  readonly tiles: number;
  /** Firings noted; 0 where none is. */
  readonly firings: number;
  readonly counts: Readonly<Record<Grade, number>>;
  readonly leftOut: readonly {
    readonly zone: string;
    readonly tile?: string | undefined;
    readonly why: string;
  }[];
  readonly effects: readonly Effect[];
  readonly tangles: readonly Tangle[];
  readonly models: readonly FittedModel[];
  /** The answer in a few plain sentences. */
  readonly sentence: string;
  readonly cautions: readonly string[];
}

export interface ChanceRequest extends TrialRequest {
  readonly against: string;
  /** What the other factors are held at; the middle, or the most frequent level, where absent. */
  readonly held?: Readonly<Record<string, Level>>;
  readonly points?: number;
}

export interface ChancePoint {
  readonly at: Level;
  readonly chance: number;
  readonly low: number;
  readonly high: number;
}

export interface ChanceCurve {
  readonly against: string;
  readonly unit: string | null;
  /** `glossy`, `satin or glossy`. */
  readonly of: string;
  readonly points: readonly ChancePoint[];
  readonly data: readonly {
    readonly zone: string;
    readonly tile: string;
    readonly at: Level;
    readonly yes: boolean;
  }[];
  readonly held: Readonly<Record<string, Level>>;
  readonly level: number;
  /** What the interval covers, and what it does not. */
  readonly note: string;
}

export const PLAN_KINDS = ['ladder', 'one-at-a-time', 'full', 'fraction'] as const;
export type PlanKind = (typeof PLAN_KINDS)[number];

/** A factor as planned. `at` says what it can be changed on; a ladder and fractions need their levels in order. */
export interface PlannedFactor {
  readonly name: string;
  readonly unit: string | null;
  readonly at: UnitOfChange;
  readonly levels: readonly Level[];
}

export interface PlanRequest {
  readonly kind: PlanKind;
  readonly factors: readonly PlannedFactor[];
  readonly tiles: number;
  /** Grid of zones on a tile. */
  readonly rows: number;
  readonly columns: number;
  readonly firings: number;
  readonly replicates: number;
  /** Fraction only: generators such as `D=ABC`, letters by the order of the factors; chosen when absent. */
  readonly generators?: readonly string[];
  /** Places in the fire; tiles are put on them at random. `1 … tiles` where absent. */
  readonly places?: readonly string[];
  readonly seed: number;
}

export interface PlannedZone {
  /** `A1`: column letter and row number on the tile. */
  readonly label: string;
  readonly row: number;
  readonly column: number;
  readonly run: number;
  readonly replicate: number;
  readonly settings: Readonly<Record<string, Level>>;
}

export interface PlannedTile {
  readonly label: string;
  /** 1, 2, … */
  readonly firing: number;
  readonly place: string;
  readonly settings: Readonly<Record<string, Level>>;
  readonly zones: readonly PlannedZone[];
}

export interface Plan {
  readonly kind: PlanKind | 'next-tile';
  readonly factors: readonly PlannedFactor[];
  readonly tiles: readonly PlannedTile[];
  readonly runs: number;
  readonly seed: number;
  readonly resolution: number | null;
  readonly generators: readonly string[];
  /** In words: what cannot be told apart, what each factor is compared within. */
  readonly aliases: readonly string[];
  readonly notes: readonly string[];
}

/** What a factor may be set to on the next tile. */
export interface Option {
  readonly name: string;
  readonly at: 'zone' | 'tile';
  readonly values: readonly Level[];
}

export interface NextTileRequest extends TrialRequest {
  readonly options: readonly Option[];
  readonly zonesOnTile: number;
  /** Settings that shelf or fire do not allow together. */
  readonly forbidden?: readonly Readonly<Record<string, Level>>[];
  /** The factor most wanted; all alike where absent. */
  readonly interest?: string;
  /** Standard deviation of the tiles' own level, log-odds; 1 where absent. */
  readonly tileSpread?: number;
}

export interface Shrinkage {
  readonly factor: string;
  readonly contrast: string;
  /** Width of the interval, log-odds: by the model now, and expected after the tile. */
  readonly now: number;
  readonly expected: number;
}

export interface NextTile {
  readonly tile: Readonly<Record<string, Level>>;
  readonly zones: readonly Readonly<Record<string, Level>>[];
  readonly factors: readonly PlannedFactor[];
  readonly shrinkage: readonly Shrinkage[];
  /** Gain in log det of the information (of that on the factor of interest, where there is one). */
  readonly gain: number;
  /** The same gain from a repeat of the best tile so far. */
  readonly gainOfRepeat: number;
  /** Settings of a zone on a tile that were weighed. */
  readonly candidates: number;
  /** Every way to fill the tile was weighed. */
  readonly exhaustive: boolean;
  readonly reason: string;
  readonly cautions: readonly string[];
}
