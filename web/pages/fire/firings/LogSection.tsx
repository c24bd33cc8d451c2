import { useState } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { FiringRecord } from '../../../../api/contract/firing.ts';
import { hoursMinutes } from '../../../../api/domain/firing/stages.ts';
import { Button } from '../../../parts/Button.tsx';
import { ConfirmDelete } from '../../../parts/ConfirmDelete.tsx';
import { ErrorNotice } from '../../../parts/Notice.tsx';
import { NumberField } from '../../../parts/NumberField.tsx';
import { count } from '../../../parts/numbers.ts';
import { useMoveLog, useTakeOffLog } from '../../../queries/firing-logs.ts';
import { NewLog } from './NewLog.tsx';

const TYPES = ['.csv', '.tsv', '.txt', '.log', 'text/csv', 'text/plain'];

/** The thermocouple log of a firing: choosing one, what it is, taking it off. */
export function LogSection({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const [file, setFile] = useState<File | null>(null);
  const { log } = firing;
  return (
    <section className="sheet stack" aria-labelledby="log">
      <h2 id="log">Thermocouple log</h2>
      {log && !file && <Kept study={study} firing={firing} />}
      {!log && !file && (
        <p>
          The file your logger gives: rows of times and temperatures as CSV or text, any number of channels,
          °C or °F. It is shown as understood before it is read.
        </p>
      )}
      {file ? (
        <NewLog
          key={`${file.name} ${file.lastModified}`}
          {...{ study, firing, file }}
          onDone={() => setFile(null)}
        />
      ) : (
        <div>
          <FileTrigger acceptedFileTypes={TYPES} onSelect={(files) => setFile(files?.[0] ?? null)}>
            <Button look={log ? 'plain' : 'primary'}>{log ? 'Replace the log' : 'Choose a log'}</Button>
          </FileTrigger>
        </div>
      )}
    </section>
  );
}

function Kept({ study, firing }: { readonly study: string; readonly firing: FiringRecord }) {
  const log = firing.log!;
  const move = useMoveLog(study, firing.id);
  const takeOff = useTakeOffLog(study, firing.id);
  const facts: readonly (readonly [string, string])[] = [
    ['File', log.fileName || 'without a name'],
    ['Rows', log.rows.toLocaleString('en-GB')],
    ['Length', `${hoursMinutes(firing.summary?.duration ?? 0)} h, a row every ${Math.round(log.interval)} s`],
    ['Began', log.startedAt ? log.startedAt.replace('T', ' ') : 'no clock in the file'],
    ['Channels', log.channels.map((one) => one.name).join(', ')],
  ];
  return (
    <>
      <dl className="facts">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {log.problems.length > 0 && (
        <details>
          <summary>{count(log.problems.length, 'remark')} on single rows</summary>
          <ul>
            {log.problems.map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </details>
      )}
      <div className="tile-firing">
        <NumberField
          label="The log began this long after lighting"
          unit="min"
          hint="Negative where the logger ran before. Stages and readings count from lighting."
          value={Math.round((log.begins / 60) * 100) / 100}
          onChange={(minutes) => move.mutate(60 * (minutes ?? 0))}
        />
      </div>
      <ErrorNotice error={move.error} />
      <p className="faint small">
        To change a unit or a sensor, send the log again: what is kept is what was read from it, not the file.
      </p>
      <div>
        <ConfirmDelete
          label="Take the log off"
          confirm="Take it off"
          title="Take the log off this firing?"
          lost={<p>The curve and what was read from it will be lost; readings by hand stay.</p>}
          onDelete={() => takeOff.mutateAsync()}
        />
      </div>
    </>
  );
}
