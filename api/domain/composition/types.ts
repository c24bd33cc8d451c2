/** Units a laboratory reports in. `wt%` and `ppm` (= mg/kg = µg/g) are mass fractions; `at%` counts atoms. */
export const UNITS = ['wt%', 'ppm', 'ppb', 'at%'] as const;
export type Unit = (typeof UNITS)[number];

/** What the number after ± means. */
export const UNCERTAINTY_BASES = ['1σ', '2σ', '95 %', 'unstated'] as const;
export type UncertaintyBasis = (typeof UNCERTAINTY_BASES)[number];

/** What was measured on a specimen. */
export const MEASURED = ['paint', 'slip', 'body', 'whole'] as const;
export type Measured = (typeof MEASURED)[number];

/**
 * One figure as the laboratory reported it; stored once and never overwritten.
 * An analyte that was not measured is absent from the list. Below detection: `value` is null, `belowDetection` true.
 */
export interface ReportedValue {
  /** Canonical spelling: an element (`Pb`), an oxide (`PbO`), or one of `LOI`, `Total`. */
  readonly analyte: string;
  readonly value: number | null;
  readonly unit: Unit;
  /** The figure after ±, in `unit`. */
  readonly uncertainty: number | null;
  readonly basis: UncertaintyBasis | null;
  readonly belowDetection: boolean;
  /** Detection limit in `unit`, when stated. */
  readonly limit: number | null;
  /** One step of the last digit as written, in `unit` (0.1 for `36.7`); null when unknown. */
  readonly resolution: number | null;
}

/** An oxide's amount in wt%. `value` is null when below detection; a missing key in `Amounts` was not measured. */
export interface Amount {
  readonly value: number | null;
  readonly limit: number | null;
  /** Standard uncertainty of `value` in wt% (of the mean, where spots were averaged); null when nothing is known. */
  readonly sigma: number | null;
  readonly sigmaBasis: 'stated' | 'assumed' | 'spots' | null;
  /** Degrees of freedom of `sigma` where it was found from a few repeats; absent or null: taken as known. */
  readonly sigmaDf?: number | null | undefined;
  readonly resolution: number | null;
}
export type Amounts = Readonly<Record<string, Amount>>;

/** Which form each element is expressed in, and whether volatiles are taken out before closure. */
export interface NormalisationSettings {
  readonly iron: 'Fe2O3' | 'FeO';
  readonly manganese: 'MnO' | 'MnO2' | 'Mn2O3' | 'Mn3O4';
  readonly copper: 'CuO' | 'Cu2O';
  readonly lead: 'PbO' | 'PbO2' | 'Pb3O4';
  readonly sulfur: 'SO3' | 'S';
  readonly volatileFree: boolean;
}
export const DEFAULT_NORMALISATION: NormalisationSettings = {
  iron: 'Fe2O3',
  manganese: 'MnO',
  copper: 'CuO',
  lead: 'PbO',
  sulfur: 'SO3',
  volatileFree: true,
};

/** One step from a reported figure to the figure used, kept so that a reader can follow it number by number. */
export interface NormalisationStep {
  readonly analyte: string;
  readonly oxide: string;
  readonly what: string;
  readonly before: { readonly value: number | null; readonly unit: Unit };
  readonly factor: number;
  readonly after: number | null;
}

/** An analysis in oxides: amounts before closure, the same closed to 100, the raw total and what to think of it. */
export interface NormalisedAnalysis {
  readonly amounts: Amounts;
  readonly closed: Amounts;
  /** Sum of oxides as analysed, wt%, before closure. */
  readonly rawTotal: number;
  readonly total: {
    /** `unknown` where the analysis came in atom %, which sets no mass scale. */
    readonly judgement: 'low' | 'usual' | 'high' | 'unknown';
    readonly message: string;
  };
  readonly steps: readonly NormalisationStep[];
  readonly warnings: readonly string[];
}

/** What enters a comparison: one specimen, one thing measured, its spots averaged. Amounts are closed to 100. */
export interface Sample {
  readonly id: string;
  readonly label: string;
  /** Ware group id; null for a replica or an unassigned sherd. */
  readonly group: string | null;
  readonly role: 'reference' | 'replica';
  readonly measured: Measured;
  /** Number of analyses (spots) averaged. */
  readonly spots: number;
  readonly rawTotal: number;
  readonly amounts: Amounts;
}
