import type { Judge } from './judge.ts';
import type { KernelDistances } from './kernel-run.ts';

/** Draws with a verdict, group by group. */
export interface Verdicts {
  readonly inside: number[];
  readonly outside: number[];
}

/** A block of draws, placed, and where their verdicts are counted. */
export interface Counting {
  readonly distances: KernelDistances;
  readonly first: number;
  readonly size: number;
  readonly verdicts: Verdicts;
}

/**
 * Judges a block of placed draws (laid out part by part) and adds to the counts, group by group.
 * @example
 * const judge = { verdict: (d2) => (d2 > 4 ? 'outside' : 'inside'), membership: null };
 * const verdicts = { inside: [0], outside: [0] };
 * countVerdicts([judge], Float64Array.of(1, 2, 3), { distances: { draws: 3, d2: Float64Array.of(1, 9, 3), off2: Float64Array.of(0, 0, 0) }, first: 0, size: 3, verdicts });
 * verdicts // { inside: [2], outside: [1] }
 */
export function countVerdicts(
  judges: readonly (Judge | null)[],
  y: Float64Array,
  { distances, first, size, verdicts }: Counting,
): void {
  judges.forEach((judge, g) => {
    if (!judge) return;
    let i = 0;
    const coordinates = () => Array.from({ length: y.length / size }, (_, j) => y[j * size + i]!);
    for (let at = g * distances.draws + first; i < size; i++, at++) {
      const said = judge.verdict(distances.d2[at]!, distances.off2[at]!, coordinates);
      if (said === 'inside') verdicts.inside[g]! += 1;
      if (said === 'outside') verdicts.outside[g]! += 1;
    }
  });
}
