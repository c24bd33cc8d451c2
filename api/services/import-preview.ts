import type { Upload } from '../contract/import.ts';
import type { Preview } from '../contract/intake.ts';
import { type Caller, requireStudy } from './access.ts';
import { readInWorker } from './import-reader.ts';
import { rememberedChoices } from './import-remember.ts';
import { earlierImport } from './import-twice.ts';
import { openUpload } from './import-upload.ts';

/** How a file is understood, with its first analyses as they would be stored. Nothing is stored. */
export async function previewImport(caller: Caller, studyId: string, upload: Upload): Promise<Preview> {
  await requireStudy(caller, studyId);
  const { source, options, choices, sha256 } = await openUpload(upload);
  const remembered = await rememberedChoices(caller.db, studyId);
  const twice = await earlierImport(caller.db, studyId, sha256);
  for await (const message of readInWorker({ what: 'preview', source, options, choices, remembered }))
    if (message.is === 'preview') {
      const preview = message.preview as Preview;
      const counts = { ...preview.counts, warnings: preview.counts.warnings + twice.length };
      return { ...preview, counts, problems: [...twice, ...preview.problems] };
    }
  throw new Error('the reading thread ended without a preview');
}
