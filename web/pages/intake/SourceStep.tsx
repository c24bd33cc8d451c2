import { useState } from 'react';
import { DropZone, type FileDropItem, FileTrigger } from 'react-aria-components';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { useDraft } from '../../parts/useDraft.ts';
import type { Upload } from '../../queries/imports.ts';
import { NO_UPLOAD } from './useUpload.ts';

const TYPES = [
  '.csv',
  '.tsv',
  '.txt',
  '.xlsx',
  '.xlsm',
  'text/csv',
  'text/tab-separated-values',
  'text/plain',
];

/** Where the numbers come from: a file, or a table copied from a spreadsheet or a paper. */
export function SourceStep(at: { readonly study: string; readonly onSource: (upload: Upload) => void }) {
  const pasted = useDraft(`paste.${at.study}`, '');
  const [wrong, setWrong] = useState<string | null>(null);
  const take = (file: File | undefined) => file && at.onSource({ ...NO_UPLOAD, file });
  const readPasted = () => {
    if (!pasted.value.trim())
      return setWrong('Paste a table first: a row of column names, then one row a specimen.');
    at.onSource({ ...NO_UPLOAD, text: pasted.value });
    pasted.clear();
  };
  return (
    <div className="columns">
      <section className="stack" aria-labelledby="file">
        <h2 id="file">A file</h2>
        <DropZone
          className="drop"
          aria-label="Drop a file here"
          getDropOperation={(types) => (types.has('text/plain') && !types.has('Files') ? 'cancel' : 'copy')}
          onDrop={async ({ items }) => {
            const dropped = items.find((item): item is FileDropItem => item.kind === 'file');
            if (dropped) take(await dropped.getFile());
          }}
        >
          <p>Drop a CSV, TSV or Excel file here, or</p>
          <FileTrigger acceptedFileTypes={TYPES} onSelect={(files) => take(files?.[0])}>
            <Button look="primary">Choose a file</Button>
          </FileTrigger>
          <p className="faint small">
            One row a specimen or spot, or one row a value. Elements or oxides; wt%, ppm or at%; decimal
            points or commas; &lt;0.01, bdl and n.d. are understood.
          </p>
        </DropZone>
      </section>
      <section className="stack" aria-labelledby="paste">
        <h2 id="paste">Or a table to paste</h2>
        <Field
          label="Table"
          lines={7}
          value={pasted.value}
          onChange={(text) => {
            pasted.set(text);
            setWrong(null);
          }}
          hint="With its row of column names, as copied from a spreadsheet or typed with commas"
        />
        {wrong && (
          <Notice kind="error">
            <p>{wrong}</p>
          </Notice>
        )}
        <div>
          <Button onPress={readPasted}>Read the table</Button>
        </div>
      </section>
    </div>
  );
}
