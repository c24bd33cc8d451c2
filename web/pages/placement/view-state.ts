import type { Comparison } from '../../../api/contract/placement.ts';
import type { Linkage } from '../../../api/domain/statistics/hclust.ts';
import type { ProfileData } from '../../../api/figures/profile-data.ts';
import type { ScoresData } from '../../../api/figures/scores-data.ts';

/** How a comparison is looked at; nothing here changes a number. */
export interface ViewState {
  readonly replica: string | null;
  /** Ware group looked at; null for the one the sentence is about. */
  readonly against: string | null;
  readonly components: readonly [number, number];
  readonly level: number;
  readonly ellipses: boolean;
  readonly loadings: boolean;
  readonly naming: ScoresData['naming'];
  readonly basis: ProfileData['basis'];
  readonly others: boolean;
  /** Oxides of the plots of two and of three; null for those that tell the most. */
  readonly pair: readonly [string, string] | null;
  readonly ternary: readonly [string, string, string] | null;
  readonly axis: 'log' | 'linear';
  readonly linkage: Linkage;
}
export const FIRST_VIEW: ViewState = {
  replica: null,
  against: null,
  components: [0, 1],
  level: 0.95,
  ellipses: true,
  loadings: false,
  naming: 'replicas',
  basis: 'ratio',
  others: false,
  pair: null,
  ternary: null,
  axis: 'log',
  linkage: 'ward',
};
export const viewKey = (study: string): string => `placement-view.1.${study}`;
export const keptViewKey = (study: string, placement: string): string => `${viewKey(study)}.${placement}`;

/** The view with what is no longer there put right: a replica or an oxide that is gone, a component there is not. */
export function soundView(wished: Partial<ViewState>, { placements, model }: Comparison): ViewState {
  const view = { ...FIRST_VIEW, ...wished };
  const replica = placements.find(({ id }) => id === view.replica)?.id ?? placements[0]?.id ?? null;
  const against = model.groups.find(({ id }) => id === view.against)?.id ?? null;
  const last = model.pca.eigenvalues.length - 1;
  const [i, j] = view.components;
  const components =
    i <= last && (j <= last || last < 1) && i !== j ? view.components : FIRST_VIEW.components;
  const compared = (oxides: readonly string[] | null) =>
    oxides?.every((oxide) => model.parts.includes(oxide)) ?? false;
  const pair = compared(view.pair) ? view.pair : null;
  const ternary = compared(view.ternary) ? view.ternary : null;
  return { ...view, replica, against, components, pair, ternary };
}
