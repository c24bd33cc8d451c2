import { useState } from 'react';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import type { LogChoicesAsked, LogPreview } from '../../../../api/contract/firing-log.ts';
import { hoursMinutes } from '../../../../api/domain/firing/stages.ts';
import { Button } from '../../../parts/Button.tsx';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { Progress } from '../../../parts/Progress.tsx';
import { useLogPreview, useSendLog } from '../../../queries/firing-logs.ts';
import { LogColumns } from './LogColumns.tsx';
import { LogRows } from './LogRows.tsx';
import { LogTime } from './LogTime.tsx';

/** A file chosen: how it is understood, what can be settled, then read. */
export function NewLog(at: {
  readonly study: string;
  readonly firing: FiringRecord;
  readonly file: File;
  readonly onDone: () => void;
}) {
  const { study, firing, file } = at;
  const [choices, setChoices] = useState<LogChoicesAsked>({});
  const [begins, setBegins] = useState(0);
  const [share, setShare] = useState(0);
  const preview = useLogPreview(study, firing.id, { file, choices, begins: 0 });
  const send = useSendLog(study, firing.id);
  const settle = (more: LogChoicesAsked) => setChoices({ ...choices, ...more });
  const read = () => send.mutate({ file, choices, begins, onProgress: setShare }, { onSuccess: at.onDone });
  const seen = preview.data;
  return (
    <div className="stack">
      <p>
        <strong>{file.name}</strong>
        {seen && `: ${seen.rows.toLocaleString('en-GB')} rows over ${hoursMinutes(seen.duration)} h`}
        {seen?.startedAt && `, begun ${seen.startedAt.replace('T', ' ')}`}
      </p>
      {preview.isPending && (
        <p className="waiting" role="status">
          Looking through the log …
        </p>
      )}
      <ErrorNotice error={preview.error} title="This log cannot be read" />
      {seen && !preview.error && (
        <>
          <Doubts preview={seen} />
          <LogColumns preview={seen} onChange={(channels) => settle({ channels })} />
          <LogTime preview={seen} onChange={(time) => settle({ time })} />
          <div className="tile-firing">
            <NumberField
              label="The log began this long after lighting"
              unit="min"
              hint="Negative where the logger ran before the fire was lit."
              value={begins / 60}
              onChange={(minutes) => setBegins(60 * (minutes ?? 0))}
            />
          </div>
          <LogRows preview={seen} />
        </>
      )}
      {send.isPending && (
        <Progress
          label="Reading the log"
          share={share}
          words={share < 1 ? `${Math.round(100 * share)} %` : 'summing up'}
        />
      )}
      <ErrorNotice error={send.error} title="The log was not read; nothing has changed" />
      <div className="row">
        {seen && !preview.error && (
          <Button look="primary" isPending={send.isPending} onPress={read}>
            Read the log
          </Button>
        )}
        {preview.error && Object.keys(choices).length > 0 && (
          <Button onPress={() => setChoices({})}>Undo what was settled</Button>
        )}
        <Button onPress={at.onDone}>Leave it</Button>
      </div>
    </div>
  );
}

/** What the file leaves open, and what looks wrong in it. */
function Doubts({ preview }: { readonly preview: LogPreview }) {
  const told = [...preview.doubts, ...preview.flags.map((flag) => flag.message)];
  if (told.length === 0) return <Notice kind="done">Nothing looks wrong in it.</Notice>;
  return (
    <Notice kind="caution" title="Please check">
      <ul>
        {told.map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </Notice>
  );
}
