import type { Advice } from '../../../../api/domain/batch/advice.ts';
import type { FiredBatch } from '../../../../api/domain/batch/batch.ts';
import { ROOM } from '../../../../api/domain/batch/gas.ts';
import type { UnityFormula } from '../../../../api/domain/batch/unity.ts';
import { withFormulas } from '../../../parts/formulas.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { NumberWithUnit } from '../../../parts/NumberWithUnit.tsx';
import { Range } from '../parts/Range.tsx';
import { SaveTable } from '../parts/SaveTable.tsx';
import { firedTable } from '../tables.ts';
import { dioxideLitres, type Fired } from './compute.ts';
import { OxidesTable } from './OxidesTable.tsx';
import { Unity } from './Unity.tsx';

/** Of the batch as a whole: nothing here is told line by line. */
type Whole = Omit<FiredBatch, 'lines'>;

/** What a batch becomes: oxides, molecular formula, losses. */
export function FiredResult({
  result,
}: {
  readonly result: Omit<Fired, 'fired'> & { readonly fired: Whole };
}) {
  const { fired, celsius, unity, advice } = result;
  return (
    <div className="stack wide-gap">
      <AdviceNotices advice={advice} />
      {fired.warnings.length > 0 && (
        <Notice title="To be known of the materials">
          <ul>
            {fired.warnings.map((words) => (
              <li key={words}>{withFormulas(words)}</li>
            ))}
          </ul>
        </Notice>
      )}
      <section className="stack" aria-labelledby="fired-oxides">
        <h2 id="fired-oxides">Fired paint</h2>
        <OxidesTable oxides={fired.oxides} />
        <SaveTable
          name="fired-paint"
          table={firedTable(fired.oxides)}
          label="Download the fired paint as CSV"
        />
        <p className="faint small">
          wt% closed to 100; ± is one standard deviation from weighing and from the materials’ analyses; the
          range is what sulfur, purity and roast leave open. Iron is written as Fe₂O₃, manganese as MnO,
          copper as CuO, as analyses are.{drivenOff(fired, celsius)}
        </p>
      </section>
      <UnitySection unity={unity} />
      <Losses fired={fired} />
    </div>
  );
}

/** Below it calcite can keep its carbonate for long; value from memory, for still air. */
const CALCITE_GONE = 900;

function drivenOff({ totals }: Whole, celsius: number): string {
  const { CO2, H2O } = totals.gases;
  if (CO2 + H2O <= 0) return '';
  const taken = ' Carbonates and hydroxides are taken as fully driven off';
  return celsius < CALCITE_GONE && CO2 > 0
    ? `${taken}; calcite may need up to about ${CALCITE_GONE} °C or a long fire for that (common practice, no published source).`
    : `${taken}.`;
}

function AdviceNotices({ advice }: { readonly advice: readonly Advice[] }) {
  return (
    <>
      {advice.map(({ what, words, steps }) => (
        <Notice key={what} kind={what === 'roast missing' ? 'caution' : 'info'}>
          <p>{withFormulas(words)}</p>
          {steps.length > 0 && (
            <ul>
              {steps.map((step) => (
                <li key={step.words}>
                  {withFormulas(step.words)}
                  {step.celsius && ` ${step.celsius.low} to ${step.celsius.high} °C.`}
                </li>
              ))}
            </ul>
          )}
        </Notice>
      ))}
    </>
  );
}

function UnitySection({ unity }: { readonly unity: UnityFormula | null }) {
  return (
    <section className="stack" aria-labelledby="unity">
      <h2 id="unity">Molecular formula</h2>
      {unity ? (
        <Unity unity={unity} />
      ) : (
        <p className="faint">There is no flux (RO or R₂O) to set to one, so there is no molecular formula.</p>
      )}
    </section>
  );
}

function Losses({ fired }: { readonly fired: Whole }) {
  const { loss, sulfur } = fired;
  return (
    <section className="stack" aria-labelledby="losses">
      <h2 id="losses">What leaves</h2>
      <dl className="facts">
        <div>
          <dt>Loss on ignition of the dry batch</dt>
          <dd>
            <NumberWithUnit value={loss.percent} unit="wt%" />
            {loss.high - loss.low > 0.005 && (
              <>
                {' '}
                (<Range span={loss} unit="wt%" />)
              </>
            )}
          </dd>
        </div>
        {sulfur.brought.high > 0 && (
          <>
            <div>
              <dt>Sulfur brought in</dt>
              <dd>
                <Range span={sulfur.brought} unit="g" />
              </dd>
            </div>
            <div>
              <dt>Kept as SO₃</dt>
              <dd>
                <Range span={sulfur.kept} unit="g" />
              </dd>
            </div>
            <div>
              <dt>Sulfur dioxide given off</dt>
              <dd>
                <Range span={sulfur.dioxide} unit="g" />,{' '}
                <Range span={dioxideLitres(sulfur.dioxide)} unit={`L at ${ROOM.celsius} °C`} />
              </dd>
            </div>
          </>
        )}
      </dl>
    </section>
  );
}
