import { type ReactNode, useMemo } from 'react';
import { scoresData } from '../../../api/figures/scores-from-model.ts';
import { createSource } from '../../parts/figure/source.ts';
import { useCombined, useSourceOf } from '../../parts/figure/useSource.ts';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';
import { ScoresFigure } from './scores/ScoresFigure.tsx';
import type { Drawn } from './slip/drawn.ts';
import type { Live } from './slip/placer.ts';
import { withSlip } from './slip/plot.ts';
import type { Slip } from './slip/useSlip.ts';
import type { LookProps } from './Verdict.tsx';
import type { ViewState } from './view-state.ts';
import { percent } from './words.ts';

const LEVELS = [
  { id: '0.9', label: '90 %' },
  { id: '0.95', label: '95 %' },
  { id: '0.99', label: '99 %' },
] as const;
const NAMING: readonly { id: ViewState['naming']; label: string }[] = [
  { id: 'replicas', label: 'All replicas' },
  { id: 'chosen', label: 'This replica' },
  { id: 'everything', label: 'Replicas and sherds' },
  { id: 'nothing', label: 'Nothing' },
];

export interface ScoresSectionProps extends LookProps {
  readonly slots: Readonly<Record<string, number>>;
  readonly sherdActions: (id: string, label: string) => ReactNode;
  readonly slip?: Slip | undefined;
}
const NO_LIVE = createSource<Live | null>(null);
const NO_DRAWS = createSource<Drawn | null>(null);
const over = (live: Live | null, drawn: Drawn | null) => ({ live, drawn });

/** The scores plot and how it is looked at. */
export function ScoresSection({ result, view, onView, slots, sherdActions, slip }: ScoresSectionProps) {
  const { model, placements } = result;
  const { components, level, ellipses, loadings, naming, replica } = view;
  const data = useMemo(() => {
    const look = { components, level, ellipses, loadings, naming, slots };
    return scoresData(model, placements, { id: 'scores', chosen: replica, ...look });
  }, [model, placements, components, level, ellipses, loadings, naming, replica, slots]);
  const plain = useSourceOf(data);
  const slipped = useCombined(slip?.live ?? NO_LIVE, slip?.drawn ?? NO_DRAWS, over);
  const source = useCombined(plain, slipped, withSlip);
  const plane = useMemo(() => ({ model, components }), [model, components]);
  return (
    <section className="stack" aria-labelledby="scores-heading">
      <h2 id="scores-heading">Among the sherds</h2>
      <p className="faint">
        Each mark is one specimen; near means alike. The two axes are the directions in which the sherds
        differ most, and hold {percent(data.explained[0] + data.explained[1])} of their differences.
      </p>
      <div className="sheet figure-sheet">
        <ScoresFigure
          source={source}
          plane={plane}
          onChoose={(id) => onView({ replica: id })}
          sherdActions={sherdActions}
        />
      </div>
      <div className="look">
        <ComponentChoice result={result} view={view} onView={onView} />
        <Select label="Name" choices={NAMING} value={naming} onChange={(id) => onView({ naming: id })} />
        <Select
          label="Ellipses hold"
          choices={LEVELS}
          value={String(level) as (typeof LEVELS)[number]['id']}
          onChange={(id) => onView({ level: Number(id) })}
          isDisabled={!ellipses}
        />
        <span className="row ticks">
          <Tick isSelected={ellipses} onChange={(on) => onView({ ellipses: on })}>
            Ellipses
          </Tick>
          <Tick isSelected={loadings} onChange={(on) => onView({ loadings: on })}>
            Oxides
          </Tick>
        </span>
      </div>
    </section>
  );
}

function ComponentChoice({ result, view, onView }: LookProps) {
  const [across, up] = view.components;
  const choices = result.model.pca.explained.map((share, k) => ({
    id: String(k),
    label: `PC${k + 1}`,
    hint: `${percent(share)} of the variance`,
  }));
  // Taking the component of the other axis swaps the two.
  const set = (next: readonly [number, number]) =>
    onView({ components: next[0] === next[1] ? [up, across] : [...next] });
  return (
    <>
      <Select
        label="Across"
        choices={choices}
        value={String(across)}
        onChange={(id) => set([Number(id), up])}
      />
      <Select label="Up" choices={choices} value={String(up)} onChange={(id) => set([across, Number(id)])} />
    </>
  );
}
