import { useState } from 'react';
import { useLocation } from 'wouter';
import type { Study } from '../../../api/contract/study.ts';
import { Button } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import type { PageProps } from '../../paths.ts';
import { useGroups } from '../../queries/groups.ts';
import { useDeleteStudy, useStudy } from '../../queries/studies.ts';
import { StudyDialog } from '../studies/StudyDialog.tsx';
import { GroupCautions } from './GroupCautions.tsx';
import { NextSteps } from './NextSteps.tsx';
import { StudyCounts, whatIsLost } from './StudyCounts.tsx';

/** One study: what is in it, what to do next, and what to be careful of. */
export default function StudyPage({ study: id }: PageProps) {
  const query = useStudy(id);
  return (
    <Loaded query={query} what="the study" page>
      {(study) => <Overview study={study} />}
    </Loaded>
  );
}

function Overview({ study }: { readonly study: Study }) {
  const groups = useGroups(study.id);
  return (
    <>
      <PageHead title={study.name} lead={study.place} actions={<StudyActions study={study} />} />
      {study.demo && (
        <Notice title="Invented data">
          <p>
            The place, the sherds and every number in this study are made up, to look around with. Delete it
            whenever you like; <em>Open the demo study</em> makes it again.
          </p>
        </Notice>
      )}
      {study.notes && <p className="lines">{study.notes}</p>}
      <section className="stack" aria-labelledby="holds">
        <h2 id="holds">What it holds</h2>
        <StudyCounts study={study} />
      </section>
      <Loaded query={groups} what="the ware groups">
        {(rows) => (
          <>
            <NextSteps study={study} groups={rows} />
            <GroupCautions groups={rows} />
          </>
        )}
      </Loaded>
    </>
  );
}

function StudyActions({ study }: { readonly study: Study }) {
  const [changing, setChanging] = useState(false);
  const remove = useDeleteStudy();
  const [, navigate] = useLocation();
  return (
    <>
      <Button onPress={() => setChanging(true)}>Change</Button>
      <ConfirmDelete
        label="Delete this study"
        title={`Delete “${study.name}”?`}
        lost={<p>{whatIsLost(study)}</p>}
        onDelete={async () => {
          await remove.mutateAsync(study.id);
          navigate('/');
        }}
      />
      <StudyDialog
        study={study}
        open={changing}
        onClose={() => setChanging(false)}
        onSaved={() => setChanging(false)}
      />
    </>
  );
}
