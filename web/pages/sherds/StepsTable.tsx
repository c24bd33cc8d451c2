import type { NormalisationStep, ReportedValue } from '../../../api/domain/composition/types.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { NumberWithUnit } from '../../parts/NumberWithUnit.tsx';
import { showAnalyte, showPlain, showSignificant } from '../../parts/numbers.ts';

interface StepRow extends NormalisationStep {
  readonly key: string;
  /** Last digit of a figure that stands as the laboratory wrote it. */
  readonly resolution: number | null;
}

const COLUMNS: readonly Column<StepRow>[] = [
  { id: 'analyte', label: 'Analyte', header: true, cell: (step) => showAnalyte(step.analyte) },
  {
    id: 'before',
    label: 'From',
    numeric: true,
    cell: ({ before, resolution }) => (
      <NumberWithUnit {...before} resolution={resolution} none="below detection" />
    ),
  },
  { id: 'factor', label: '× factor', numeric: true, cell: (step) => showPlain(step.factor) },
  {
    id: 'after',
    label: '= wt%',
    numeric: true,
    cell: (step) => <After step={step} />,
  },
  { id: 'oxide', label: 'Of', cell: (step) => showAnalyte(step.oxide) },
  { id: 'what', label: 'Why', prose: true, cell: (step) => step.what },
];

function After({ step }: { readonly step: StepRow }) {
  const asWritten = step.factor === 1 && step.resolution;
  if (step.after === null || asWritten)
    return <NumberWithUnit value={step.after} resolution={step.resolution} none="below detection" />;
  return <span className="number">{showSignificant(step.after, 4)}</span>;
}

/** Figure × factor = oxide, line by line. */
export function StepsTable(at: {
  readonly steps: readonly NormalisationStep[];
  readonly reported: readonly ReportedValue[];
}) {
  const rows = at.steps.map((step, i) => {
    const { value, unit } = step.before;
    const same = at.reported.find(
      (one) => one.analyte === step.analyte && one.value === value && one.unit === unit,
    );
    return { ...step, key: String(i), resolution: same?.resolution ?? null };
  });
  return (
    <DataTable
      snug
      label="From reported figures to oxides"
      columns={COLUMNS}
      rows={rows}
      rowKey={(step) => step.key}
    />
  );
}
