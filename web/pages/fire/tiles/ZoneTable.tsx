import { Link } from 'wouter';
import type { Analysis } from '../../../../api/contract/analysis.ts';
import type { Tile, ZoneRecord } from '../../../../api/contract/tile.ts';
import { normaliseAnalysis } from '../../../../api/domain/composition/normalise.ts';
import { DEFAULT_NORMALISATION } from '../../../../api/domain/composition/types.ts';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { showAnalyte, showSignificant } from '../../../parts/numbers.ts';
import { useAnalyses } from '../../../queries/analyses.ts';
import { useDeleteZone } from '../../../queries/pictures.ts';
import { analysisPath } from '../../sherds/paths.ts';
import { setInWords } from '../parts/ZoneGrid.tsx';
import { Swatch } from '../pictures/ColourTable.tsx';

interface ZoneTableProps {
  readonly study: string;
  readonly tile: Tile;
}
const MOST = 500;

/** Every zone in one line: what was put there, how it came out, and what was measured of it. */
export function ZoneTable({ study, tile }: ZoneTableProps) {
  const analyses = useAnalyses(study, { specimen: tile.id, limit: MOST }).data?.rows ?? [];
  const of = (zone: string) => analyses.filter((one) => one.zone === zone);
  const columns: Column<ZoneRecord>[] = [
    ...COLUMNS,
    {
      id: 'analyses',
      label: 'Analyses',
      cell: (row) => of(row.id).map((one) => <ZoneAnalysis key={one.id} study={study} analysis={one} />),
    },
    { id: 'note', label: 'Note', prose: true, cell: (row) => row.note },
    {
      ...{ id: 'delete', label: 'Delete', hideLabel: true },
      cell: (row) => <DeleteZone study={study} tile={tile} zone={row} analyses={of(row.id).length} />,
    },
  ];
  return <DataTable label="Zones" columns={columns} rows={tile.zones} rowKey={(row) => row.id} />;
}

const percent = (share: number | null) => (share === null ? '' : `${Math.round(100 * share)} %`);
const COLUMNS: readonly Column<ZoneRecord>[] = [
  { id: 'label', label: 'Zone', header: true, cell: (row) => row.label },
  { id: 'set', label: 'What was put there', cell: setInWords },
  { id: 'grade', label: 'Gloss', cell: (row) => row.grade ?? '' },
  { id: 'share', label: 'Glassy area', numeric: true, cell: (row) => percent(row.glassyShare) },
  {
    id: 'colour',
    label: 'Colour',
    cell: ({ colour, measuredColour }) =>
      measuredColour ? (
        <>
          {colour} <Swatch colour={measuredColour} />
        </>
      ) : (
        colour
      ),
  },
  { id: 'defects', label: 'Defects', cell: (row) => row.defects.join(', ') },
];

function ZoneAnalysis({ study, analysis }: { readonly study: string; readonly analysis: Analysis }) {
  return (
    <span className="zone-analysis">
      <Link href={analysisPath(study, analysis.specimen, analysis.id)}>
        {[analysis.measured, analysis.spot].filter(Boolean).join(' ')}
      </Link>{' '}
      <span className="small">{mostOf(analysis)}</span>
    </span>
  );
}

/** Its three largest oxides, closed to 100 wt%. */
function mostOf({ reported }: Analysis): string {
  try {
    const { closed } = normaliseAnalysis(reported, DEFAULT_NORMALISATION);
    return Object.entries(closed)
      .flatMap(([oxide, { value }]) => (value === null ? [] : [{ oxide, value }]))
      .sort((a, b) => b.value - a.value)
      .slice(0, 3)
      .map(({ oxide, value }) => `${showAnalyte(oxide)} ${showSignificant(value)} wt%`)
      .join(', ');
  } catch {
    return 'cannot be put into oxides';
  }
}

function DeleteZone(at: ZoneTableProps & { readonly zone: ZoneRecord; readonly analyses: number }) {
  const { zone, tile } = at;
  const remove = useDeleteZone(at.study, tile.id);
  return (
    <ConfirmDelete
      label="Delete"
      name={`zone ${zone.label}`}
      title={`Delete zone ${zone.label} of ${tile.label}?`}
      lost={
        <p>
          What was put there, what was seen and the colour measured will be lost.
          {at.analyses > 0 && ` Its analyses stay with ${tile.label}, at no zone.`}
        </p>
      }
      onDelete={() => remove.mutateAsync(zone.id)}
    />
  );
}
