import type { RecastAnswer, RecastRequest } from '../../../../api/contract/slip-layer.ts';
import type { SlipSource } from '../../../../api/domain/slip/slip-source.ts';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { showAnalyte, showSignificant, showUncertainty } from '../../../parts/numbers.ts';
import { useRecast } from '../../../queries/slip.ts';
import { column, DownloadableTable, type TableColumn } from '../tables/DownloadableTable.tsx';
import { slipRef } from './refs.ts';
import type { SlipSectionProps } from './section-props.ts';
import { useNow } from './useSlip.ts';

type Clay = RecastAnswer['clays'][number];
type Row = Clay['rows'][number];
const right = { numeric: true } as const;
const COLUMNS: TableColumn<Row>[] = [
  column('oxide', 'Oxide', (row) => row.oxide, { header: true, cell: (row) => showAnalyte(row.oxide) }),
  column('paint', 'Paint recast, wt%', (row) => row.paint, {
    ...right,
    cell: (row) => showSignificant(row.paint),
  }),
  column('clay', 'Clay recast, wt%', (row) => row.clay, {
    ...right,
    cell: (row) => showSignificant(row.clay),
  }),
  column('ratio', 'Paint over clay', (row) => row.ratio, {
    ...right,
    cell: (row) =>
      `${showSignificant(row.ratio)}${row.sigma === null ? '' : ` ± ${showUncertainty(row.sigma)}`}`,
  }),
];
const FILE = [...COLUMNS, column<Row>('sigma', '± (one standard uncertainty)', (row) => row.sigma)];

/** Lead and what was added taken out, the rest set beside body and slip. */
export function RecastSection(at: SlipSectionProps) {
  const { slip, replica } = at;
  const source = useNow(slip, replica.id, (now) => now?.choice?.source);
  const clays = claysOf(at, source);
  const found = useRecast(slip.study, clays.length > 0 ? requestOf(at, clays) : null);
  if (clays.length === 0)
    return (
      <p className="faint">
        There is no body or slip to compare with: choose a slip above, or enter an analysis of the body.
      </p>
    );
  return (
    <>
      <p className="faint">
        A lead compound used alone takes up the clay as it is: without lead and added ores, what is left keeps
        the clay’s proportions. Lead with silica leaves more silica; another clay leaves other proportions.
      </p>
      <ErrorNotice error={found.error} title="The paint cannot be recast" />
      {found.data?.clays.map((clay) => (
        <ClayView key={clay.clay} clay={clay as Clay} paint={replica.label} />
      ))}
    </>
  );
}

function claysOf(
  { slip, replica }: SlipSectionProps,
  source: SlipSource | undefined,
): RecastRequest['clays'] {
  const body = slip.bodies.some(({ id }) => id === replica.id);
  const own = slip.shelf.slips.some(({ id }) => id === replica.id);
  const clays: RecastRequest['clays'] = [];
  if (body) clays.push({ kind: 'specimen', specimen: replica.id, measured: 'body' });
  if (source || own) clays.push(slipRef(source ?? { kind: 'own' }, replica.id));
  return clays;
}
function requestOf({ result, replica }: SlipSectionProps, clays: RecastRequest['clays']): RecastRequest {
  const { normalisation, settings } = result.request;
  return {
    normalisation,
    fraction: settings.replacement.fraction,
    paint: { kind: 'specimen', specimen: replica.id, measured: 'paint' },
    clays,
    added: null,
  };
}

function ClayView({ clay, paint }: { readonly clay: Clay; readonly paint: string }) {
  const { verdict, refusal, removed, leftOut, rows } = clay;
  return (
    <div className="stack">
      <p className="label">Beside the {clay.clay}</p>
      {refusal && (
        <Notice kind="caution">
          <p>{refusal}</p>
        </Notice>
      )}
      {verdict && <p>{verdict.sentence}</p>}
      {rows.length > 0 && (
        <DownloadableTable
          label={`${paint} recast, beside the ${clay.clay}`}
          file={`${paint} recast beside ${clay.clay}`}
          columns={COLUMNS}
          fileColumns={FILE}
          rows={rows}
          rowKey={(row) => row.oxide}
        />
      )}
      {refusal === null && (
        <p className="small faint">
          Taken out: {removed.map(showAnalyte).join(', ') || 'nothing'}.
          {leftOut.length > 0 && ` Left out, not seen on both sides: ${leftOut.map(showAnalyte).join(', ')}.`}
        </p>
      )}
    </div>
  );
}
