import type { NormalisationStep } from './types.ts';

/** What a normalisation leaves behind for its reader while it runs. */
export interface Ledger {
  readonly steps: NormalisationStep[];
  readonly warnings: string[];
}
