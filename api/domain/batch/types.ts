/** What leaves a material in the fire, and oxygen exchanged with the air (negative: taken up). */
export const GASES = ['H2O', 'CO2', 'SO2', 'O2', 'N2', 'halogens', 'other'] as const;
export type Gas = (typeof GASES)[number];

/** What can hurt when a material is handled or fired; each has its cautions in `safety.ts`. */
export const HAZARDS = ['lead', 'sulfur', 'silica', 'manganese', 'caustic', 'poison', 'fire'] as const;
export type Hazard = (typeof HAZARDS)[number];

export interface Span {
  readonly low: number;
  readonly high: number;
}

/** What one gram of dry material holds. Atomic masses × moles + `otherLoss` + `unreported` make one gram. */
export interface Content {
  /** Moles of each element per gram, oxygen, hydrogen and carbon included. */
  readonly moles: Readonly<Record<string, number>>;
  /** Loss on ignition whose kind the analysis does not state, g/g. */
  readonly otherLoss: number;
  /** What the analysis does not account for at all, g/g: it may stay or go. */
  readonly unreported: number;
}

export type Origin =
  | { readonly kind: 'formula'; readonly formula: string; readonly purity: Span }
  | { readonly kind: 'analysis'; readonly total: number; readonly lossOnIgnition: number | null }
  | { readonly kind: 'roast'; readonly celsius: number; readonly hours: number };

/** Something on the shelf. Amounts in a batch are of the dry material unless a water content is given. */
export interface Material {
  readonly id: string;
  readonly name: string;
  readonly origin: Origin;
  readonly content: Content;
  /** The two ends of what the material may be, where one figure would claim too much (purity, roast). */
  readonly spread: { readonly low: Content; readonly high: Content } | null;
  /** One standard deviation of the elements, moles per gram; an absent element counts as exact. */
  readonly sigma: Readonly<Record<string, number>>;
  readonly hazards: readonly Hazard[];
  readonly handling: string;
  /** Where composition or formula comes from. */
  readonly source: string;
  readonly warnings: readonly string[];
  /** Money per kilogram, in the study's own currency. */
  readonly pricePerKg: number | null;
  /** Grams on the shelf. */
  readonly onHand: number | null;
}

/** One line of a batch: grams (or parts) weighed, of which `water` wt% is moisture (0 when absent). */
export interface BatchLine {
  readonly material: Material;
  readonly amount: number;
  readonly water?: number;
}
