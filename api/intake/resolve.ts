import type { Unit } from '../domain/composition/types.ts';
import { MEANING } from './column-roles.ts';
import { type Draft, draftColumns } from './columns.ts';
import { HOLDS_VALUES } from './roles.ts';
import type { Structure } from './structure.ts';
import type { ColumnRole } from './types.ts';
import { headingOf, kindOf, measuredOf } from './words.ts';

/** Columns read together: one for each role, each uncertainty beside its analyte. */
export function resolveColumns(structure: Structure, count: number): Draft[] {
  const drafts = draftColumns(structure, count);
  dropUnconfirmed(drafts);
  keepOneOfEach(drafts);
  if (structure.layout === 'long') keepOneValue(drafts);
  else {
    keepMassFractions(drafts);
    attachStatistics(drafts);
  }
  nameSpecimens(drafts, structure);
  return drafts;
}

/** “Zone” or “Type” may head anything: such a column counts only when its cells are words we know. */
function dropUnconfirmed(drafts: Draft[]): void {
  const known = { measured: measuredOf, kind: kindOf } as const;
  for (const draft of drafts) {
    if (draft.role !== 'measured' && draft.role !== 'kind') continue;
    const read = known[draft.role];
    if (/^(measured|kind)\b/i.test(draft.header) || draft.cells.every((c) => read(c) !== null)) continue;
    leave(draft, `Its cells are no words for ${MEANING[draft.role]}; the column is left out.`, false);
  }
}

const ONCE: readonly ColumnRole[] = [
  ...([
    'specimen',
    'group',
    'spot',
    'kind',
    'measured',
    'technique',
    'laboratory',
    'date',
    'source',
    'doi',
  ] as const),
  ...(['analyteName', 'unit', 'total', 'loi'] as const),
];

function keepOneOfEach(drafts: Draft[]): void {
  for (const role of ONCE) {
    const same = drafts.filter((d) => d.role === role);
    if (same.length < 2 || ((role === 'total' || role === 'loi') && sameUnits(same))) continue;
    const best = same.reduce((a, b) => (rankOf(b) < rankOf(a) ? b : a));
    for (const d of same)
      if (d !== best)
        leave(d, `${capital(best.place)} (${best.header}) already holds ${MEANING[role]}.`, true);
  }
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Two totals in one unit are two headings the same: a person must say which. */
function sameUnits(drafts: readonly Draft[]): boolean {
  return new Set(drafts.map((d) => d.unit)).size === 1;
}

function rankOf(draft: Draft): number {
  if (draft.unit !== null) return UNIT_ORDER.indexOf(draft.unit);
  return headingOf(draft.header)?.rank ?? 1_000;
}

const UNIT_ORDER: readonly Unit[] = ['wt%', 'ppm', 'ppb', 'at%'];

function keepOneValue(drafts: Draft[]): void {
  const values = drafts.filter((d) => d.role === 'value');
  const best = values.reduce<Draft | null>((a, b) => (a === null || rankOf(b) < rankOf(a) ? b : a), null);
  for (const d of values)
    if (d !== best) leave(d, `${capital(best!.place)} (${best!.header}) already holds the values.`, true);
}

/** The same analyte as wt% and again as at%: mass fractions are used, atoms left out. */
function keepMassFractions(drafts: Draft[]): void {
  const analytes = drafts.filter((d) => d.role === 'analyte');
  for (const draft of analytes) {
    const twin = analytes.find((d) => d !== draft && d.analyte === draft.analyte && d.unit !== 'at%');
    if (draft.unit === 'at%' && twin)
      leave(draft, `${draft.analyte} is also given by mass, in ${twin.place}; atom % is left out.`, true);
  }
}

/** An uncertainty or limit belongs to the analyte it names, else to the nearest one on its left. */
function attachStatistics(drafts: Draft[]): void {
  const holders = drafts.filter((d) => HOLDS_VALUES.includes(d.role));
  for (const draft of drafts) {
    if (draft.role !== 'uncertainty' && draft.role !== 'limit') continue;
    const left = holders.filter((d) => d.index < draft.index).at(-1);
    const named = draft.analyte === null ? null : nearest(holders, draft);
    const holder = draft.analyte === null ? left : named;
    if (!holder) {
      const dropped = droppedFor(drafts, draft);
      leave(
        draft,
        dropped ?? 'No analyte stands beside or before it; the column is left out.',
        dropped !== null,
      );
      continue;
    }
    draft.of = holder.index;
    draft.why += ` It belongs to ${holder.analyte} in ${holder.place}.`;
    if (draft.unit === holder.unit) draft.unit = null;
    draft.analyte = null;
  }
}

function nearest(holders: readonly Draft[], draft: Draft): Draft | null {
  const same = holders.filter((d) => d.analyte === draft.analyte);
  const distance = (d: Draft) => Math.abs(d.index - draft.index) + (d.index > draft.index ? 0.5 : 0);
  return same.reduce<Draft | null>((a, b) => (a === null || distance(b) < distance(a) ? b : a), null);
}

function droppedFor(drafts: readonly Draft[], draft: Draft): string | null {
  const before = drafts.filter((d) => d.index < draft.index && d.reading.analyte !== null).at(-1);
  return before?.role === 'ignore' ? `The analyte it belongs to, in ${before.place}, is left out.` : null;
}

/** Without a heading for specimens, the first column of words before the figures is the likeliest. */
function nameSpecimens(drafts: Draft[], structure: Structure): void {
  if (drafts.some((d) => d.role === 'specimen')) return;
  const named = structure.layout === 'long' ? undefined : drafts.find((d) => d.role === 'analyteName');
  const first = drafts.findIndex((d) => HOLDS_VALUES.includes(d.role) || d.role === 'analyteName');
  const free = drafts
    .slice(0, Math.max(first, 0))
    .filter((d) => d.role === 'ignore' && d.reading.analyte === null);
  const found = free.find((d) => d.cells.length > 0);
  if (named) take(named, 'The column beside the analytes names the analyses.', true);
  else if (found)
    take(found, 'No heading names the specimens; this is the first column before the figures.', false);
}

function take(draft: Draft, why: string, sure: boolean): void {
  Object.assign(draft, { role: 'specimen', why, sure });
}

function leave(draft: Draft, why: string, sure: boolean): void {
  Object.assign(draft, { role: 'ignore', unit: null, of: null, why, sure });
}
