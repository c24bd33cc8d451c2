import { MEASURED, type Measured } from '../domain/composition/types.ts';
import { readDate } from './date.ts';
import { MAX_LABEL_CHARACTERS, MAX_NOTE_CHARACTERS } from './limits.ts';
import { type RowContext, shorten } from './row-context.ts';
import { type CleanText, cleanText } from './text.ts';
import type { ColumnRole, Defaults, DraftAnalysis, SpecimenKind } from './types.ts';
import { kindOf, measuredOf } from './words.ts';

/** Everything about an analysis but its figures. */
export type Facts = Omit<DraftAnalysis, 'rows' | 'values'>;

/** Reads the words of a row; null where one of them makes the row unusable (said in the log). */
export function readFacts(context: RowContext, specimen: string): Facts | null {
  const { defaults } = context.plan.choices;
  const measured = measuredIn(context, defaults.measured);
  const kind = kindIn(context, defaults.kind);
  if (measured === null || kind === false) return null;
  const { day, vague } = dateIn(context, defaults.date);
  const { doi, odd } = doiIn(context, defaults.doi);
  const note = [
    words(context, 'note', MAX_NOTE_CHARACTERS),
    vague && `Date as given: ${vague}`,
    odd && `DOI as given: ${odd}`,
  ];
  return {
    ...{ specimen, measured, kind, date: day, doi },
    group: words(context, 'group') ?? defaults.group,
    spot: words(context, 'spot'),
    technique: words(context, 'technique') ?? defaults.technique,
    laboratory: words(context, 'laboratory') ?? defaults.laboratory,
    source: words(context, 'source', MAX_NOTE_CHARACTERS) ?? defaults.source,
    note: note.filter(Boolean).join('; ') || null,
  };
}

/** The specimen's name in this row, cleaned; empty where there is none. */
export function specimenIn(context: RowContext): string {
  return words(context, 'specimen') ?? context.plan.choices.defaults.specimen ?? '';
}

/** Words of the columns of a role, joined; null where all are empty. */
function words(context: RowContext, role: ColumnRole, most = MAX_LABEL_CHARACTERS): string | null {
  const indices = context.plan.words.get(role);
  if (indices === undefined) return null;
  const texts = indices.map((index) => cleanCell(context, index, most)).filter((text) => text !== '');
  return texts.length === 0 ? null : texts.join('; ').slice(0, most);
}

function cleanCell({ row, log }: RowContext, column: number, most: number): string {
  const raw = row.cells[column] ?? '';
  if (raw === '') return '';
  const clean = cleanText(raw);
  const at = { row: row.number, column };
  if (clean.stripped) log.warn('invisible', 'names are plain text; invisible characters were taken out', at);
  if (clean.suspicious !== null)
    log.warn(
      clean.suspicious,
      `${SUSPICION[clean.suspicious]}; “${shorten(clean.text)}” is kept as text`,
      at,
    );
  if (clean.text.length <= most) return clean.text;
  log.warn(
    'long',
    `a name or note may have ${most} characters; ${clean.text.length} were found and the rest is cut off`,
    at,
  );
  return clean.text.slice(0, most);
}

const SUSPICION: Readonly<Record<NonNullable<CleanText['suspicious']>, string>> = {
  markup: 'names are plain text, without HTML',
  formula: 'names are plain text; this one begins like a formula',
};

function measuredIn(context: RowContext, fallback: Measured | null): Measured | null {
  const text = words(context, 'measured');
  const found = text === null ? fallback : measuredOf(text);
  if (found === null)
    report(context, 'measured', `what was measured must be ${MEASURED.join(', ')}; ${told(text)}`);
  return found;
}

/** False stands for a word that is no kind: null means that nothing is said. */
function kindIn(context: RowContext, fallback: SpecimenKind | null): SpecimenKind | null | false {
  const text = words(context, 'kind');
  if (text === null) return fallback;
  const found = kindOf(text);
  if (found === null)
    report(context, 'kind', `the kind of a specimen must be sherd, replica or material; ${told(text)}`);
  return found ?? false;
}

const told = (text: string | null) => (text === null ? 'nothing is said' : `found “${shorten(text)}”`);

function report({ row, plan, log }: RowContext, role: ColumnRole, says: string): void {
  const column = plan.words.get(role)?.[0];
  log.error(role, says, column === undefined ? { row: row.number } : { row: row.number, column });
}

function dateIn(context: RowContext, fallback: Defaults['date']) {
  const text = words(context, 'date') ?? fallback;
  if (text === null) return { day: null, vague: null };
  const day = readDate(text, context.plan.choices.dateOrder);
  if (day !== null) return { day, vague: null };
  warn(
    context,
    'date',
    `a date names one day, as 2024-05-31; “${shorten(text)}” does not and goes into the note`,
  );
  return { day: null, vague: text };
}

function doiIn(context: RowContext, fallback: Defaults['doi']) {
  const text = words(context, 'doi', MAX_NOTE_CHARACTERS) ?? fallback;
  if (text === null) return { doi: null, odd: null };
  const doi = text.replace(/^(?:https?:\/\/(?:dx\.)?doi\.org\/|doi:\s*)/i, '');
  if (/^10\.\d{4,9}\/\S+$/.test(doi) && doi.length <= 300) return { doi, odd: null };
  warn(
    context,
    'doi',
    `a DOI begins with 10. and has a slash, as 10.1515/pac-2019-0603; “${shorten(text)}” goes into the note`,
  );
  return { doi: null, odd: text };
}

function warn({ row, plan, log }: RowContext, role: ColumnRole, says: string): void {
  const column = plan.words.get(role)?.[0];
  log.warn(role, says, column === undefined ? { row: row.number } : { row: row.number, column });
}
