import type { FigureWish } from '../../../../api/contract/figure.ts';
import type { FrozenKind, SharedOf } from '../../../../api/contract/shared.ts';
import { SHARED_TABLES } from '../../../../api/contract/table-names.ts';
import { Button } from '../../../parts/Button.tsx';
import { saveFile } from '../../../parts/CsvDownload.tsx';
import type { FiguresFrom } from '../FigureFiles.tsx';

/** Where the files of a share are to be had: of the service, or within the page itself where there is no service. */
export type FilesOfShare =
  | { readonly address: string; readonly talk: string }
  | {
      readonly tables: Readonly<Record<string, string>>;
      readonly draw: (file: string, look: FigureWish) => Promise<Blob>;
      readonly talk: string;
    };

export interface OfShare<Kind extends FrozenKind> {
  readonly shared: SharedOf<Kind>;
  readonly files: FilesOfShare;
}

export const figuresFrom = (files: FilesOfShare): FiguresFrom =>
  'address' in files ? { address: files.address } : { fetch: files.draw };

/** What is shared, to be taken away. */
export function DataFiles(at: OfShare<FrozenKind>) {
  const { shared, files } = at;
  return (
    <section className="stack" aria-labelledby="tables-heading">
      <h2 id="tables-heading">Data as files</h2>
      {shared.kind === 'placement' && <p className="faint">As kept, whatever is tried above.</p>}
      <div className="row">
        {'address' in files ? (
          <OfService address={files.address} shared={shared} />
        ) : (
          <OfPage tables={files.tables} />
        )}
        <Button
          look="quiet"
          onPress={() => saveFile('shared.json', JSON.stringify(shared, null, 1), 'application/json')}
        >
          Everything as JSON
        </Button>
      </div>
    </section>
  );
}

function OfService({ address, shared }: { readonly address: string; readonly shared: SharedOf<FrozenKind> }) {
  return (
    <>
      {shared.kind === 'placement' && shared.bundled && (
        <a className="button" href={`${address}/bundle.zip`} download>
          Everything as one zip
        </a>
      )}
      <a className="button" href={`${address}/page.html`} download>
        This page as one file
      </a>
      {SHARED_TABLES[shared.kind].map((table) => (
        <a key={table} className="button quiet" href={`${address}/tables/${table}`} download>
          {table}
        </a>
      ))}
    </>
  );
}

function OfPage(at: { readonly tables: Readonly<Record<string, string>> }) {
  return (
    <>
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
