import { useState } from 'react';
import type { Sample } from '../../../../api/domain/composition/types.ts';
import { uncertaintySentence } from '../../../../api/domain/uncertainty/sentence.ts';
import type {
  GroupUncertainty,
  Interval,
  PlacementUncertainty,
} from '../../../../api/domain/uncertainty/types.ts';
import { Button } from '../../../parts/Button.tsx';
import { useSourceValue } from '../../../parts/figure/useSource.ts';
import { ErrorNotice, Notice } from '../../../parts/Notice.tsx';
import { showSignificant } from '../../../parts/numbers.ts';
import { Progress } from '../../../parts/Progress.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import { useRun } from '../../../parts/worker/useRun.ts';
import { NumberBox } from '../panel/NumberBox.tsx';
import { column, DownloadableTable, type TableColumn } from '../tables/DownloadableTable.tsx';
import { percent, showProbability } from '../words.ts';
import { isOf } from './drawn.ts';
import { type Asked, type DrawSettings, drawsKey, requestFor, USUAL_DRAWS } from './draws.ts';
import type { DrawWorker } from './draws.worker.ts';
import { attempt, type Slipped } from './placer.ts';
import type { SlipSectionProps } from './section-props.ts';
import { useNow } from './useSlip.ts';

const openWorker = () => new Worker(new URL('./draws.worker.ts', import.meta.url), { type: 'module' });

/** Uncertainties carried through drawing off and placing, by draws made beside the page. */
export function DrawsSection(at: SlipSectionProps) {
  const { slip, replica } = at;
  const settings = useDraft<DrawSettings>(drawsKey(slip.study), USUAL_DRAWS);
  const drawn = useSourceValue(slip.drawn);
  const fresh = useNow(slip, replica.id, (now) => drawn !== null && now !== undefined && isOf(drawn, now));
  const [refused, setRefused] = useState<string | null>(null);
  const { run, start, stop } = useRun<DrawWorker, PlacementUncertainty>(openWorker);
  const { progress, said } = run;
  const draw = () => {
    const now = slip.live.get()?.byId.get(replica.id);
    const asked = now ? askedFor(at, now, settings.value) : null;
    setRefused(typeof asked === 'string' ? asked : null);
    if (now && asked && typeof asked !== 'string') void drawAs(now, asked);
  };
  const drawAs = async (now: Slipped, asked: Asked) => {
    const told = await start({ of: settings.value.draws, ask: (worker, tell) => worker.draw(asked, tell) });
    if (told && 'value' in told)
      slip.drawn.set({ of: now.placement, choice: now.choice, settings: settings.value, answer: told.value });
  };
  const refusal = refused ?? (said && 'reason' in said ? said.reason : null);
  return (
    <>
      <Settings value={settings.value} onChange={settings.set} />
      <div className="row">
        <Button look="primary" isPending={progress !== null} onPress={draw}>
          Draw {settings.value.draws.toLocaleString('en-GB')} times
        </Button>
        {progress && <Button onPress={stop}>Cancel</Button>}
      </div>
      {progress && (
        <Progress
          label="Drawing"
          share={progress.done / progress.of}
          words={`${progress.done.toLocaleString('en-GB')} of ${progress.of.toLocaleString('en-GB')}`}
        />
      )}
      {refusal && (
        <Notice kind="caution" title="No draws can be made">
          <p>{refusal}</p>
        </Notice>
      )}
      <ErrorNotice error={run.error} />
      {fresh && drawn ? (
        <DrawnView answer={drawn.answer} against={slip.against} />
      ) : (
        drawn?.of.id === replica.id &&
        progress === null && <p className="small">Something has changed since the last draws: draw again.</p>
      )}
    </>
  );
}

function askedFor({ result, replica, slip }: SlipSectionProps, now: Slipped, settings: DrawSettings) {
  const sample = (result.replicas as readonly Sample[]).find(({ id }) => id === replica.id);
  if (!sample) return null;
  const choice = now.refusal ? null : now.choice;
  const request = attempt(() => requestFor(sample, choice, { shelf: slip.shelf, settings }));
  return typeof request === 'string' ? request : { model: result.model, request };
}

function Settings({
  value,
  onChange,
}: {
  readonly value: DrawSettings;
  readonly onChange: (value: DrawSettings) => void;
}) {
  const whole = (least: number, most: number) => (x: number) =>
    Number.isInteger(x) && x >= least && x <= most ? null : `is a whole number from ${least} to ${most}`;
  return (
    <div className="slip-choice numbers">
      <NumberBox
        label="Draws"
        value={value.draws}
        fault={whole(100, 100_000)}
        onChange={(draws) => onChange({ ...value, draws: draws ?? USUAL_DRAWS.draws })}
      />
      <NumberBox
        label="Seed"
        hint="The same seed gives the same draws"
        value={value.seed}
        fault={whole(0, 4_294_967_295)}
        onChange={(seed) => onChange({ ...value, seed: seed ?? USUAL_DRAWS.seed })}
      />
      <NumberBox
        label="Error where none is stated, %"
        hint="Relative; empty takes each technique’s own"
        optional
        value={value.assumedRelative === null ? null : 100 * value.assumedRelative}
        fault={(x) => (x > 0 && x <= 100 ? null : 'lies above 0 and up to 100')}
        onChange={(error) => onChange({ ...value, assumedRelative: error === null ? null : error / 100 })}
      />
    </div>
  );
}

const right = { numeric: true } as const;
const between = (interval: Interval | null, show: (x: number) => string | null) =>
  interval === null ? '–' : `${show(interval.low)} to ${show(interval.high)}`;
const ends = (id: string, label: string, of: (row: GroupUncertainty) => Interval | null) => [
  column<GroupUncertainty>(`${id}-low`, `${label}, 2.5 %`, (row) => of(row)?.low ?? null),
  column<GroupUncertainty>(`${id}-median`, `${label}, median`, (row) => of(row)?.median ?? null),
  column<GroupUncertainty>(`${id}-high`, `${label}, 97.5 %`, (row) => of(row)?.high ?? null),
];
const COLUMNS: TableColumn<GroupUncertainty>[] = [
  column('name', 'Ware group', (row) => row.name, { header: true }),
  column('inside', 'Inside in', (row) => row.inside, {
    ...right,
    cell: (row) => (row.inside === null ? '–' : percent(row.inside)),
  }),
  column('outside', 'Outside in', (row) => row.outside, {
    ...right,
    cell: (row) => (row.outside === null ? '–' : percent(row.outside)),
  }),
  column('nearest', 'Nearest in', (row) => row.nearest, { ...right, cell: (row) => percent(row.nearest) }),
  column('membership', 'Membership probability', () => null, {
    ...right,
    cell: (row) => between(row.membership, showProbability),
  }),
  column('distance', 'Distance to centre', () => null, {
    ...right,
    cell: (row) => between(row.distance, showSignificant),
  }),
  column('d2', 'D²', () => null, { ...right, cell: (row) => between(row.d2, showSignificant) }),
];
const FILE = [
  ...COLUMNS.slice(0, 4),
  ...ends('membership', 'Membership probability', (row) => row.membership),
  ...ends('distance', 'Distance to centre', (row) => row.distance),
  ...ends('d2', 'D²', (row) => row.d2),
];

function DrawnView({
  answer,
  against,
}: {
  readonly answer: PlacementUncertainty;
  readonly against: string | null;
}) {
  const { label, draws, groups, carried, warnings, fraction, seed } = answer;
  const sentence =
    against === null ? answer.sentence : uncertaintySentence({ label, draws, groups }, against);
  return (
    <div className="stack">
      <p className="estimate-value" role="status">
        {sentence}
      </p>
      {fraction && (
        <p className="small">
          f in 95 % of draws: {fraction.low.toFixed(3)}–{fraction.high.toFixed(3)}, median{' '}
          {fraction.median.toFixed(3)}.
        </p>
      )}
      {warnings.length > 0 && (
        <Notice kind="caution">
          {warnings.map((warning) => (
            <p key={warning}>{warning}</p>
          ))}
        </Notice>
      )}
      <DownloadableTable
        label={`${label} against each ware group, middle 95 % of ${draws.toLocaleString('en-GB')} draws`}
        file={`${label} with uncertainties`}
        columns={COLUMNS}
        fileColumns={FILE}
        rows={groups}
        rowKey={(row) => row.group}
      />
      <div>
        <p className="label">What was carried</p>
        <ul className="notes small">
          {carried.map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li>Seed {seed}. The dots on the plot are some of the draws.</li>
        </ul>
      </div>
    </div>
  );
}
