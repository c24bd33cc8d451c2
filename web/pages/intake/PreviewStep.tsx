import type { Preview } from '../../../api/contract/intake.ts';
import { Button } from '../../parts/Button.tsx';
import { Loaded } from '../../parts/Loaded.tsx';
import { ErrorNotice, Notice } from '../../parts/Notice.tsx';
import { count } from '../../parts/numbers.ts';
import {
  type AskedChoices,
  asking,
  askingColumn,
  type ColumnChoice,
  inForce,
} from '../../queries/asked-choices.ts';
import { type Upload, usePreview, useStartImport } from '../../queries/imports.ts';
import { ColumnsTable } from './ColumnsTable.tsx';
import { FirstAnalyses } from './FirstAnalyses.tsx';
import { FirstRows } from './FirstRows.tsx';
import { ProblemsTable } from './ProblemsTable.tsx';
import { RowDefaults } from './RowDefaults.tsx';
import { SourceSummary } from './SourceSummary.tsx';
import { TableReading } from './TableReading.tsx';

interface PreviewStepProps {
  readonly study: string;
  readonly upload: Upload;
  readonly onChange: (upload: Upload) => void;
  readonly onStarted: (id: string) => void;
  readonly onGiveUp: () => void;
}

/** How the file was understood; every part of it can be changed before anything is stored. */
export function PreviewStep(at: PreviewStepProps) {
  const { study, upload } = at;
  const query = usePreview(study, upload);
  const failed = query.isError;
  return (
    <>
      {failed && (
        <>
          <ErrorNotice error={query.error} title="This cannot be read" />
          <div>
            <Button onPress={at.onGiveUp}>Choose another file</Button>
          </div>
        </>
      )}
      {!failed && (
        <Loaded query={query} what={upload.file ? upload.file.name : 'the table'}>
          {(preview) => <Understood {...at} preview={preview} busy={query.isFetching} />}
        </Loaded>
      )}
    </>
  );
}

interface UnderstoodProps extends PreviewStepProps {
  readonly preview: Preview;
  readonly busy: boolean;
}

function Understood(at: UnderstoodProps) {
  const { preview, upload, study } = at;
  const { understanding } = preview;
  const choices = inForce(understanding.choices, upload.asked);
  const choose = (part: AskedChoices) => at.onChange({ ...upload, asked: asking(upload.asked, part) });
  const chooseColumn = (column: ColumnChoice) =>
    at.onChange({ ...upload, asked: askingColumn(upload.asked, column) });
  return (
    <>
      <SourceSummary {...at} onChange={at.onChange} />
      {understanding.remembered && (
        <Notice title="Read as last time">
          <p>A file with the same column names came in before; what was settled then is used again.</p>
        </Notice>
      )}
      {understanding.doubts.length > 0 && (
        <Notice kind="caution" title="Please look at this">
          <ul>
            {understanding.doubts.map((doubt) => (
              <li key={`${doubt.about} ${doubt.column} ${doubt.message}`}>{doubt.message}</li>
            ))}
          </ul>
        </Notice>
      )}
      <ProblemsTable
        problems={preview.problems}
        counts={preview.counts}
        onLeaveOut={(row) => choose({ leaveOutRows: [...choices.leaveOutRows, row] })}
      />
      <RowDefaults study={study} choices={choices} onChange={choose} />
      <section className="stack" aria-labelledby="columns">
        <h2 id="columns">How each column was understood</h2>
        <ColumnsTable columns={understanding.columns} choices={choices} onChange={chooseColumn} />
      </section>
      <TableReading choices={choices} doubtful={understanding.doubts.length > 0} onChange={choose} />
      <FirstRows preview={preview} choices={choices} />
      <FirstAnalyses analyses={preview.analyses} of={preview.counts.analyses} />
      <Commit {...at} />
    </>
  );
}

function Commit({ study, upload, preview, busy, onStarted, onGiveUp }: UnderstoodProps) {
  const start = useStartImport(study);
  const { counts } = preview;
  return (
    <section className="sheet stack commit" aria-label="Bring in">
      <p role="status">
        {busy
          ? 'Reading again with your changes …'
          : preview.importable
            ? `Ready: ${count(counts.analyses, 'analysis', 'analyses')} of ${count(counts.specimens, 'specimen')}, ${count(counts.values, 'value')}, of which ${counts.belowDetection.toLocaleString('en-GB')} below detection.`
            : 'Nothing can be brought in until the errors above are mended. The study stays as it is.'}
      </p>
      <ErrorNotice error={start.error} title="Nothing was stored" />
      <div className="row">
        <Button
          look="primary"
          isDisabled={!preview.importable || busy}
          isPending={start.isPending}
          onPress={() => start.mutate(upload, { onSuccess: ({ id }) => onStarted(id) })}
        >
          {preview.importable ? `Bring in ${count(counts.analyses, 'analysis', 'analyses')}` : 'Bring in'}
        </Button>
        <Button onPress={onGiveUp}>Choose another file</Button>
      </div>
    </section>
  );
}
