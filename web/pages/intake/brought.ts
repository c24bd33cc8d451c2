import type { DataImport } from '../../../api/contract/import.ts';
import { count } from '../../parts/numbers.ts';

/** What a finished import added, in a sentence. */
export function whatItBrought(run: Pick<DataImport, 'analyses' | 'specimens' | 'groups'>): string {
  const parts = [count(run.analyses, 'analysis', 'analyses')];
  if (run.specimens > 0) parts.push(count(run.specimens, 'new specimen'));
  if (run.groups > 0) parts.push(count(run.groups, 'new ware group'));
  const last = parts.pop() ?? '';
  return `It brought ${parts.length > 0 ? `${parts.join(', ')} and ${last}` : last}.`;
}
