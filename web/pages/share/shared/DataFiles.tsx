import type { SharedOf } from '../../../../api/contract/shared.ts';
import { Button } from '../../../parts/Button.tsx';
import { saveFile } from '../../../parts/CsvDownload.tsx';

const TABLES = ['placements', 'contributions', 'scores', 'loadings', 'members', 'excluded'] as const;

/** Where the files of a share are to be had: of the service, or within the page itself where there is no service. */
export type FilesOfShare =
  | { readonly address: string; readonly talk: string }
  | { readonly tables: Readonly<Record<string, string>>; readonly talk: string };

/** What is shared, to be taken away. */
export function DataFiles(at: { readonly shared: SharedOf<'placement'>; readonly files: FilesOfShare }) {
  const { shared, files } = at;
  return (
    <section className="stack" aria-labelledby="tables-heading">
      <h2 id="tables-heading">Data as files</h2>
      <p className="faint">As kept, whatever is tried above.</p>
      <div className="row">
        {'address' in files ? (
          <OfService address={files.address} bundled={shared.bundled} />
        ) : (
          <OfPage shared={shared} tables={files.tables} />
        )}
      </div>
    </section>
  );
}

function OfService({ address, bundled }: { readonly address: string; readonly bundled: boolean }) {
  return (
    <>
      {bundled && (
        <a className="button" href={`${address}/bundle.zip`} download>
          Everything as one zip
        </a>
      )}
      <a className="button" href={`${address}/page.html`} download>
        This page as one file
      </a>
      {TABLES.map((table) => (
        <a key={table} className="button quiet" href={`${address}/tables/${table}`} download>
          {table}
        </a>
      ))}
    </>
  );
}

function OfPage(at: {
  readonly shared: SharedOf<'placement'>;
  readonly tables: Readonly<Record<string, string>>;
}) {
  const whole = () => saveFile('shared.json', JSON.stringify(at.shared, null, 1), 'application/json');
  return (
    <>
      <Button onPress={whole}>Everything as JSON</Button>
      {Object.entries(at.tables).map(([name, csv]) => (
        <Button
          key={name}
          look="quiet"
          onPress={() => saveFile(`${name}.csv`, csv, 'text/csv;charset=utf-8')}
        >
          {name}
        </Button>
      ))}
    </>
  );
}
