import { useState } from 'react';
import { Link } from 'wouter';
import type { WareGroup } from '../../../api/contract/ware-group.ts';
import { Button } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { DoiLink } from '../../parts/DoiLink.tsx';
import { count } from '../../parts/numbers.ts';
import { studyPath } from '../../paths.ts';
import { useDeleteGroup } from '../../queries/groups.ts';
import { GroupDialog } from './GroupDialog.tsx';
import { showSpecimens } from './SpecimensSection.tsx';

/** The ware groups of a study: made, changed, deleted here. */
export function GroupsSection({
  study,
  groups,
}: {
  readonly study: string;
  readonly groups: readonly WareGroup[];
}) {
  const [editing, setEditing] = useState<WareGroup | 'new' | null>(null);
  return (
    <section className="stack" aria-labelledby="groups">
      <div className="section-head">
        <h2 id="groups">Ware groups</h2>
        <Button onPress={() => setEditing('new')}>New ware group</Button>
      </div>
      {groups.length === 0 ? (
        <p className="faint">
          None yet. A file with a column of ware groups makes them on its way in; or make one here.
        </p>
      ) : (
        <DataTable
          label="Ware groups"
          columns={groupColumns(study, setEditing)}
          rows={groups}
          rowKey={(group) => group.id}
        />
      )}
      <GroupDialog study={study} group={editing} onClose={() => setEditing(null)} />
    </section>
  );
}

function groupColumns(study: string, edit: (group: WareGroup) => void): Column<WareGroup>[] {
  return [
    {
      id: 'name',
      label: 'Ware group',
      header: true,
      cell: (group) => (
        <Link
          className="cell"
          href={`${studyPath(study, '/sherds')}?group=${group.id}#specimens`}
          onClick={showSpecimens}
        >
          {group.name}
        </Link>
      ),
    },
    { id: 'period', label: 'Period', cell: (group) => group.period },
    { id: 'place', label: 'Place', cell: (group) => group.place },
    { id: 'source', label: 'Source', cell: (group) => <Source group={group} /> },
    { id: 'specimens', label: 'Specimens', numeric: true, cell: (group) => group.specimens },
    { id: 'analyses', label: 'Analyses', numeric: true, cell: (group) => group.analyses },
    {
      id: 'actions',
      label: 'Actions',
      hideLabel: true,
      cell: (group) => (
        <span className="row end">
          <Button look="quiet" aria-label={`Change ${group.name}`} onPress={() => edit(group)}>
            Change
          </Button>
          <DeleteGroup study={study} group={group} />
        </span>
      ),
    },
  ];
}

function Source({ group }: { readonly group: WareGroup }) {
  if (!group.source && !group.doi) return <span className="faint">not given</span>;
  return (
    <span>
      {group.source} <DoiLink doi={group.doi} />
    </span>
  );
}

function DeleteGroup({ study, group }: { readonly study: string; readonly group: WareGroup }) {
  const remove = useDeleteGroup(study);
  return (
    <ConfirmDelete
      label="Delete"
      name={group.name}
      title={`Delete the ware group “${group.name}”?`}
      lost={
        <p>
          Its name, period, place, source and notes will be lost.{' '}
          {group.specimens > 0 && `Its ${count(group.specimens, 'specimen')} stay, without a group.`}
        </p>
      }
      onDelete={() => remove.mutateAsync(group.id)}
    />
  );
}
