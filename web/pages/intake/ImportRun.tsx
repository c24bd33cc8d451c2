import type { DataImport } from '../../../api/contract/import.ts';
import { Button, LinkButton } from '../../parts/Button.tsx';
import { ConfirmDelete } from '../../parts/ConfirmDelete.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../parts/Notice.tsx';
import { count } from '../../parts/numbers.ts';
import { Progress } from '../../parts/Progress.tsx';
import { studyPath } from '../../paths.ts';
import { useEndImport, useImport } from '../../queries/imports.ts';
import { whatItBrought } from './brought.ts';
import { ProblemList } from './ProblemsTable.tsx';

interface ImportRunProps {
  readonly study: string;
  readonly id: string;
  readonly onAnother: () => void;
}

/** An import under way, then what came of it. */
export function ImportRun({ study, id, onAnother }: ImportRunProps) {
  const query = useImport(study, id);
  return (
    <Loaded query={query} what="the import">
      {(run) =>
        run.status === 'running' ? (
          <Running study={study} run={run} />
        ) : (
          <Ended study={study} run={run} onAnother={onAnother} />
        )
      }
    </Loaded>
  );
}

function Running({ study, run }: { readonly study: string; readonly run: DataImport }) {
  const end = useEndImport(study);
  const rows = (n: number) => n.toLocaleString('en-GB');
  return (
    <section className="sheet stack" aria-label="Import under way">
      <Progress
        label={`Bringing in ${run.fileName || 'the table'}`}
        share={run.rowsTotal ? run.rowsRead / run.rowsTotal : null}
        words={run.rowsTotal ? `${rows(run.rowsRead)} of ${rows(run.rowsTotal)} rows` : 'opening'}
      />
      <ErrorNotice error={end.error} title="Not stopped" />
      <div>
        <Button isPending={end.isPending} onPress={() => end.mutate(run.id)}>
          Stop
        </Button>
      </div>
      <p className="faint small">
        Nothing of it is stored until all of it is. You can leave this page meanwhile.
      </p>
    </section>
  );
}

const ENDS = {
  done: { kind: 'done', title: 'Brought in' },
  failed: { kind: 'error', title: 'Nothing was brought in' },
  stopped: { kind: 'caution', title: 'Stopped; nothing was brought in' },
} as const;

function Ended({
  study,
  run,
  onAnother,
}: {
  readonly study: string;
  readonly run: DataImport;
  readonly onAnother: () => void;
}) {
  if (run.status === 'running') return null;
  const { kind, title } = ENDS[run.status];
  const problems = run.outcome?.problems ?? [];
  return (
    <section className="stack" aria-label="Outcome">
      <Notice kind={kind} title={title}>
        <p>{run.outcome?.message ?? whatItBrought(run)}</p>
      </Notice>
      <div className="row">
        {run.status === 'done' && (
          <LinkButton to={studyPath(study, '/sherds')} look="primary">
            See the specimens
          </LinkButton>
        )}
        <Button onPress={onAnother}>Bring in another</Button>
        {run.status === 'done' && <TakeBack study={study} run={run} onDone={onAnother} />}
      </div>
      {problems.length > 0 && (
        <>
          <h2>{count(problems.length, 'remark')}</h2>
          <ProblemList problems={problems} />
        </>
      )}
    </section>
  );
}

/** Undoes an import, after saying what goes. */
export function TakeBack({
  study,
  run,
  onDone,
}: {
  readonly study: string;
  readonly run: DataImport;
  readonly onDone?: () => void;
}) {
  const end = useEndImport(study);
  return (
    <ConfirmDelete
      label="Take it back"
      confirm="Take it back"
      name={run.fileName}
      title={`Take back ${run.fileName || 'this import'}?`}
      lost={
        <p>
          {whatItBrought(run)} Its {count(run.analyses, 'analysis', 'analyses')} will be removed from the
          study, with whatever was changed in them since.
        </p>
      }
      onDelete={() => end.mutateAsync(run.id).then(() => onDone?.())}
    />
  );
}
