import type { NormalisationStep } from '../../../api/domain/composition/types.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { NumberWithUnit } from '../../parts/NumberWithUnit.tsx';
import { showAnalyte, showSignificant } from '../../parts/numbers.ts';

const COLUMNS: readonly Column<NormalisationStep>[] = [
  { id: 'analyte', label: 'Analyte', header: true, cell: (step) => showAnalyte(step.analyte) },
  {
    id: 'before',
    label: 'Reported',
    numeric: true,
    cell: ({ before }) => <NumberWithUnit {...before} none="below detection" />,
  },
  { id: 'factor', label: '× factor', numeric: true, cell: (step) => showSignificant(step.factor, 5) },
  { id: 'oxide', label: 'Becomes', cell: (step) => showAnalyte(step.oxide) },
  {
    id: 'after',
    label: '= wt%',
    numeric: true,
    cell: (step) => <NumberWithUnit value={step.after} none="below detection" />,
  },
  { id: 'what', label: 'Why', cell: (step) => step.what },
];

/** Reported figure × factor = oxide, line by line. */
export function StepsTable({ steps }: { readonly steps: readonly NormalisationStep[] }) {
  return (
    <DataTable
      label="From reported figures to oxides"
      columns={COLUMNS}
      rows={steps}
      rowKey={(step) => `${step.analyte} ${step.oxide} ${step.what}`}
    />
  );
}
