import { eq } from 'drizzle-orm';
import type { Database } from '../../db/connect.ts';
import { visibleSpecimen, visibleWareGroup } from '../../db/schema/schema.ts';
import type { SpecimenKind } from '../intake/types.ts';

export interface KnownSpecimen {
  readonly id: string;
  readonly kind: SpecimenKind;
  /** Ware group id. */
  group: string | null;
}

/** What the study holds already: specimens by label, ware groups by folded name. */
export interface Known {
  readonly specimens: Map<string, KnownSpecimen>;
  readonly groups: Map<string, string>;
}

export async function knownOf(db: Database, studyId: string): Promise<Known> {
  const [specimens, groups] = await Promise.all([
    db
      .select({
        id: visibleSpecimen.id,
        label: visibleSpecimen.label,
        kind: visibleSpecimen.kind,
        group: visibleSpecimen.wareGroupId,
      })
      .from(visibleSpecimen)
      .where(eq(visibleSpecimen.studyId, studyId)),
    db
      .select({ id: visibleWareGroup.id, name: visibleWareGroup.name })
      .from(visibleWareGroup)
      .where(eq(visibleWareGroup.studyId, studyId)),
  ]);
  return {
    specimens: new Map(specimens.map(({ label, ...known }) => [label, known])),
    groups: new Map(groups.map(({ id, name }) => [folded(name), id])),
  };
}

/** Ware groups are the same whatever the case of their names. */
export const folded = (name: string) => name.normalize('NFC').trim().toLowerCase();
