import type { Comparison } from '../../../../api/contract/placement.ts';
import type { FallenOut } from '../../../../api/domain/reference/types.ts';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Fold } from '../panel/Fold.tsx';
import { fallenOutReason, showNumber } from '../words.ts';
import { column, DownloadableTable, type TableColumn } from './DownloadableTable.tsx';
import { LoadingsTable } from './LoadingsTable.tsx';
import { SpreadsTable } from './SpreadsTable.tsx';

interface Substitute {
  readonly key: string;
  readonly label: string;
  readonly oxide: string;
  readonly limit: number;
  readonly by: number;
}
const right = { numeric: true } as const;
const SUBSTITUTES: TableColumn<Substitute>[] = [
  column('label', 'Specimen', (row) => row.label, { header: true }),
  column('oxide', 'Oxide', (row) => row.oxide, { cell: (row) => showAnalyte(row.oxide) }),
  column('limit', 'Detection limit, wt%', (row) => row.limit, {
    ...right,
    cell: (row) => showNumber(row.limit),
  }),
  column('by', 'Value put in its place, wt%', (row) => row.by, {
    ...right,
    cell: (row) => showNumber(row.by),
  }),
];
const FALLEN: TableColumn<FallenOut>[] = [
  column('oxide', 'Oxide', (row) => row.oxide, { header: true, cell: (row) => showAnalyte(row.oxide) }),
  column('because', 'Why', (row) => row.because, { cell: (row) => fallenOutReason(row) || 'not chosen' }),
];
const FALLEN_IN_FILE = [
  ...FALLEN,
  column<FallenOut>('specimens', 'Specimens', (row) => row.specimens.join('; ')),
];

/** Everything the numbers rest on, a step behind: what was put in for what, and who stayed out and why. */
export function BehindTables({ result }: { readonly result: Comparison }) {
  const { model, excluded, remarks } = result;
  const labels = new Map([...model.members, ...result.placements].map(({ id, label }) => [id, label]));
  const substitutes = [
    ...model.replaced.map((one) => ({ ...one, label: labels.get(one.sample) ?? one.sample })),
    ...result.placements.flatMap(({ label, replaced }) => replaced.map((one) => ({ ...one, label }))),
  ].map((one) => ({ ...one, key: `${one.label} ${one.oxide}` }));
  return (
    <div className="folds">
      <Fold title="Principal components" gist={`${model.pca.eigenvalues.length} components`}>
        <LoadingsTable model={model} />
      </Fold>
      <Fold title="How each group’s spread was measured" gist={`${model.groups.length} groups`}>
        <SpreadsTable model={model} />
      </Fold>
      <Fold
        title="Values below detection"
        gist={substitutes.length === 0 ? 'none' : `${substitutes.length} replaced`}
      >
        {substitutes.length === 0 ? (
          <p>Every value compared was detected.</p>
        ) : (
          <DownloadableTable
            label="Values below detection"
            file="values below detection"
            columns={SUBSTITUTES}
            rows={substitutes}
            rowKey={(row) => row.key}
          />
        )}
      </Fold>
      <Fold
        title="Oxides not compared"
        gist={model.fallenOut.length === 0 ? 'none' : String(model.fallenOut.length)}
      >
        {model.fallenOut.length === 0 ? (
          <p>Every oxide that was measured is compared.</p>
        ) : (
          <DownloadableTable
            label="Oxides not compared"
            file="oxides not compared"
            columns={FALLEN}
            fileColumns={FALLEN_IN_FILE}
            rows={model.fallenOut}
            rowKey={(row) => row.oxide}
          />
        )}
      </Fold>
      <Notes
        title="Specimens left out"
        file="specimens left out"
        rows={excluded.map(({ label, reason }) => ({ label, message: reason }))}
        none="Everything that was asked for is in."
      />
      <Notes title="Worth a look" file="worth a look" rows={remarks} none="Nothing stood out." />
    </div>
  );
}

interface Remark {
  readonly label: string;
  readonly message: string;
}
const REMARKS: TableColumn<Remark>[] = [
  column('label', 'Specimen', (row) => row.label, { header: true }),
  column('message', 'What', (row) => row.message),
];
function Notes(at: {
  readonly title: string;
  readonly file: string;
  readonly rows: readonly Remark[];
  readonly none: string;
}) {
  const several = [...new Map(at.rows.map((row) => [`${row.label} ${row.message}`, row])).entries()];
  return (
    <Fold title={at.title} gist={several.length === 0 ? 'none' : String(several.length)}>
      {several.length === 0 ? (
        <p>{at.none}</p>
      ) : (
        <DownloadableTable
          label={at.title}
          file={at.file}
          columns={REMARKS}
          rows={several.map(([, row]) => row)}
          rowKey={(row) => `${row.label} ${row.message}`}
        />
      )}
    </Fold>
  );
}
