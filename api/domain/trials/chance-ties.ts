import { listInWords } from '../placement/words.ts';
import type { Tangle } from './types.ts';

/** A tie as it bears on a curve. */
export interface ChanceTie {
  /** Factors that are left out of the fit, since another stands for them. */
  readonly left: readonly string[];
  readonly sentence: string;
}

/**
 * Of factors that changed together, which is left out of a curve against one of them or another, and what the curve
 * then shows, in words.
 *
 * @example
 * const tie = { factors: ['coats', 'lead'], kind: 'same', sentence: 'coats and lead changed together.' }
 * tiesOf([tie], 'lead') // [{ left: ['coats'], sentence: 'coats and lead changed together. Here coats changed along the curve and could not be held.' }]
 * tiesOf([tie], 'air')[0].sentence // 'coats and lead changed together. Here coats is held and stands for lead too.'
 */
export function tiesOf(
  tangles: readonly Pick<Tangle, 'factors' | 'kind' | 'sentence'>[],
  asked: string,
): ChanceTie[] {
  return tangles
    .filter((tie) => tie.kind === 'same')
    .map((tie) => {
      const stays = tie.factors.includes(asked) ? asked : tie.factors[0]!;
      const left = tie.factors.filter((name) => name !== stays);
      const shows =
        stays === asked
          ? `${listInWords(left)} changed along the curve and could not be held`
          : `${stays} is held and stands for ${listInWords(left)} too`;
      return { left, sentence: `${tie.sentence} Here ${shows}.` };
    });
}
