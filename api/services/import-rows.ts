import { randomUUID } from 'node:crypto';
import type { analysis, specimen } from '../../db/schema/schema.ts';
import type { DraftAnalysis, Problem } from '../intake/types.ts';
import type { KnownSpecimen } from './import-known.ts';
import { naturalOrder } from './natural-order.ts';
import { techniqueCode } from './technique-names.ts';

export type NewSpecimenRow = typeof specimen.$inferInsert & { id: string };
export type NewAnalysisRow = typeof analysis.$inferInsert;

export function specimenRow(
  draft: DraftAnalysis,
  of: { studyId: string; importId: string; wareGroupId: string | null },
): NewSpecimenRow {
  const label = draft.specimen;
  return { ...of, id: randomUUID(), label, labelOrder: naturalOrder(label), kind: draft.kind ?? 'sherd' };
}

export function analysisRow(
  draft: DraftAnalysis,
  of: { studyId: string; importId: string; specimenId: string },
): NewAnalysisRow {
  const { measured, date, values: reported } = draft;
  return {
    ...of,
    ...{ measured, date, reported },
    ...techniqueOf(draft.technique),
    laboratory: draft.laboratory ?? '',
    source: draft.source ?? '',
    doi: draft.doi ?? '',
    spot: draft.spot ?? '',
    note: draft.note ?? '',
    row: draft.rows[0] ?? null,
  };
}

/** A technique nobody here knows is kept in the laboratory's own words. */
function techniqueOf(written: string | null): { technique: string | null; instrument: string } {
  if (written === null) return { technique: null, instrument: '' };
  const technique = techniqueCode(written);
  return technique === null
    ? { technique: 'other', instrument: `Technique as written: ${written}` }
    : { technique, instrument: '' };
}

/** Where a row says something else of its specimen than the study or an earlier row does. */
export function contradictions(draft: DraftAnalysis, known: KnownSpecimen, group: string | null): Problem[] {
  const found: Problem[] = [];
  if (known.group !== null && group !== null && known.group !== group)
    found.push(
      problem(
        draft,
        'group',
        `a specimen has one ware group; ${draft.specimen} is already in another than ${draft.group}`,
      ),
    );
  if (draft.kind !== null && draft.kind !== known.kind)
    found.push(
      problem(
        draft,
        'kind',
        `a specimen is of one kind; ${draft.specimen} is a ${known.kind} already, here a ${draft.kind}`,
      ),
    );
  return found;
}

function problem(draft: DraftAnalysis, code: string, said: string): Problem {
  const row = draft.rows[0] ?? null;
  return { severity: 'error', code: `specimen-${code}`, message: `Row ${row}: ${said}.`, row, column: null };
}
