import type { RoastLooks } from './roast-judgement.ts';
import type { Hazard, Span } from './types.ts';

/** How a material of the user's own is described: what is kept, and what everything else is computed from. */
export type Making =
  | {
      readonly kind: 'formula';
      readonly formula: string;
      /** Mass fractions, above 0 and up to 1. */
      readonly purity: Span;
      /** Formula of what comes with it; null leaves the rest unaccounted. */
      readonly gangue: string | null;
    }
  | {
      readonly kind: 'analysis';
      /** wt% of the dry material. */
      readonly values: Readonly<Record<string, number>>;
      /** One standard deviation, wt%. */
      readonly sigma: Readonly<Record<string, number>>;
      readonly lossOnIgnition: number | null;
      /** The specimen that it was read from. */
      readonly specimen: string | null;
    };

export interface MaterialEntry {
  readonly id: string;
  readonly name: string;
  readonly making: Making;
  readonly source: string;
  readonly handling: string;
  /** Beyond those that follow from what it holds. */
  readonly hazards: readonly Hazard[];
  readonly pricePerKg: number | null;
  readonly onHand: number | null;
}

/** One line as kept: a key of the shelf, grams or parts, wt% of moisture. */
export interface LineEntry {
  readonly material: string;
  readonly amount: number;
  readonly water: number;
}

export interface FireEntry {
  readonly celsius: number;
  readonly atmosphere: 'air' | 'smoke';
  /** mol/mol; null takes what the temperature leads one to expect. */
  readonly sulfurPerLead: Span | null;
}

export interface RoastEntry {
  readonly id: string;
  readonly name: string;
  readonly charge: readonly LineEntry[];
  readonly massOut: number;
  /** Largest error of a weighing, ± grams. */
  readonly weighing: number;
  readonly celsius: number;
  readonly hours: number;
  readonly looks: RoastLooks | null;
  readonly sulfur: { readonly percent: number; readonly sigma: number } | null;
}
