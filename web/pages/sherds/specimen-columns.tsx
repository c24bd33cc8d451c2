import { Link } from 'wouter';
import type { Specimen } from '../../../api/contract/specimen.ts';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import type { Column } from '../../parts/DataTable.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { specimenPath } from './paths.ts';
import { kindWord, measuredWord } from './words.ts';

interface SpecimenColumns {
  readonly study: string;
  readonly groups: readonly WareGroup[];
  readonly rows: readonly Specimen[];
  readonly chosen: ReadonlySet<string>;
  readonly setChosen: (chosen: ReadonlySet<string>) => void;
}

function toggled(chosen: ReadonlySet<string>, id: string, on: boolean): ReadonlySet<string> {
  const next = new Set(chosen);
  if (on) next.add(id);
  else next.delete(id);
  return next;
}

export function specimenColumns({ study, groups, chosen, setChosen }: SpecimenColumns): Column<Specimen>[] {
  const groupName = (id: string | null) => groups.find((group) => group.id === id)?.name;
  return [
    {
      id: 'choose',
      label: 'Choose',
      hideLabel: true,
      cell: (row) => (
        <Tick
          aria-label={`Choose ${row.label}`}
          isSelected={chosen.has(row.id)}
          onChange={(on) => setChosen(toggled(chosen, row.id, on))}
        />
      ),
    },
    {
      id: 'label',
      label: 'Specimen',
      header: true,
      sortable: true,
      cell: (row) => (
        <Link className="cell" href={specimenPath(study, row.id)}>
          {row.label}
        </Link>
      ),
    },
    { id: 'catalogueNumber', label: 'Catalogue', sortable: true, cell: (row) => row.catalogueNumber },
    { id: 'kind', label: 'Kind', sortable: true, cell: (row) => kindWord(row.kind) },
    {
      id: 'group',
      label: 'Ware group',
      sortable: true,
      cell: (row) => groupName(row.group) ?? <span className="faint">none</span>,
    },
    { id: 'measured', label: 'Measured', cell: (row) => row.measured.map(measuredWord).join(', ') },
    { id: 'analyses', label: 'Analyses', numeric: true, sortable: true, cell: (row) => row.analyses },
  ];
}
