import type { Amount, NormalisedAnalysis } from '../../../api/domain/composition/types.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { NumberWithUnit } from '../../parts/NumberWithUnit.tsx';
import { showAnalyte, showPlain, showSignificant } from '../../parts/numbers.ts';

interface ClosureRow {
  readonly oxide: string;
  readonly before: Amount;
  readonly closed: Amount | undefined;
}

function AmountCell({ amount }: { readonly amount: Amount | undefined }) {
  if (!amount) return <span className="faint">left out</span>;
  if (amount.value !== null) return <NumberWithUnit value={amount.value} uncertainty={amount.sigma} />;
  if (amount.limit === null) return <span className="faint">below detection</span>;
  return <span className="number">&lt; {showPlain(amount.limit, 3)}</span>;
}

const BASIS = {
  stated: 'stated',
  assumed: 'assumed for the technique',
  spots: 'spread of the spots, over √n',
} as const;

const COLUMNS: readonly Column<ClosureRow>[] = [
  { id: 'oxide', label: 'Oxide', header: true, cell: (row) => showAnalyte(row.oxide) },
  {
    id: 'before',
    label: 'As analysed, wt%',
    numeric: true,
    cell: (row) => <AmountCell amount={row.before} />,
  },
  {
    id: 'closed',
    label: 'Closed to 100, wt%',
    numeric: true,
    cell: (row) => <AmountCell amount={row.closed} />,
  },
  {
    id: 'basis',
    label: '± (1σ) is',
    cell: ({ closed }) => (closed?.sigmaBasis ? BASIS[closed.sigmaBasis] : ''),
  },
];

/** Each oxide before and after closure; ± is one standard deviation. */
export function ClosureTable({ normalised }: { readonly normalised: NormalisedAnalysis }) {
  const rows = Object.entries(normalised.amounts).map(([oxide, before]) => ({
    oxide,
    before,
    closed: normalised.closed[oxide],
  }));
  const kept = rows.reduce((sum, row) => sum + ((row.closed && row.before.value) || 0), 0);
  return (
    <>
      {kept > 0 && (
        <p>
          The oxides kept add up to <NumberWithUnit value={kept} unit="wt%" resolution={0.01} />, so each is
          multiplied by 100 ÷ {showSignificant(kept, 4)} = {showSignificant(100 / kept, 4)}.
        </p>
      )}
      <DataTable snug label="Closed to 100" columns={COLUMNS} rows={rows} rowKey={(row) => row.oxide} />
    </>
  );
}
