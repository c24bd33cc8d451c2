import type { FiringComparisonAnswer } from '../contract/firing-log.ts';
import { compareFirings } from '../domain/firing/compare.ts';
import { hottestChannel } from '../domain/firing/summary-words.ts';
import { type Caller, requireStudy } from './access.ts';
import { Failure } from './failure.ts';
import { firingRow } from './firings.ts';
import { logAndSummary } from './stored-log.ts';

/** Firings with a log side by side, with the curve of the hottest channel of each. */
export async function compareStudyFirings(
  caller: Caller,
  studyId: string,
  ids: readonly string[],
): Promise<FiringComparisonAnswer> {
  await requireStudy(caller, studyId);
  const known = [...new Set(ids)];
  const rows = await Promise.all(known.map((id) => firingRow(caller, studyId, id)));
  const read = rows.map((row) => ({ name: row.name, ...logAndSummary(row) }));
  const named = read.flatMap(({ name, log, summary }) => (log && summary ? [{ name, log, summary }] : []));
  const without = read.filter((each) => !each.log).map((each) => each.name);
  if (named.length < 2)
    throw new Failure(
      'invalid',
      `a comparison needs at least two firings with a log; found ${named.length}.`,
    );
  const curves = named.map(({ name, log, summary }) => {
    const hottest = hottestChannel(summary.channels)?.name;
    return { name, points: log.curves.find((one) => one.name === hottest)?.points ?? [] };
  });
  return { ...compareFirings(named), without, curves } as FiringComparisonAnswer;
}
