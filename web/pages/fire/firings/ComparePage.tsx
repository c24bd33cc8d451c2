import { useMemo } from 'react';
import { useSearchParams } from 'wouter';
import type { FiringComparisonAnswer } from '../../../../api/contract/firing-log.ts';
import { comparedCaption } from '../../../../api/figures/captions-firing.ts';
import { firingCurve, firingCurveHeight } from '../../../../api/figures/firing-curve.ts';
import { comparedCurvesData } from '../../../../api/figures/firing-curve-data.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { CaptionedFigure } from '../../../parts/figure/CaptionedFigure.tsx';
import { FileChoices } from '../../../parts/figure/FileChoices.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Notice, Tag } from '../../../parts/Notice.tsx';
import { showPlain } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import type { PageProps } from '../../../paths.ts';
import { comparedFigureAddress } from '../../../queries/figures.ts';
import { useFiringComparison } from '../../../queries/firing-logs.ts';
import { firePath } from '../paths.ts';

/** Firings with a log side by side. */
export function ComparePage({ study }: PageProps) {
  const [search] = useSearchParams();
  const ids = (search.get('firings') ?? '').split(',').filter((id) => id !== '');
  const query = useFiringComparison(study, ids);
  return (
    <>
      <PageHead
        title="Firings compared"
        lead="By the hottest channel of each. Two differ only where the errors of their sensors leave them apart."
        up={{ to: firePath(study, '/firings'), label: 'Firings' }}
      />
      {ids.length < 2 ? (
        <EmptyState title="Nothing to compare yet">
          <p>Tick two or more firings with a log on the page of firings.</p>
        </EmptyState>
      ) : (
        <Loaded query={query} what="the comparison">
          {(found) => <Comparison study={study} ids={ids} found={found} />}
        </Loaded>
      )}
    </>
  );
}

type Row = FiringComparisonAnswer['rows'][number];

function Comparison({
  study,
  ids,
  found,
}: PageProps & { readonly ids: readonly string[]; readonly found: FiringComparisonAnswer }) {
  const data = useMemo(() => comparedCurvesData('compared', found.curves), [found]);
  const columns: Column<Row>[] = [
    { id: 'quantity', label: 'What', header: true, cell: (row) => `${row.quantity} (${row.unit})` },
    { id: 'differ', label: 'Apart?', cell: (row) => <Apart row={row} /> },
    ...found.firings.map((name, i) => ({
      id: `firing ${i}`,
      label: name,
      cell: (row: Row) => bounds(row, i),
    })),
  ];
  return (
    <div className="stack">
      <p className="answer">{found.sentence}</p>
      {found.without.length > 0 && (
        <Notice>Without a log, and so not compared: {found.without.join(', ')}.</Notice>
      )}
      <CaptionedFigure
        figure={firingCurve}
        data={data}
        height={firingCurveHeight}
        caption={comparedCaption(found.curves)}
      />
      <FileChoices
        figures={[{ id: 'compared', label: 'Firings compared' }]}
        from={{ address: (file, sheet) => comparedFigureAddress(study, ids, { file, sheet }) }}
      />
      <DataTable
        label="Firings compared"
        columns={columns}
        rows={found.rows}
        rowKey={(row) => row.quantity}
        snug
      />
      {found.rows.map(
        ({ quantity, notJudged }) =>
          notJudged && (
            <p key={quantity} className="faint small">
              Not judged, {quantity}: it is {notJudged}.
            </p>
          ),
      )}
    </div>
  );
}

function Apart({ row: { differ, notJudged } }: { readonly row: Row }) {
  if (notJudged) return <span className="faint">not judged</span>;
  if (differ === null) return <span className="faint">cannot tell</span>;
  return differ ? <Tag kind="caution">apart</Tag> : <Tag>may be alike</Tag>;
}

function bounds({ values, unit }: Row, i: number): string {
  const found = values[i];
  if (!found) return 'unknown';
  const show = (value: number) => (unit === 'h' ? value.toFixed(2) : showPlain(Math.round(value), 6));
  const { value, low, high } = found;
  return low === high ? show(value) : `${show(value)} (${show(low)} to ${show(high)})`;
}
