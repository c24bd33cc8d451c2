import type { Preview } from '../../../api/contract/intake.ts';
import { count } from '../../parts/numbers.ts';
import { Select } from '../../parts/Select.tsx';
import type { Upload } from '../../queries/imports.ts';

const KINDS = { csv: 'CSV', tsv: 'TSV', xlsx: 'Excel workbook', pasted: 'pasted table' } as const;
const DELIMITERS: Record<string, string> = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' };

const ENCODINGS = ['utf-8', 'utf-16le', 'windows-1252', 'windows-1250', 'windows-1253', 'macintosh'];

/** What the file was found to be written in, and what it may be instead. */
function encodings(found: string) {
  const known = ENCODINGS.some((one) => one.toLowerCase() === found.toLowerCase());
  return (known ? ENCODINGS : [found, ...ENCODINGS])
    .map((one) => (one.toLowerCase() === found.toLowerCase() ? found : one))
    .map((id) => ({ id, label: id }));
}

/** Which file this is, and what kind of thing it turned out to be. */
export function SourceSummary(at: {
  readonly preview: Preview;
  readonly upload: Upload;
  readonly onChange: (upload: Upload) => void;
}) {
  const { preview, upload } = at;
  const facts = [
    KINDS[preview.kind],
    count(preview.rowCount, 'row'),
    count(preview.columnCount, 'column'),
    preview.delimiter && `split at ${DELIMITERS[preview.delimiter] ?? preview.delimiter}`,
  ];
  return (
    <div className="section-head">
      <div>
        <h2>{upload.file?.name ?? 'Pasted table'}</h2>
        <p className="faint">{facts.filter(Boolean).join(', ')}</p>
      </div>
      {preview.sheets.length > 1 && (
        <Select
          label="Sheet"
          choices={preview.sheets.map((sheet) => ({ id: sheet, label: sheet }))}
          value={preview.sheet}
          onChange={(sheet) => at.onChange({ ...upload, sheet, asked: {} })}
        />
      )}
      {preview.encoding && upload.file && (
        <Select
          label="Letters as"
          choices={encodings(preview.encoding)}
          value={upload.encoding ?? preview.encoding}
          onChange={(encoding) => at.onChange({ ...upload, encoding })}
        />
      )}
    </div>
  );
}
