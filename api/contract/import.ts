import { z } from 'zod';
import { id, instant } from './common.ts';
import { importProblem } from './intake.ts';

/** The fields of a multipart upload: a file, or the text of a pasted table. */
export const upload = z
  .object({
    file: z.instanceof(File).optional().meta({ type: 'string', format: 'binary' }),
    text: z.string().optional(),
    /** Which sheet of a workbook; the first visible one otherwise. */
    sheet: z.string().max(200).optional(),
    encoding: z.string().max(40).optional(),
    /** JSON of `ImportChoices` as the preview gave them, or of those to be changed; absent: as understood. */
    choices: z.string().max(2_000_000).optional(),
  })
  .meta({ id: 'Upload' });

export const importOutcome = z.object({
  message: z.string(),
  problems: z.array(importProblem),
});
export const dataImport = z
  .object({
    id,
    status: z.enum(['running', 'done', 'failed', 'stopped']),
    fileName: z.string(),
    sha256: z.string(),
    bytes: z.number().int(),
    rowsRead: z.number().int(),
    /** Null until the file has been opened. */
    rowsTotal: z.number().int().nullable(),
    analyses: z.number().int(),
    specimens: z.number().int(),
    groups: z.number().int(),
    /** What came of it: a sentence, and what is wrong or worth a look, by row and column. Null while it runs. */
    outcome: importOutcome.nullable(),
    createdAt: instant,
    finishedAt: instant.nullable(),
  })
  .meta({ id: 'Import' });
export const imports = z.array(dataImport);
export const startedImport = z.object({ id }).meta({ id: 'StartedImport' });

export type Upload = z.infer<typeof upload>;
export type DataImport = z.infer<typeof dataImport>;
export type ImportOutcome = z.infer<typeof importOutcome>;
