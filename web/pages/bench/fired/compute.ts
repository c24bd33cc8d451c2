import { type Advice, adviseBatch } from '../../../../api/domain/batch/advice.ts';
import { type FiredBatch, fireBatch } from '../../../../api/domain/batch/batch.ts';
import { type BenchShelf, fireOfEntry, linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import type { FireEntry, LineEntry } from '../../../../api/domain/batch/entries.ts';
import { gasLitres } from '../../../../api/domain/batch/gas.ts';
import type { Span } from '../../../../api/domain/batch/types.ts';
import { type UnityFormula, unityFormula } from '../../../../api/domain/batch/unity.ts';
import { attempt } from '../parts/attempt.ts';

export interface Fired {
  readonly fired: FiredBatch;
  /** Peak of the fire, °C. */
  readonly celsius: number;
  readonly unity: UnityFormula | null;
  readonly advice: readonly Advice[];
}

/** What a batch becomes, computed in the page by the code that the service runs. Throws what the domain requires. */
export function fireHere(lines: readonly LineEntry[], fire: FireEntry, shelf: BenchShelf): Fired {
  const settings = fireOfEntry(fire);
  const fired = fireBatch(linesOfEntries(lines, shelf), settings);
  const percent = Object.fromEntries(fired.oxides.map((one) => [one.oxide, one.percent]));
  return {
    fired,
    celsius: fire.celsius,
    unity: attempt(() => unityFormula(percent)).value,
    advice: adviseBatch(fired, settings),
  };
}

export const dioxideLitres = ({ low, high }: Span): Span => ({
  low: gasLitres('SO2', Math.max(0, low)),
  high: gasLitres('SO2', Math.max(0, high)),
});
