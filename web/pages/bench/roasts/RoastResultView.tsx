import type { ReactNode } from 'react';
import { airForLimit } from '../../../../api/domain/batch/gas.ts';
import type { RoastResult } from '../../../../api/domain/batch/roast.ts';
import { judgeRoast, type RoastLooks } from '../../../../api/domain/batch/roast-judgement.ts';
import type { PhaseRange, RoastRanges } from '../../../../api/domain/batch/roast-ranges.ts';
import type { Hazard } from '../../../../api/domain/batch/types.ts';
import { type Column, DataTable } from '../../../parts/DataTable.tsx';
import { withFormulas } from '../../../parts/formulas.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { NumberWithUnit } from '../../../parts/NumberWithUnit.tsx';
import { showAnalyte } from '../../../parts/numbers.ts';
import { Range } from '../parts/Range.tsx';

const TITLES = {
  'not fully oxidised': 'Not fully oxidised',
  'oxidised, sulfate kept': 'Oxidised; sulfate kept',
  'looks oxidised': 'Looks oxidised; the weighing cannot confirm it',
  'mostly oxide': 'Mostly oxide',
  'cannot be told': 'Cannot be told yet',
} as const;

/** What a weighing leaves open, and what to do next. */
export function RoastResultView(at: { readonly result: RoastResult; readonly looks: RoastLooks | null }) {
  const { result } = at;
  const judgement = judgeRoast(result, at.looks);
  const kind = judgement.verdict === 'not fully oxidised' ? 'caution' : 'info';
  return (
    <div className="stack wide-gap">
      <Notice kind={kind} title={TITLES[judgement.verdict]}>
        {judgement.because.map((words) => (
          <p key={words}>{withFormulas(words)}</p>
        ))}
        <ul>
          {judgement.steps.map((step) => (
            <li key={step.words}>
              {withFormulas(step.words)}
              {step.celsius && ` ${step.celsius.low} to ${step.celsius.high} °C.`}
            </li>
          ))}
        </ul>
      </Notice>
      <Facts result={result} />
      <Phases ranges={result} title="Every mixture that the weighing allows" />
      {result.expected && (
        <Phases
          ranges={result.expected}
          title={`Only what is seen at ${result.record.celsius} °C: ${result.expectedPhases.map(showAnalyte).join(', ')}`}
        />
      )}
      <p className="faint small">
        One weighing cannot tell oxide, sulfates and leftover galena apart: each range is over all mixtures
        with the lead that went in and the mass that came out. A sulfur reading narrows it.
      </p>
    </div>
  );
}

function Facts({ result }: { readonly result: RoastResult }) {
  const { massIn, change, inert, leadOxide, sulfur, dioxide } = result;
  return (
    <dl className="facts">
      <Fact name="Dry mass in">
        <NumberWithUnit value={massIn} unit="g" />
      </Fact>
      <Fact name="Change of mass">
        <NumberWithUnit value={change} unit="wt%" />
      </Fact>
      <Fact name="Lead, as PbO">
        <Range span={leadOxide} unit="wt%" />
      </Fact>
      <Fact name="Sulfur left">
        <Range span={sulfur.percent} unit="wt%" />
      </Fact>
      <Fact name="Sulfur per lead">
        <Range span={sulfur.perLead} unit="mol/mol" />
      </Fact>
      {inert.high > 0.005 && (
        <Fact name="Other than lead and sulfur">
          <Range span={inert} unit="g" />
        </Fact>
      )}
      <Fact name="Sulfur dioxide given off">
        <Range span={dioxide.grams} unit="g" />,{' '}
        <Range
          span={dioxide.litres}
          unit={`L at ${dioxide.state.celsius} °C and ${dioxide.state.kilopascal} kPa`}
        />
      </Fact>
      {dioxide.grams.high > 0.05 && (
        <Fact name="Air that it fills to 2 ppm (NIOSH, a working day)">
          up to {rounded(airForLimit('SO2', dioxide.grams.high, 2))} m³
        </Fact>
      )}
    </dl>
  );
}

function Fact(at: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{at.name}</dt>
      <dd>{at.children}</dd>
    </div>
  );
}

const COLUMNS: readonly Column<PhaseRange>[] = [
  {
    id: 'phase',
    label: 'Compound',
    header: true,
    cell: (row) => (
      <>
        {showAnalyte(row.formula)} <span className="small faint">{row.name}</span>
      </>
    ),
  },
  { id: 'grams', label: 'g', numeric: true, cell: (row) => <Range span={row.grams} /> },
  { id: 'percent', label: 'wt% of the charge', numeric: true, cell: (row) => <Range span={row.percent} /> },
];

function Phases({ ranges, title }: { readonly ranges: RoastRanges; readonly title: string }) {
  return (
    <section className="stack">
      <h3>{title}</h3>
      <DataTable snug label={title} columns={COLUMNS} rows={ranges.phases} rowKey={(row) => row.formula} />
    </section>
  );
}

/** To two digits: it stands for how far, not how much. */
const rounded = (x: number) => Number(x.toPrecision(2)).toLocaleString('en-GB');

/** What the charge holds, and sulfur dioxide where any may leave. */
export function roastHazards({ record, dioxide }: RoastResult): Hazard[] {
  const held = record.charge.flatMap((line) => line.material.hazards);
  return dioxide.grams.high > 0 ? [...held, 'sulfur', 'fire'] : [...held, 'fire'];
}
