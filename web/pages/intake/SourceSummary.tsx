import type { Preview } from '../../../api/contract/intake.ts';
import { count } from '../../parts/numbers.ts';
import { Select } from '../../parts/Select.tsx';
import type { Upload } from '../../queries/imports.ts';

const KINDS = { csv: 'CSV', tsv: 'TSV', xlsx: 'Excel workbook', pasted: 'pasted table' } as const;
const DELIMITERS: Record<string, string> = { ',': 'commas', ';': 'semicolons', '\t': 'tabs', '|': 'bars' };

/** Which file this is, and what kind of thing it turned out to be. */
export function SourceSummary(at: {
  readonly preview: Preview;
  readonly upload: Upload;
  readonly onSheet: (sheet: string) => void;
}) {
  const { preview, upload } = at;
  const facts = [
    KINDS[preview.kind],
    count(preview.rowCount, 'row'),
    count(preview.columnCount, 'column'),
    preview.delimiter && `split at ${DELIMITERS[preview.delimiter] ?? preview.delimiter}`,
    preview.encoding,
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
          onChange={at.onSheet}
        />
      )}
    </div>
  );
}
