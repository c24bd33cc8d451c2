import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Specimen } from '../../../api/contract/specimen.ts';
import { Button, LinkButton } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { count } from '../../parts/numbers.ts';
import { PageHead } from '../../parts/PageHead.tsx';
import { studyPath } from '../../paths.ts';
import { useGroups } from '../../queries/groups.ts';
import { useDeleteSpecimen, useSpecimen } from '../../queries/specimens.ts';
import { AnalysesTable } from './AnalysesTable.tsx';
import { specimenPath } from './paths.ts';
import { SpecimenDialog } from './SpecimenDialog.tsx';
import { kindWord } from './words.ts';

interface SpecimenPageProps {
  readonly study: string;
  readonly specimen: string;
}

/** One specimen and everything measured on it. */
export function SpecimenPage({ study, specimen: id }: SpecimenPageProps) {
  const query = useSpecimen(study, id);
  return (
    <Loaded query={query} what="the specimen" page>
      {(specimen) => <SpecimenView study={study} specimen={specimen} />}
    </Loaded>
  );
}

function SpecimenView({ study, specimen }: { readonly study: string; readonly specimen: Specimen }) {
  const group = useGroups(study).data?.find((one) => one.id === specimen.group);
  const catalogue = specimen.catalogueNumber && `, ${specimen.catalogueNumber}`;
  return (
    <>
      <PageHead
        title={specimen.label}
        lead={
          <p>
            {kindWord(specimen.kind)}
            {catalogue}, {group ? group.name : 'without a ware group'}
          </p>
        }
        up={{ to: studyPath(study, '/sherds'), label: 'Sherds' }}
        actions={<SpecimenActions study={study} specimen={specimen} />}
      />
      {specimen.notes && <p className="lines">{specimen.notes}</p>}
      <section className="stack" aria-labelledby="analyses">
        <div className="section-head">
          <h2 id="analyses">Analyses</h2>
          <LinkButton to={`${specimenPath(study, specimen.id)}/analyses/new`}>New analysis</LinkButton>
        </div>
        <AnalysesTable study={study} specimen={specimen.id} />
      </section>
    </>
  );
}

function SpecimenActions({ study, specimen }: { readonly study: string; readonly specimen: Specimen }) {
  const [changing, setChanging] = useState(false);
  const groups = useGroups(study).data ?? [];
  const remove = useDeleteSpecimen(study);
  const [, navigate] = useLocation();
  const analyses = count(specimen.analyses, 'analysis', 'analyses');
  return (
    <>
      <Button onPress={() => setChanging(true)}>Change</Button>
      <ConfirmDelete
        label="Delete this specimen"
        title={`Delete ${specimen.label}?`}
        lost={<p>The specimen and its {analyses} will be lost. This cannot be undone.</p>}
        onDelete={async () => {
          navigate(studyPath(study, '/sherds'));
          await remove.mutateAsync(specimen.id);
        }}
      />
      <SpecimenDialog
        study={study}
        groups={groups}
        specimen={changing ? specimen : null}
        onClose={() => setChanging(false)}
      />
    </>
  );
}
