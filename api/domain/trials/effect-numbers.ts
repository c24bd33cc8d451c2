import type { Effect } from './types.ts';

/** The numbers of an effect, before they are put in words. */
export type EffectNumbers = Pick<
  Effect,
  'method' | 'scale' | 'estimate' | 'low' | 'high' | 'p' | 'arrangements' | 'smallestP' | 'separated'
> &
  Pick<Effect, 'draws'> & {
    readonly cautions: readonly string[];
    /** Too little is left to compare for any verdict, whatever p. */
    readonly tooFew?: boolean;
  };

export interface EffectOptions {
  readonly level: number;
  readonly seed: number;
}
