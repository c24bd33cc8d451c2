import type { Comparison } from '../contract/placement.ts';
import type { SharedSlips } from '../contract/shared.ts';
import type { Caller } from './access.ts';
import { basisOf, readSlips } from './slip-samples.ts';

/**
 * The slip analyses that a visitor may draw off: of the specimens and ware groups compared, and those the comparison
 * itself was made with. No other slip of the study is among them.
 */
export async function slipsToShare(
  caller: Caller,
  studyId: string,
  { request, replicas, references, groups }: Comparison,
): Promise<SharedSlips> {
  const { slips, names } = await readSlips(caller, studyId, basisOf(request));
  const sources = (request.slip ?? []).map(({ source }) => source);
  const specimens = new Set([
    ...[...replicas, ...references].map(({ id }) => id),
    ...sources.flatMap((source) => (source.kind === 'specimen' ? [source.specimen] : [])),
  ]);
  const chosen = new Set([
    ...groups.map(({ id }) => id),
    ...sources.flatMap((source) => (source.kind === 'group' ? [source.group] : [])),
  ]);
  const samples = slips.filter(({ id, group }) => specimens.has(id) || (group !== null && chosen.has(group)));
  return {
    samples: samples as SharedSlips['samples'],
    names: Object.fromEntries(Object.entries(names).filter(([id]) => chosen.has(id))),
  };
}
