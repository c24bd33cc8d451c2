import { useCallback } from 'react';
import { ternaryCaption } from '../../../../api/figures/captions-more.ts';
import { tellingOxides, ternaryData } from '../../../../api/figures/oxides-from-model.ts';
import { ternaryHeight, ternaryPlot } from '../../../../api/figures/ternary-plot.ts';
import { Select } from '../../../parts/Select.tsx';
import { Fold } from '../panel/Fold.tsx';
import { exchanged, oxideChoices, requireOxides } from './oxides.ts';
import { View } from './View.tsx';
import type { OtherViewProps } from './view-props.ts';

const CORNERS = ['Top', 'Left', 'Right'] as const;

/** Shares of three oxides. */
export function TernaryView({ result, view, onView, slots }: OtherViewProps) {
  const { model, placements } = result;
  const { replica } = view;
  const oxides = view.ternary ?? (tellingOxides(model, 3) as [string, string, string]);
  const [top, left, right] = oxides;
  const make = useCallback(() => {
    requireOxides([top, left, right], 3);
    const choices = { id: 'ternary', oxides: [top, left, right] as const, slots, chosen: replica };
    const data = ternaryData(model, placements, choices)!;
    return { data, caption: ternaryCaption(data) };
  }, [model, placements, top, left, right, replica, slots]);
  const choices = oxideChoices(model.parts);
  return (
    <Fold title="Three oxides" gist={oxides.join(', ')}>
      <View figure={ternaryPlot} height={ternaryHeight} name="three-oxides" make={make}>
        {CORNERS.map((corner, at) => (
          <Select
            key={corner}
            label={corner}
            choices={choices}
            value={oxides[at] ?? null}
            onChange={(oxide) => onView({ ternary: exchanged(oxides, at, oxide) })}
          />
        ))}
      </View>
    </Fold>
  );
}
