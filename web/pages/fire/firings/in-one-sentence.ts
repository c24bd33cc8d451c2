import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { celsius } from './words.ts';

/** What is known of a firing's heat, plain words first. */
export function inOneSentence({ summary, peak }: Pick<FiringRecord, 'summary' | 'peak'>): string {
  if (summary) return summary.sentence;
  return peak
    ? `Hottest reading by hand ${celsius(peak)}. Readings by hand can miss the true top.`
    : 'No log and no reading by hand yet.';
}
