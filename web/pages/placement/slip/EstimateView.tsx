import type { EstimateAnswer } from '../../../../api/contract/slip-estimate.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { showAnalyte, showSignificant } from '../../../parts/numbers.ts';
import { Fold } from '../panel/Fold.tsx';
import { column, DownloadableTable, type TableColumn } from '../tables/DownloadableTable.tsx';
import { showOff, showShare } from './words.ts';

type Estimate = NonNullable<EstimateAnswer['estimate']>;
type Witness = Estimate['witnesses'][number];
export interface Applied {
  readonly f: number;
  readonly sigma: number;
  readonly df: number | null;
  readonly from: string;
}
const FROM = {
  stated: 'a value set by hand',
  tracers: 'tracers',
  batch: 'the batch',
  group: 'the group’s line',
  thickness: 'thickness',
};

/** What an estimate says, and what it rests on. */
export function EstimateView(at: {
  readonly answer: EstimateAnswer;
  readonly onApply: (applied: Applied) => void;
  /** The largest share that can be drawn off; null where none can. */
  readonly most: number | null;
}) {
  const { estimate, line, slip } = at.answer;
  return (
    <div className="stack estimate">
      {estimate && (
        <>
          <EstimateHead estimate={estimate} slip={slip} />
          {!estimate.cannotTell && at.most !== null && (
            <Apply applied={appliedOf(estimate, at.most)} estimate={estimate} onApply={at.onApply} />
          )}
          <EstimateGrounds estimate={estimate} />
        </>
      )}
      {line && <LineTable line={line} />}
    </div>
  );
}

function Apply(at: {
  readonly applied: Applied;
  readonly estimate: Estimate;
  readonly onApply: (applied: Applied) => void;
}) {
  const [wanted, drawn] = [showShare(at.estimate.f), showShare(at.applied.f)];
  return (
    <div>
      <Button look="primary" onPress={() => at.onApply(at.applied)}>
        Draw off f = {drawn}
      </Button>
      {drawn !== wanted && (
        <p className="small faint">More than that cannot be drawn off: an oxide would be spent.</p>
      )}
    </div>
  );
}

export const appliedOf = ({ kind, f, sigma, df }: Estimate, most: number): Applied => ({
  f: Math.min(most, Number(f.toFixed(3))),
  sigma: Number(Math.min(1, sigma).toPrecision(3)),
  df,
  from: FROM[kind],
});

function EstimateHead({ estimate, slip }: { readonly estimate: Estimate; readonly slip: string | null }) {
  const { f, low, high, cannotTell, consistency, direction } = estimate;
  if (cannotTell)
    return (
      <Notice kind="caution" title="f cannot be told">
        <p>{cannotTell}.</p>
      </Notice>
    );
  return (
    <div role="status">
      <p className="estimate-value">
        f = {showShare(f)}, 95 % interval {showShare(low)}–{showShare(high)}{' '}
        <span className="faint">(share by mass of the {slip})</span>
      </p>
      <p>{consistency ? consistency.sentence : 'Nothing is left over by which it could be checked.'}</p>
      {direction && (
        <p className="small faint">
          Between the two ends: {direction.angle.toFixed(1)}°, condition number{' '}
          {showSignificant(direction.condition, 2)}.
        </p>
      )}
    </div>
  );
}

const right = { numeric: true } as const;
const WITNESSES: TableColumn<Witness>[] = [
  column('oxide', 'Oxide', (row) => row.oxide, { header: true, cell: (row) => showAnalyte(row.oxide) }),
  column('alone', 'f by this oxide alone', (row) => row.alone, {
    ...right,
    cell: (row) =>
      row.alone === null
        ? '–'
        : `${showShare(row.alone)}${row.aloneSigma === null ? '' : ` ± ${showShare(row.aloneSigma)}`}`,
  }),
  column('sigma', '± (one standard uncertainty)', (row) => row.aloneSigma, {
    ...right,
    cell: (row) => (row.aloneSigma === null ? '–' : showShare(row.aloneSigma)),
  }),
  column('measured', 'Read, wt%', (row) => row.measured, {
    ...right,
    cell: (row) => showSignificant(row.measured),
  }),
  column('explained', 'Explained, wt%', (row) => row.explained, {
    ...right,
    cell: (row) => showSignificant(row.explained),
  }),
  column('z', 'Off, in standard uncertainties', (row) => row.z, {
    ...right,
    cell: (row) => showOff(row.z),
  }),
];
const SHOWN = WITNESSES.filter(({ id }) => id !== 'sigma');

/** The assumptions, warnings and single oxides of an estimate. */
export function EstimateGrounds({ estimate }: { readonly estimate: Estimate }) {
  const { assumptions, warnings, witnesses } = estimate;
  return (
    <>
      {warnings.length > 0 && (
        <Notice kind="caution">
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{warning}</li>
            ))}
          </ul>
        </Notice>
      )}
      <div>
        <p className="label">It assumes</p>
        <ul className="notes small">
          {assumptions.map((assumption) => (
            <li key={assumption}>{assumption}</li>
          ))}
        </ul>
      </div>
      {witnesses.length > 0 && (
        <Fold title="Oxide by oxide" gist={`${witnesses.length} oxides`}>
          <DownloadableTable
            label="What each oxide says of the slip"
            file="slip by oxide"
            columns={SHOWN}
            fileColumns={WITNESSES}
            rows={witnesses}
            rowKey={(row) => row.oxide}
          />
        </Fold>
      )}
    </>
  );
}

type Line = NonNullable<EstimateAnswer['line']>;
type Own = Line['estimates'][number];
const OWN: TableColumn<Own>[] = [
  column('label', 'Sherd', (row) => row.label, { header: true }),
  column('f', 'f', (row) => row.estimate.f, { ...right, cell: (row) => showShare(row.estimate.f) }),
  column('low', '95 % interval from', (row) => row.estimate.low, {
    ...right,
    cell: (row) => showShare(row.estimate.low),
  }),
  column('high', 'to', (row) => row.estimate.high, { ...right, cell: (row) => showShare(row.estimate.high) }),
];

function LineTable({ line }: { readonly line: Line }) {
  const { consistency, direction, estimates, oxides } = line;
  return (
    <Fold title="The group’s own line" gist={`${estimates.length} paints, ${oxides.length} oxides`}>
      <p>{consistency.sentence}</p>
      <p className="small faint">
        Between paint and slip: {direction.angle.toFixed(1)}°, condition number{' '}
        {showSignificant(direction.condition, 2)}. Oxides used: {oxides.map(showAnalyte).join(', ')}.
      </p>
      <DownloadableTable
        label="Slip in each sherd of the group"
        file="slip of the group"
        columns={OWN}
        rows={estimates}
        rowKey={(row) => row.label}
      />
    </Fold>
  );
}
