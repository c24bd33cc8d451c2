import { type Quadtree, quadtree } from 'd3';
import type { ScoresData } from '../../../../api/figures/scores-data.ts';
import type { Source } from '../../../parts/figure/source.ts';
import { type Read, setsOf } from './walk.ts';

export interface Finder {
  readonly sets: readonly (readonly Read[])[];
  readonly nearest: (x: number, y: number, within: number) => Read | null;
  readonly byId: (id: string) => Read | null;
}

/** Finds points on a plot; the search tree is made when first asked for, not while a slider moves. */
export function finderOf(data: ScoresData): Finder {
  let tree: Quadtree<Read> | null = null;
  const sets = setsOf(data);
  return {
    sets,
    nearest: (x, y, within) => {
      tree ??= quadtree(
        sets.flat(),
        (point) => point.x,
        (point) => point.y,
      );
      return tree.find(x, y, within) ?? null;
    },
    byId: (id) => sets.flat().find((point) => point.id === id) ?? null,
  };
}

/** A finder for what a source holds now, made anew only after it changed. */
export function followingFinder(source: Source<ScoresData>): () => Finder {
  let kept: { readonly data: ScoresData; readonly finder: Finder } | null = null;
  return () => {
    const data = source.get();
    if (kept?.data !== data) kept = { data, finder: finderOf(data) };
    return kept.finder;
  };
}
