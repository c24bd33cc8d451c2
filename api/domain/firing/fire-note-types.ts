import type { Air, AirStage, HandReading } from './types.ts';

/** What someone at the fire noted. Two people may note at once, each with a clock of their own. */
export type FireNote = {
  /** Made where it was noted, so that a note sent twice counts once. */
  readonly id: string;
  /** Instant it was noted, and the instant it is of: the same, unless it was put right later. */
  readonly noted: string;
  readonly at: string;
} & (
  | { readonly kind: 'lit' }
  | { readonly kind: 'air'; readonly air: Air }
  | { readonly kind: 'out' }
  | { readonly kind: 'reading'; readonly where: string; readonly reading: HandReading }
);

/** What is kept of a note for good: it tells a second sending, and when air changed. */
export interface FireMark {
  readonly mark: string;
  readonly noted: string;
  readonly at: string;
  readonly kind: FireNote['kind'] | 'judgement' | 'picture';
  readonly air?: Air;
  readonly zone?: string;
  /** Whether someone took out by hand the stage of air that it is part of. */
  readonly takenOut?: true;
}

export interface ClockedReading {
  /** That of the note it came by, or made where it was written down: it tells readings alike apart. */
  readonly id: string;
  /** Seconds since the fire was lit; null where that is not known. */
  readonly at: number | null;
  readonly clock: string | null;
  readonly where: string;
  readonly reading: HandReading;
}

export interface FireLog {
  readonly stages: readonly AirStage[];
  readonly readings: readonly ClockedReading[];
  readonly marks: readonly FireMark[];
}
