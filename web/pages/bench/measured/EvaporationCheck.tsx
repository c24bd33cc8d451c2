import { useState } from 'react';
import type { FiredBatch } from '../../../../api/domain/batch/batch.ts';
import { evaporationOutlook, layerMass } from '../../../../api/domain/batch/evaporation.ts';
import type { PredictionResult } from '../../../../api/domain/batch/prediction.ts';
import { Field } from '../../../parts/Field.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { readNumber } from '../../../parts/numbers.ts';
import { attempt } from '../parts/attempt.ts';
import { showRange } from '../parts/Range.tsx';

interface EvaporationCheckProps {
  readonly lost: PredictionResult['leadLost'];
  readonly fired: FiredBatch;
  readonly celsius: number;
}

/** Whether so much lead could have left such a layer at all. */
export function EvaporationCheck({ lost, fired, celsius }: EvaporationCheckProps) {
  const [thickness, setThickness] = useState('60');
  const [density, setDensity] = useState('5');
  const [hours, setHours] = useState('0.5');
  const leadOxide = fired.oxides.find((one) => one.oxide === 'PbO')?.percent ?? 0;
  if (!lost || leadOxide === 0) return null;
  const read = (text: string) => readNumber(text) ?? Number.NaN;
  const outlook = attempt(() =>
    evaporationOutlook({
      milligrams: layerMass(read(thickness), read(density)),
      ...{ leadOxide, hours: read(hours), celsius },
    }),
  );
  return (
    <section className="stack" aria-labelledby="evaporation">
      <h2 id="evaporation">Could that lead have evaporated?</h2>
      <p className="faint small">
        Thickness, density and hours are assumptions until you put your own in their place.
      </p>
      <div className="fields">
        <Field label="Paint’s thickness (µm)" inputMode="decimal" value={thickness} onChange={setThickness} />
        <Field label="Its density (g/cm³)" inputMode="decimal" value={density} onChange={setDensity} />
        <Field label="Hours near the peak" inputMode="decimal" value={hours} onChange={setHours} />
      </div>
      {outlook.value ? (
        <p>
          Such a layer could lose{' '}
          {showRange({ low: 100 * outlook.value.share.low, high: 100 * outlook.value.share.high })} % of its
          lead; {(100 * lost.share).toFixed(1)} ± {(100 * lost.sigma).toFixed(1)} % is missing.{' '}
          {outlook.value.words}
        </p>
      ) : (
        <Notice kind="error">{outlook.reason}</Notice>
      )}
    </section>
  );
}
