import type { ReportedValue } from '../../../api/domain/composition/types.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { NumberWithUnit } from '../../parts/NumberWithUnit.tsx';
import { showAnalyte, showPlain } from '../../parts/numbers.ts';

export function Figure({ of }: { readonly of: ReportedValue }) {
  if (!of.belowDetection)
    return (
      <NumberWithUnit
        value={of.value}
        unit={of.unit}
        resolution={of.resolution}
        uncertainty={of.uncertainty}
        none="no value"
      />
    );
  if (of.limit === null) return <span>below detection</span>;
  return (
    <span className="number">
      &lt; {showPlain(of.limit)}
      <span className="unit"> {of.unit}</span>
    </span>
  );
}

const COLUMNS: readonly Column<ReportedValue>[] = [
  { id: 'analyte', label: 'Analyte', header: true, cell: (one) => showAnalyte(one.analyte) },
  { id: 'value', label: 'Reported', numeric: true, cell: (one) => <Figure of={one} /> },
  {
    id: 'basis',
    label: '± means',
    cell: (one) => (one.uncertainty === null ? '' : (one.basis ?? 'unstated')),
  },
  {
    id: 'limit',
    label: 'Detection limit',
    numeric: true,
    cell: (one) => (one.limit === null ? '' : `${showPlain(one.limit)} ${one.unit}`),
  },
];

/** The laboratory's figures: in its units, nothing reckoned. */
export function ReportedTable({ reported }: { readonly reported: readonly ReportedValue[] }) {
  return (
    <DataTable snug label="As reported" columns={COLUMNS} rows={reported} rowKey={(one) => one.analyte} />
  );
}
