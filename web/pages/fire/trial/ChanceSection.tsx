import { useMemo } from 'react';
import type { ChanceAnswer, TrialAsked } from '../../../../api/contract/trial.ts';
import { chanceCaption } from '../../../../api/figures/captions-trial.ts';
import { chanceHeight, chancePlot } from '../../../../api/figures/chance-plot.ts';
import { CaptionedFigure } from '../../../parts/figure/CaptionedFigure.tsx';
import { Loaded } from '../../../parts/Loaded.tsx';
import { Select } from '../../../parts/Select.tsx';
import { useChance } from '../../../queries/fire.ts';

/** The chance of a glossy zone against one factor, with every zone that it rests on. */
export function ChanceSection({
  study,
  asked,
  against,
  onAgainst,
}: {
  readonly study: string;
  readonly asked: TrialAsked;
  readonly against: string;
  readonly onAgainst: (factor: string) => void;
}) {
  const names = asked.factors.map((one) => one.name);
  const chance = useChance(study, { ...asked, against });
  return (
    <section className="stack" aria-labelledby="chance">
      <h2 id="chance">Chance of a glossy zone</h2>
      <div className="tile-firing">
        <Select
          label="Against"
          choices={names.map((name) => ({ id: name, label: name }))}
          value={against}
          onChange={onAgainst}
        />
      </div>
      <Loaded query={chance} what="the chance">
        {(curve) => <Chance curve={curve} />}
      </Loaded>
    </section>
  );
}

export function Chance({ curve }: { readonly curve: ChanceAnswer }) {
  const data = useMemo(() => ({ id: 'chance-plot', curve }), [curve]);
  return (
    <CaptionedFigure figure={chancePlot} height={chanceHeight} data={data} caption={chanceCaption(curve)} />
  );
}
