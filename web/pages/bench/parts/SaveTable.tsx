import { CsvDownload } from '../../../parts/CsvDownload.tsx';
import type { FileTable } from '../tables.ts';

/** A bench table as a file. */
export function SaveTable(at: { readonly name: string; readonly table: FileTable; readonly label?: string }) {
  return (
    <div className="no-print">
      <CsvDownload
        name={at.name}
        header={at.table.header}
        rows={() => at.table.rows}
        {...(at.label ? { label: at.label } : {})}
      />
    </div>
  );
}
