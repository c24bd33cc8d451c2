import { useSyncExternalStore } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { useAnalyses } from '../../../queries/analyses.ts';
import { useTiles } from '../../../queries/fire.ts';
import type { SlipSectionProps } from './section-props.ts';
import { lineOf, thicknessesOf } from './zone-thickness.ts';

const MOST = 1000;

/** Puts thicknesses noted zone by zone into the list of tiles, and says where they came from. */
export function FromZones({
  slip,
  result,
  onTake,
}: SlipSectionProps & { readonly onTake: (lines: string) => void }) {
  const tiles = useTiles(slip.study).data;
  const analyses = useAnalyses(slip.study, { measured: 'paint', zone: 'any', limit: MOST }).data?.rows;
  const live = useSyncExternalStore(slip.live.subscribe, slip.live.get);
  // Until both are there, no mean may be offered: it would be of zones that nobody analysed.
  if (!tiles || !analyses) return null;
  const placed = result.placements.map(({ id }) => id);
  const here = tiles.filter(({ id }) => placed.includes(id));
  const analysed = new Set(analyses.flatMap(({ zone }) => zone ?? []));
  const found = thicknessesOf(here, analysed);
  if (found.length === 0) return null;
  const shareOf = (label: string) => {
    const tile = here.find((one) => one.label === label);
    return (tile && live?.byId.get(tile.id)?.choice) || null;
  };
  return (
    <div className="stack tight">
      <div className="row">
        <Button onPress={() => onTake(found.map((one) => lineOf(one, shareOf(one.label))).join('\n'))}>
          Take thicknesses from zones
        </Button>
      </div>
      <p className="small faint">
        Means of the zones that were analysed, or of all where none is noted; ± is the standard deviation
        between them. {found.map(({ label, zones }) => `${label}: ${zones.join(', ')}`).join('. ')}. f is put
        in where it is set with its uncertainty; the rest is yours to fill in.
      </p>
    </div>
  );
}
