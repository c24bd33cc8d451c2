import { useCallback } from 'react';
import { dendrogramCaption, heatMapCaption } from '../../../../api/figures/captions-more.ts';
import { dendrogram, dendrogramHeight } from '../../../../api/figures/dendrogram.ts';
import { distancesData } from '../../../../api/figures/distances-data.ts';
import { heatMap, heatMapHeight } from '../../../../api/figures/heat-map.ts';
import { Select } from '../../../parts/Select.tsx';
import { Fold } from '../panel/Fold.tsx';
import { View } from './View.tsx';
import type { OtherViewProps } from './view-props.ts';

const LINKAGES = [
  { id: 'ward', label: 'Ward’s criterion', hint: 'Tight clusters of like size' },
  { id: 'average', label: 'Average linkage', hint: 'By the mean distance of two clusters' },
] as const;

/** Who is like whom: as a tree, and as every distance there is. */
export function DistanceViews({ result, view, onView, slots }: OtherViewProps) {
  const { model, placements } = result;
  const { linkage, replica } = view;
  const distances = useCallback(
    (id: string) => distancesData(model, placements, { id, linkage, slots, chosen: replica }),
    [model, placements, linkage, slots, replica],
  );
  const tree = useCallback(() => {
    const data = distances('dendrogram');
    return { data, caption: dendrogramCaption(data, model, true) };
  }, [distances, model]);
  const map = useCallback(() => {
    const data = distances('heatmap');
    return { data, caption: heatMapCaption(data, model) };
  }, [distances, model]);
  const joined = (
    <div className="wide">
      <Select
        label="Joined by"
        choices={LINKAGES}
        value={linkage}
        onChange={(id) => onView({ linkage: id })}
      />
    </div>
  );
  return (
    <>
      <Fold title="Tree" gist="Who is like whom">
        <View figure={dendrogram} height={dendrogramHeight} name="tree" make={tree}>
          {joined}
        </View>
      </Fold>
      <Fold title="Distances" gist="Every pair">
        <View figure={heatMap} height={heatMapHeight} name="distances" make={map}>
          {joined}
        </View>
      </Fold>
    </>
  );
}
