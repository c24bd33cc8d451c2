import { useCallback } from 'react';
import { pairCaption } from '../../../../api/figures/captions-more.ts';
import { pairData, tellingOxides } from '../../../../api/figures/oxides-from-model.ts';
import { pairHeight, pairPlot } from '../../../../api/figures/pair-plot.ts';
import { Select } from '../../../parts/Select.tsx';
import { Fold } from '../panel/Fold.tsx';
import { exchanged, oxideChoices, requireOxides } from './oxides.ts';
import { View } from './View.tsx';
import type { OtherViewProps } from './view-props.ts';

const AXES = [
  { id: 'log', label: 'Logarithmic' },
  { id: 'linear', label: 'Linear' },
] as const;

/** One oxide against another, as papers show it. */
export function PairView({ result, view, onView, slots }: OtherViewProps) {
  const { model, placements } = result;
  const { axis, level, ellipses, replica } = view;
  const oxides = view.pair ?? (tellingOxides(model, 2) as [string, string]);
  const [across, up] = oxides;
  const make = useCallback(() => {
    requireOxides([across, up], 2);
    const look = { axis, level, ellipses, slots, chosen: replica };
    const data = pairData(model, placements, { id: 'pair', oxides: [across, up], ...look })!;
    return { data, caption: pairCaption(data) };
  }, [model, placements, across, up, axis, level, ellipses, replica, slots]);
  const choices = oxideChoices(model.parts);
  const put = (at: 0 | 1, oxide: string) => onView({ pair: exchanged(oxides, at, oxide) });
  return (
    <Fold title="Two oxides" gist={`${across}, ${up}`}>
      <View figure={pairPlot} height={pairHeight} name="two-oxides" make={make}>
        <Select label="Across" choices={choices} value={across} onChange={(oxide) => put(0, oxide)} />
        <Select label="Up" choices={choices} value={up} onChange={(oxide) => put(1, oxide)} />
        <div className="wide">
          <Select label="Axes" choices={AXES} value={axis} onChange={(id) => onView({ axis: id })} />
        </div>
      </View>
    </Fold>
  );
}
