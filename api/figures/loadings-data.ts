import type { ReferenceModel } from '../domain/reference/types.ts';

/** How each oxide pulls on some principal components. */
export interface LoadingsData {
  readonly id: string;
  readonly title: string;
  /** From left to right: which component, its share of the variance (0–1), and a loading for each part. */
  readonly panels: readonly {
    readonly component: number;
    readonly explained: number;
    readonly values: readonly number[];
  }[];
  readonly parts: readonly string[];
}

/** Loadings on two components, the oxide that pulls the most on either first. */
export function loadingsData(
  { pca, parts }: ReferenceModel,
  { id, components }: { readonly id: string; readonly components: readonly [number, number] },
): LoadingsData {
  const shown = [...new Set(components)].filter((k) => k < pca.eigenvalues.length);
  const pull = (part: number) => Math.max(...shown.map((k) => Math.abs(pca.loadings[k]![part]!)));
  const order = parts.map((_, part) => part).sort((one, other) => pull(other) - pull(one));
  return {
    id,
    title: `Loadings of ${parts.length} oxides on ${shown.map((k) => `PC${k + 1}`).join(' and ')}`,
    panels: shown.map((k) => ({
      component: k,
      explained: pca.explained[k]!,
      values: order.map((part) => pca.loadings[k]![part]!),
    })),
    parts: order.map((part) => parts[part]!),
  };
}
