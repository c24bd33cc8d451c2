import { randomUUID } from 'node:crypto';
import { sql } from 'drizzle-orm';
import type { Database, Transaction } from '../../db/connect.ts';
import { analysis, specimen, wareGroup } from '../../db/schema/schema.ts';
import type { Problem } from '../intake/types.ts';
import { folded, type Known, knownOf } from './import-known.ts';
import {
  ANALYSIS_COLUMNS,
  analysisRow,
  contradictions,
  GROUP_COLUMNS,
  groupRow,
  SPECIMEN_COLUMNS,
  specimenRow,
  type Target,
} from './import-rows.ts';
import type { StagedDraft } from './import-task.ts';
import { insertJson } from './insert-json.ts';

export interface Written {
  analyses: number;
  specimens: number;
  groups: number;
}

/**
 * Writes what a file brings under the import's id, where nobody sees it yet. Specimens are found by label, ware
 * groups by name; what contradicts the study, or the file's own earlier rows, comes back as problems.
 */
export class ImportWriter {
  readonly written: Written = { analyses: 0, specimens: 0, groups: 0 };
  private readonly db: Database;
  private readonly target: Target;
  private readonly known: Known;
  /** Specimens that had no ware group, and the one the file gives them. */
  private readonly joining = new Map<string, string>();
  private readonly newGroups: string[] = [];
  private readonly newSpecimens: string[] = [];

  private constructor(db: Database, target: Target, known: Known) {
    this.db = db;
    this.target = target;
    this.known = known;
  }

  static async open(db: Database, target: Target): Promise<ImportWriter> {
    return new ImportWriter(db, target, await knownOf(db, target.studyId));
  }

  async write(drafts: readonly StagedDraft[]): Promise<Problem[]> {
    const { db, written } = this;
    const problems: Problem[] = [];
    const rows = drafts.map((draft) => analysisRow(this.target, this.specimenOf(draft, problems), draft));
    const groups = { columns: GROUP_COLUMNS, rows: this.newGroups.splice(0) };
    const specimens = { columns: SPECIMEN_COLUMNS, rows: this.newSpecimens.splice(0) };
    written.groups += await insertJson(db, wareGroup, groups);
    written.specimens += await insertJson(db, specimen, specimens);
    written.analyses += await insertJson(db, analysis, { columns: ANALYSIS_COLUMNS, rows });
    return problems;
  }

  /** Gives ware groups to specimens that had none; part of the transaction that publishes. */
  async join(tx: Transaction): Promise<void> {
    if (this.joining.size === 0) return;
    const pairs = JSON.stringify([...this.joining].map(([id, group]) => ({ id, group })));
    await tx.execute(sql`
      update specimen set ware_group_id = pair."group", updated_at = now()
      from json_to_recordset(${pairs}::json) as pair(id uuid, "group" uuid)
      where specimen.id = pair.id and specimen.ware_group_id is null`);
  }

  private groupOf(name: string | null): string | null {
    if (name === null) return null;
    const { groups } = this.known;
    const id = groups.get(folded(name)) ?? randomUUID();
    if (!groups.has(folded(name)))
      this.newGroups.push(groupRow(this.target, { id, name, position: groups.size }));
    groups.set(folded(name), id);
    return id;
  }

  private specimenOf(draft: StagedDraft, problems: Problem[]): string {
    const group = this.groupOf(draft.group);
    const known = this.known.specimens.get(draft.specimen);
    if (known === undefined) return this.addSpecimen(draft, group);
    problems.push(...contradictions(draft, known, group));
    if (known.group === null && group !== null) {
      known.group = group;
      this.joining.set(known.id, group);
    }
    return known.id;
  }

  private addSpecimen(draft: StagedDraft, group: string | null): string {
    const row = { id: randomUUID(), label: draft.specimen, kind: draft.kind ?? 'sherd', group };
    this.known.specimens.set(row.label, { id: row.id, kind: row.kind, group });
    this.newSpecimens.push(specimenRow(this.target, row));
    return row.id;
  }
}
