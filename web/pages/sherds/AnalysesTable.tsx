import { Link } from 'wouter';
import type { Analysis } from '../../../api/contract/analysis.ts';
import { MEASURED } from '../../../api/domain/composition/types.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { useAnalyses } from '../../queries/analyses.ts';
import { useLookups } from '../../queries/lookups.ts';
import { analysisPath } from './paths.ts';
import { measuredWord } from './words.ts';

const MOST = 500;

/** Paint before slip before body, and spots by their names. */
function inOrder(a: Analysis, b: Analysis): number {
  return (
    MEASURED.indexOf(a.measured) - MEASURED.indexOf(b.measured) ||
    a.spot.localeCompare(b.spot, 'en', { numeric: true })
  );
}

/** The analyses of one specimen, spot by spot. */
export function AnalysesTable({ study, specimen }: { readonly study: string; readonly specimen: string }) {
  const query = useAnalyses(study, { specimen, limit: MOST });
  const techniques = useLookups().data?.techniques ?? [];
  const techniqueName = (code: string | null) =>
    techniques.find((one) => one.code === code)?.name ?? code ?? '';
  return (
    <Loaded query={query} what="its analyses">
      {({ rows, total }) =>
        total === 0 ? (
          <p className="faint">None yet. Type one in, or bring in a file in which this label occurs.</p>
        ) : (
          <>
            <DataTable
              label="Analyses"
              columns={columns(study, techniqueName)}
              rows={rows.toSorted(inOrder)}
              rowKey={(analysis) => analysis.id}
            />
            {total > rows.length && (
              <p className="faint">
                The first {rows.length} of {total} are shown.
              </p>
            )}
          </>
        )
      }
    </Loaded>
  );
}

function columns(study: string, techniqueName: (code: string | null) => string): Column<Analysis>[] {
  return [
    {
      id: 'measured',
      label: 'Measured',
      header: true,
      cell: (analysis) => (
        <Link className="cell" href={analysisPath(study, analysis.specimen, analysis.id)}>
          {measuredWord(analysis.measured)}
          {analysis.spot && `, ${analysis.spot}`}
        </Link>
      ),
    },
    { id: 'technique', label: 'Technique', cell: (analysis) => techniqueName(analysis.technique) },
    { id: 'laboratory', label: 'Laboratory', cell: (analysis) => analysis.laboratory },
    { id: 'date', label: 'Date', cell: (analysis) => analysis.date },
    { id: 'values', label: 'Values', numeric: true, cell: (analysis) => analysis.reported.length },
    {
      id: 'below',
      label: 'Below detection',
      numeric: true,
      cell: (analysis) => analysis.reported.filter((one) => one.belowDetection).length,
    },
    {
      id: 'origin',
      label: 'Came from',
      cell: (analysis) => (analysis.row === null ? 'typed in' : `file, row ${analysis.row}`),
    },
  ];
}
