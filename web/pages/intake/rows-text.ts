/** Row numbers as a person writes them, `9, 12-14`; null when something else stands among them. */
export function readRows(text: string): number[] | null {
  const parts = text.split(/[,;\s]+/).filter(Boolean);
  const rows: number[] = [];
  for (const part of parts) {
    const [, from, to] = /^(\d+)(?:[-–](\d+))?$/.exec(part) ?? [];
    if (from === undefined) return null;
    const first = Number(from);
    const last = Number(to ?? from);
    if (first < 1 || last < first || last - first > 10_000) return null;
    for (let row = first; row <= last; row++) rows.push(row);
  }
  return [...new Set(rows)].toSorted((a, b) => a - b);
}

/** The same as text again, runs of rows drawn together. */
export function showRows(rows: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const row of rows.toSorted((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run && row === run[1] + 1) run[1] = row;
    else runs.push([row, row]);
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ');
}
