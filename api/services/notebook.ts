import type { Entry, NotebookQuery } from '../contract/notebook.ts';
import { type Caller, requireStudy } from './access.ts';
import { type Cell, toCsv } from './csv.ts';
import { benchEntries, fireEntries, readingEntries } from './notebook-entries.ts';
import { foldAnalyses } from './notebook-fold.ts';

/** Everything of a study on one line of time, newest first. */
export async function readNotebook(
  caller: Caller,
  studyId: string,
  { search = '', kind, fold }: NotebookQuery,
): Promise<Entry[]> {
  await requireStudy(caller, studyId);
  const entries = (
    await Promise.all([
      fireEntries(caller, studyId),
      benchEntries(caller, studyId),
      readingEntries(caller, studyId),
    ])
  ).flat();
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const says = ({ kind: what, date, title, text, pictures }: Entry) =>
    [what, date, title, text, ...pictures.map((one) => one.alt)].join(' ').toLowerCase();
  // Searched before it is folded: what fits is found, and only that is counted.
  const fitting = entries.filter(
    (entry) => (!kind || entry.kind === kind) && words.every((word) => says(entry).includes(word)),
  );
  return (fold === undefined ? fitting : foldAnalyses(fitting))
    .map(({ file: _, ...entry }) => entry)
    .sort((a, b) => (key(a) > key(b) ? -1 : 1));
}

export async function notebookCsv(caller: Caller, studyId: string, query: NotebookQuery): Promise<string> {
  return notebookTable(await readNotebook(caller, studyId, query));
}

/** The entries as CSV; `named` gives the files of their pictures where there are any. */
export function notebookTable(
  entries: readonly Entry[],
  named: (picture: string) => string | undefined = () => undefined,
): string {
  const cells = entries.map(({ date, dated, writtenAt, kind, title, text, pictures }): Cell[] => [
    ...[date, dated ? 'noted' : 'as written down', writtenAt, kind, title, text],
    pictures.map(({ id, alt }) => named(id) ?? alt).join(' | '),
  ]);
  return toCsv(['Date', 'Date is', 'Written down', 'What', 'Name', 'Notes', 'Pictures'], cells);
}

const key = ({ date, writtenAt, id }: Entry) => `${date.padEnd(10, '~')} ${writtenAt} ${id}`;
