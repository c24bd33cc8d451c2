import { randomUUID } from 'node:crypto';
import type { Problem, SpecimenKind } from '../intake/types.ts';
import type { KnownSpecimen } from './import-known.ts';
import type { StagedDraft } from './import-task.ts';
import { naturalOrder } from './natural-order.ts';
import { techniqueCode } from './technique-names.ts';

/** What every row of an import carries. */
export interface Target {
  readonly studyId: string;
  readonly importId: string;
}
export interface NewSpecimen {
  readonly id: string;
  readonly label: string;
  readonly kind: SpecimenKind;
  readonly group: string | null;
}

export const GROUP_COLUMNS = ['id', 'study_id', 'import_id', 'name', 'position'];
export function groupRow(of: Target, group: { id: string; name: string; position: number }): string {
  return JSON.stringify({ ...group, study_id: of.studyId, import_id: of.importId });
}

export const SPECIMEN_COLUMNS = [
  'id',
  'study_id',
  'import_id',
  'label',
  'label_order',
  'kind',
  'ware_group_id',
];
export function specimenRow(of: Target, { id, label, kind, group }: NewSpecimen): string {
  return JSON.stringify({
    ...{ id, label, kind, label_order: naturalOrder(label), ware_group_id: group },
    ...{ study_id: of.studyId, import_id: of.importId },
  });
}

export const ANALYSIS_COLUMNS = [
  ...['id', 'study_id', 'import_id', 'specimen_id', 'measured', 'technique', 'laboratory', 'instrument'],
  ...['date', 'source', 'doi', 'spot', 'note', 'row', 'reported'],
];
export function analysisRow(of: Target, specimenId: string, draft: StagedDraft): string {
  const about = JSON.stringify({
    ...{ id: randomUUID(), study_id: of.studyId, import_id: of.importId, specimen_id: specimenId },
    ...{ measured: draft.measured, date: draft.date, row: draft.rows[0] ?? null },
    ...techniqueOf(draft.technique),
    laboratory: draft.laboratory ?? '',
    source: draft.source ?? '',
    doi: draft.doi ?? '',
    spot: draft.spot ?? '',
    note: draft.note ?? '',
  });
  return `${about.slice(0, -1)},"reported":${draft.reported}}`;
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
export function contradictions(draft: StagedDraft, known: KnownSpecimen, group: string | null): Problem[] {
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

function problem(draft: StagedDraft, code: string, said: string): Problem {
  const row = draft.rows[0] ?? null;
  return { severity: 'error', code: `specimen-${code}`, message: `Row ${row}: ${said}.`, row, column: null };
}
