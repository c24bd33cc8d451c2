import { randomUUID } from 'node:crypto';
import type { Transaction } from '../../db/connect.ts';
import { analysis, specimen, study, wareGroup } from '../../db/schema/schema.ts';
import type { Study } from '../contract/study.ts';
import type { Caller } from './access.ts';
import { demoStudy } from './demo/data.ts';
import { insertBench } from './demo-bench.ts';
import { insertTrial } from './demo-trial.ts';
import type { DemoStudy } from './demo-types.ts';
import { naturalOrder } from './natural-order.ts';
import { readStudy } from './studies.ts';

/** Makes the demo study: invented data in an invented place. It is deleted like any other. */
export async function loadDemo(caller: Caller): Promise<Study> {
  const id = await caller.db.transaction((tx) => insertDemo(tx, demoStudy()));
  return readStudy(caller, id);
}

async function insertDemo(tx: Transaction, demo: DemoStudy): Promise<string> {
  const studyId = randomUUID();
  await tx.insert(study).values({ ...demo.study, id: studyId, demo: true });
  const groupIds = new Map(demo.groups.map(({ name }) => [name, randomUUID()]));
  const specimenIds = new Map(demo.specimens.map(({ label }) => [label, randomUUID()]));
  await tx
    .insert(wareGroup)
    .values(
      demo.groups.map((group, position) => ({ ...group, studyId, position, id: groupIds.get(group.name)! })),
    );
  await tx.insert(specimen).values(
    demo.specimens.map(({ group, ...one }) => ({
      ...one,
      studyId,
      id: specimenIds.get(one.label)!,
      labelOrder: naturalOrder(one.label),
      catalogueOrder: naturalOrder(one.catalogueNumber),
      wareGroupId: group === null ? null : (groupIds.get(group) ?? null),
    })),
  );
  await tx
    .insert(analysis)
    .values(demo.analyses.map((one) => ({ ...one, studyId, specimenId: specimenIds.get(one.specimen)! })));
  await insertBench(tx, studyId, specimenIds);
  await insertTrial(tx, studyId, specimenIds);
  return studyId;
}
