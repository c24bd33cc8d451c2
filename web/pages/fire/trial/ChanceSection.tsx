import { useMemo, useState } from 'react';
import type { ChanceAnswer, TrialAsked } from '../../../../api/contract/trial.ts';
import { chanceHeight, chancePlot } from '../../../../api/figures/chance-plot.ts';
import { FigureDownload } from '../../../parts/figure/FigureDownload.tsx';
import { FigureView } from '../../../parts/figure/FigureView.tsx';
import { useSourceOf } from '../../../parts/figure/useSource.ts';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useChance } from '../../../queries/fire.ts';

/** The chance of a glossy zone against one factor, with every zone that it rests on. */
export function ChanceSection({ study, asked }: { readonly study: string; readonly asked: TrialAsked }) {
  const [wanted, setWanted] = useState<string | null>(null);
  const names = asked.factors.map((one) => one.name);
  const against = wanted !== null && names.includes(wanted) ? wanted : names[0]!;
  const chance = useChance(study, { ...asked, against });
  return (
    <section className="stack" aria-labelledby="chance">
      <h2 id="chance">Chance of a glossy zone</h2>
      <div className="tile-firing">
        <Select
          label="Against"
          choices={names.map((name) => ({ id: name, label: name }))}
          value={against}
          onChange={setWanted}
        />
      </div>
      <Loaded query={chance} what="the chance">
        {(curve) => <Chance curve={curve} />}
      </Loaded>
    </section>
  );
}

function Chance({ curve }: { readonly curve: ChanceAnswer }) {
  const data = useMemo(() => ({ id: 'chance-plot', curve }), [curve]);
  const source = useSourceOf(data);
  const held = Object.entries(curve.held).map(
    ([name, at]) => `${name} at ${typeof at === 'number' ? Math.round(10 * at) / 10 : at}`,
  );
  return (
    <div className="stack tight">
      <div className="sheet figure-sheet stack tight">
        <FigureView figure={chancePlot} source={source} height={chanceHeight} />
        <div>
          <FigureDownload figure={chancePlot} source={source} height={chanceHeight} name="chance" />
        </div>
      </div>
      <p className="faint">
        Dots above came out {curve.of}, dots below did not; each is one zone.{' '}
        {held.length > 0 && `Held: ${held.join(', ')}. `}
        {curve.note}
      </p>
    </div>
  );
}
