import type { Placement } from '../domain/placement/types.ts';
import { coordinatesOf } from '../domain/reference/scale.ts';
import type { ReferenceModel } from '../domain/reference/types.ts';
import { RequirementError } from '../domain/requirement.ts';
import {
  type Clustering,
  distanceMatrix,
  hierarchicalClustering,
  type Linkage,
} from '../domain/statistics/hclust.ts';
import { type ShownGroup, type ShownSample, type Slots, shownSamples } from './chosen-samples.ts';

/** Distances between all specimens of a comparison in its working scale, and the tree they make. */
export interface DistancesData {
  readonly id: string;
  readonly title: string;
  readonly samples: readonly ShownSample[];
  readonly groups: readonly ShownGroup[];
  /** n × n, row by row. */
  readonly distances: Float64Array;
  readonly clustering: Clustering;
  readonly linkage: Linkage;
  /** What the distances are called: Aitchison distance for log-ratios. */
  readonly unit: string;
}

/** More rows than this cannot be told apart on any sheet. */
export const MOST_ROWS = 150;
const UNITS = {
  'log-ratio': 'Aitchison distance',
  log10: 'Distance in log10 wt%',
  standardised: 'Distance in standard deviations',
} as const;

/** What a dendrogram and a heat map draw; throws where there are too many specimens to be told apart. */
export function distancesData(
  model: ReferenceModel,
  placements: readonly Placement[],
  { id, linkage, ...look }: Slots & { readonly id: string; readonly linkage: Linkage },
): DistancesData {
  const { samples, groups } = shownSamples(model, placements, look);
  if (samples.length > MOST_ROWS)
    throw new RequirementError(
      `a figure of all distances shows at most ${MOST_ROWS} specimens; this comparison has ${samples.length}. Compare with fewer ware groups`,
    );
  const distances = distanceMatrix(samples.map(({ parts }) => coordinatesOf(model, parts)));
  const title = `Distances between ${model.members.length} reference sherds and ${placements.length} replicas`;
  const clustering = hierarchicalClustering(distances, linkage);
  return { id, title, samples, groups, distances, clustering, linkage, unit: UNITS[model.settings.scale] };
}
