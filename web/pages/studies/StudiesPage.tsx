import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { Study } from '../../../api/contract/study.ts';
import { Button } from '../../parts/Button.tsx';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { ErrorNotice, Tag } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { studyPath } from '../../paths.ts';
import { useOpenDemo, useStudies } from '../../queries/studies.ts';
import { StudyDialog } from './StudyDialog.tsx';

const COLUMNS: readonly Column<Study>[] = [
  {
    id: 'name',
    label: 'Study',
    header: true,
    cell: (study) => (
      <span className="row">
        <Link href={studyPath(study.id)} className="cell">
          {study.name}
        </Link>
        {study.demo && <Tag>invented data</Tag>}
      </span>
    ),
  },
  { id: 'place', label: 'Place', cell: (study) => study.place },
  { id: 'groups', label: 'Ware groups', numeric: true, cell: (study) => study.counts.groups },
  { id: 'specimens', label: 'Specimens', numeric: true, cell: (study) => study.counts.specimens },
  { id: 'replicas', label: 'Of these replicas', numeric: true, cell: (study) => study.counts.replicas },
  { id: 'analyses', label: 'Analyses', numeric: true, cell: (study) => study.counts.analyses },
];

/** Where everyone arrives: the studies kept here, a new one, or the demo. */
export function StudiesPage() {
  const studies = useStudies();
  const demo = useOpenDemo();
  const [creating, setCreating] = useState(false);
  const [, navigate] = useLocation();
  const openDemo = () => demo.mutate(undefined, { onSuccess: (study) => navigate(studyPath(study.id)) });
  const actions = (
    <>
      <Button look="primary" onPress={() => setCreating(true)}>
        New study
      </Button>
      <Button isPending={demo.isPending} onPress={openDemo}>
        Open the demo study
      </Button>
    </>
  );
  const some = (studies.data?.length ?? 0) > 0;
  return (
    <>
      <PageHead
        title="Studies"
        lead="A study holds the ware groups of one question, their sherds, and the replicas fired to meet them."
        actions={some && actions}
      />
      <ErrorNotice error={demo.error} title="The demo study could not be opened" />
      <Loaded query={studies} what="the studies">
        {(rows) =>
          rows.length > 0 ? (
            <DataTable label="Studies" columns={COLUMNS} rows={rows} rowKey={(study) => study.id} />
          ) : (
            <EmptyState title="No study yet" actions={actions}>
              <p>
                Begin one, then bring in a laboratory's file of sherd analyses. Each ware group becomes a
                reference that your fired tiles are set against.
              </p>
              <p>Or open the demo study to look around first. Its place and its numbers are invented.</p>
            </EmptyState>
          )
        }
      </Loaded>
      <StudyDialog
        open={creating}
        onClose={() => setCreating(false)}
        onSaved={(study) => navigate(studyPath(study.id))}
      />
    </>
  );
}
