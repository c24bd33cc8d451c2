import { Button } from './Button.tsx';
import { type Cell, toCsv } from './csv.ts';

/** Hands the reader a file made in the page. */
export function saveFile(name: string, content: BlobPart, type: string) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** Downloads a table as CSV; the rows are made only when asked for. */
export function CsvDownload(at: {
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: () => readonly (readonly Cell[])[];
  readonly label?: string;
}) {
  const save = () => saveFile(`${at.name}.csv`, toCsv(at.header, at.rows()), 'text/csv;charset=utf-8');
  return (
    <Button look="quiet" onPress={save}>
      {at.label ?? 'Download as CSV'}
    </Button>
  );
}
