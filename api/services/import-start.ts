import { dataImport } from '../../db/schema/schema.ts';
import type { Upload } from '../contract/import.ts';
import { type Caller, requireStudy } from './access.ts';
import { unlessTaken } from './failure.ts';
import { runImport } from './import-job.ts';
import { dropLeftovers } from './import-leftovers.ts';
import { rememberedChoices } from './import-remember.ts';
import { earlierImport } from './import-twice.ts';
import { openUpload } from './import-upload.ts';

/** Begins to bring in a file; the answer comes before the work is done. One import a study at a time. */
export async function startImport(caller: Caller, studyId: string, upload: Upload): Promise<{ id: string }> {
  const { db } = caller;
  await requireStudy(caller, studyId);
  const { source, options, choices, ...file } = await openUpload(upload);
  await dropLeftovers(db, { alone: false });
  const warnings = await earlierImport(db, studyId, file.sha256);
  const remembered = await rememberedChoices(db, studyId);
  const [row] = await unlessTaken(
    db
      .insert(dataImport)
      .values({ ...file, studyId, status: 'running' })
      .returning({ id: dataImport.id }),
    'a study takes in one file at a time; another is on its way. Wait for it, or stop it.',
  );
  const task = { what: 'import', source, options, choices, remembered } as const;
  runImport(db, task, { studyId, importId: row!.id, warnings });
  return row!;
}
