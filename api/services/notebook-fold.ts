import type { Entry } from '../contract/notebook.ts';

/** An entry with the file that brought it, where one did. */
export type FoundEntry = Entry & { readonly file: { readonly id: string; readonly name: string } | null };

/** So few are read one by one. */
const FEW = 3;
/** As many specimens as are named in a folded entry. */
const NAMED = 6;

/** Analyses of one file in one entry, and those written by hand in one a day, where there are more than three. */
export function foldAnalyses(entries: readonly FoundEntry[]): FoundEntry[] {
  const together = new Map<string, FoundEntry[]>();
  for (const entry of entries.filter(({ kind }) => kind === 'analysis')) {
    const of = entry.file ? `file ${entry.file.id}` : `day ${entry.date} ${entry.dated}`;
    const own = together.get(of);
    if (own) own.push(entry);
    else together.set(of, [entry]);
  }
  const folded = [...together.values()].flatMap((own) => (own.length > FEW ? [foldedInto(own)] : own));
  return [...entries.filter(({ kind }) => kind !== 'analysis'), ...folded];
}

function foldedInto(own: readonly FoundEntry[]): FoundEntry {
  const last = own.reduce((a, b) => (b.writtenAt > a.writtenAt ? b : a));
  const oneDay = own.every(({ date, dated }) => date === last.date && dated === last.dated);
  const labels = [...new Set(own.map(({ title }) => title.slice(0, title.lastIndexOf(', '))))];
  labels.sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  const more = labels.length - NAMED;
  return {
    ...last,
    ...(oneDay ? {} : { date: last.writtenAt.slice(0, 10), dated: false }),
    title: `${own.length} analyses${last.file?.name ? ` from ${last.file.name}` : ''}`,
    text: `Of ${labels.slice(0, NAMED).join(', ')}${more > 0 ? ` and ${more} more` : ''}`,
    specimen: null,
    count: own.length,
  };
}
