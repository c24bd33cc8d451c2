import {
  type PercentWalk,
  type WalkFigure,
  walkFromPercent,
} from '../../../../api/domain/batch/percent-walk.ts';
import { Cautions } from '../../../parts/Cautions.tsx';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { Field } from '../../../parts/Field.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { readNumber, showAnalyte, showSignificant } from '../../../parts/numbers.ts';
import { PageHead } from '../../../parts/PageHead.tsx';
import { Tick } from '../../../parts/Tick.tsx';
import { useDraft } from '../../../parts/useDraft.ts';
import type { PageProps } from '../../../paths.ts';
import { readAnalysis } from '../materials/material-form.ts';
import { attempt, type Outcome } from '../parts/attempt.ts';

interface WalkForm {
  readonly line: string;
  readonly slip: boolean;
  readonly share: string;
  readonly slipLine: string;
  readonly grams: string;
  readonly purity: string;
  readonly celsius: string;
}

const START: WalkForm = {
  line: 'Pb 10\nSiO2 52\nAl2O3 17\nFe2O3 8\nMnO 6\nCaO 2\nK2O 3',
  slip: false,
  share: '20',
  slipLine: 'SiO2 60\nAl2O3 23\nFe2O3 10\nCaO 2\nK2O 4',
  grams: '100',
  purity: '85',
  celsius: '850',
};

/** From “10 % lead” in a paper to grams of galena, cerussite or litharge, step by step. */
export function PercentagesPage({ study }: PageProps) {
  const draft = useDraft<WalkForm>(`percentages.${study}`, START);
  const form = draft.value;
  const walk = walkOf(form);
  return (
    <>
      <PageHead
        title="Why percentages mislead"
        lead="A published percentage is not what goes into the mortar. Put in any published line and follow its lead to the scale."
      />
      <div className="bench-split">
        <WalkFields form={form} set={(part) => draft.set({ ...form, ...part })} />
        <div className="stack wide-gap">
          {walk.value === null ? <Notice kind="error">{walk.reason}</Notice> : <Walk walk={walk.value} />}
        </div>
        <Cautions hazards={['lead', 'sulfur']} />
      </div>
    </>
  );
}

function walkOf(form: WalkForm): Outcome<PercentWalk> {
  const wrong = (reason: string): Outcome<PercentWalk> => ({ value: null, reason });
  const line = readAnalysis(form.line);
  if (typeof line === 'string') return wrong(line);
  const slip = form.slip ? readAnalysis(form.slipLine) : null;
  if (typeof slip === 'string') return wrong(`In the slip: ${slip}`);
  const numbers = [form.share, form.grams, form.purity, form.celsius].map(readNumber);
  const [share, grams, purity, celsius] = numbers;
  if (share == null || grams == null || purity == null || celsius == null)
    return wrong('Share of slip, grams, purity and temperature need to be numbers.');
  return attempt(() =>
    walkFromPercent({
      values: line.values,
      slip: slip && { share: share / 100, values: slip.values },
      grams,
      galenaPurity: purity / 100,
      celsius,
    }),
  );
}

function WalkFields({
  form,
  set,
}: {
  readonly form: WalkForm;
  readonly set: (part: Partial<WalkForm>) => void;
}) {
  return (
    <div className="stack">
      <Field
        label="Published line, wt%"
        hint="One oxide or element a line, as printed"
        lines={8}
        value={form.line}
        onChange={(line) => set({ line })}
      />
      <Tick isSelected={form.slip} onChange={(slip) => set({ slip })}>
        The reading went through the paint into the slip
      </Tick>
      {form.slip && (
        <>
          <Field
            label="Slip’s share of the reading (%)"
            inputMode="decimal"
            value={form.share}
            onChange={(share) => set({ share })}
          />
          <Field
            label="The slip’s own line, wt%"
            lines={6}
            value={form.slipLine}
            onChange={(slipLine) => set({ slipLine })}
          />
        </>
      )}
      <div className="fields narrow">
        <Field
          label="Fired paint wanted (g)"
          inputMode="decimal"
          value={form.grams}
          onChange={(grams) => set({ grams })}
        />
        <Field
          label="Galena in the ore (wt%)"
          inputMode="decimal"
          value={form.purity}
          onChange={(purity) => set({ purity })}
        />
        <Field
          label="Firing (°C)"
          inputMode="decimal"
          value={form.celsius}
          onChange={(celsius) => set({ celsius })}
        />
      </div>
    </div>
  );
}

const shown = ({ value, unit, what }: WalkFigure) =>
  `${showSignificant(value, 4)} ${unit} ${showAnalyte(what)}`;

function Walk({ walk }: { readonly walk: PercentWalk }) {
  return (
    <>
      <ol className="walk">
        {walk.steps.map((step) => (
          <li key={step.title}>
            <h2>{step.title}</h2>
            <p className="sum">
              {shown(step.before)}
              {step.factor !== null && <span className="faint"> × {showSignificant(step.factor, 4)}</span>} →{' '}
              <strong>{shown(step.after)}</strong>
            </p>
            <p className="faint">{step.words}</p>
          </li>
        ))}
      </ol>
      <section className="stack" aria-labelledby="choices">
        <h2 id="choices">Grams that bring that lead, each used alone</h2>
        <DataTable
          snug
          label="Grams that bring that lead"
          columns={COLUMNS}
          rows={walk.choices}
          rowKey={(row) => row.formula}
        />
      </section>
      <Notice kind="caution" title="What copying the figure gives">
        <p>{walk.copied.words}</p>
      </Notice>
    </>
  );
}

const COLUMNS: readonly Column<PercentWalk['choices'][number]>[] = [
  {
    id: 'name',
    label: 'Material',
    header: true,
    cell: (row) => (
      <>
        {row.name} <span className="small faint">{showAnalyte(row.formula)}</span>
      </>
    ),
  },
  { id: 'grams', label: 'g', numeric: true, cell: (row) => row.grams.toFixed(2) },
  { id: 'note', label: 'What to know', prose: true, cell: (row) => row.note },
];
