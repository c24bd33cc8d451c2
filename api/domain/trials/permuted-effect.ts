import { listInWords } from '../placement/words.ts';
import { dot } from '../slip/weighted.ts';
import { centreWithin, takeOut } from './columns.ts';
import type { EffectNumbers, EffectOptions } from './effect-numbers.ts';
import { heldSlope } from './held-slope.ts';
import { type BlockedUnits, PERMUTATION_DRAWS, permutationSlope } from './permutation-slope.ts';
import type { Term } from './terms.ts';

/** With fewer left, few levels held beside few call up to twice too often (docs/coverage-trials.md). */
export const LEAST_COMPARISONS = 6;

const ROUNDING = 1e-18;

/** A factor that is held, with its mean in each unit. */
export interface HeldTerm {
  readonly term: Pick<Term, 'factor'>;
  readonly values: readonly number[];
}

/** Units, the factor whose effect is asked, and those held. */
export interface PermutedRequest {
  readonly units: BlockedUnits;
  readonly term: Pick<Term, 'factor' | 'unitOfChange'>;
  readonly others: readonly HeldTerm[];
  readonly scale: 'share' | 'grades';
}

/**
 * The effect of a factor on a mean outcome by permuting units within blocks: exact where nothing is held
 * (`permutationSlope`), approximate where other factors are taken out first (`heldSlope`), and then too little for a
 * verdict where fewer than `LEAST_COMPARISONS` comparisons are left. Outcomes that are alike show nothing and set no
 * limits. Throws as those.
 *
 * @example
 * const units = { blocks: [1, 1, 1, 1], x: [0, 1, 0, 1], y: [1, 2, 3, 4] }
 * const term = { factor: { name: 'roast' }, unitOfChange: 'tile' }
 * permutedEffect({ units, term, others: [], scale: 'share' }, { level: 0.95, seed: 1 }) // { method: 'exact-permutation', estimate: 1, arrangements: 6 }
 * const lead = { term: { factor: { name: 'lead' } }, values: [0, 0, 1, 1] }
 * permutedEffect({ units, term, others: [lead], scale: 'share' }, { level: 0.95, seed: 1 }) // { method: 'approximate-permutation', estimate: 1, tooFew: true }
 */
export function permutedEffect(
  { units, term, others, scale }: PermutedRequest,
  options: EffectOptions,
): EffectNumbers {
  const asked = others.map((o) => o.values);
  if (isFlat(units, asked)) return { ...UNTOLD, scale };
  if (others.length === 0) {
    const { sampled, ...found } = permutationSlope(units, options);
    return {
      ...found,
      method: sampled ? 'sampled-permutation' : 'exact-permutation',
      scale,
      separated: false,
      ...(sampled ? { draws: PERMUTATION_DRAWS } : {}),
      cautions: [],
    };
  }
  const { sampled, comparisons, ...found } = heldSlope(units, asked, options);
  const tooFew = comparisons < LEAST_COMPARISONS;
  const held = heldInWords(term, others);
  return {
    ...found,
    method: 'approximate-permutation',
    scale,
    separated: false,
    ...(sampled ? { draws: PERMUTATION_DRAWS } : {}),
    ...(tooFew ? { tooFew } : {}),
    cautions: [
      `p is approximate: the effect of ${held} was taken out first, and what that leaves was permuted.`,
      ...(tooFew ? [fewInWords(comparisons, held, term)] : []),
    ],
  };
}

/** Outcomes that are alike within blocks, or follow from what is held, show nothing. */
const UNTOLD: Omit<EffectNumbers, 'scale'> = {
  method: 'exact-permutation',
  estimate: null,
  low: null,
  high: null,
  p: 1,
  arrangements: null,
  smallestP: 1,
  separated: false,
  cautions: ['The outcome was the same wherever this could be compared.'],
};

function isFlat({ blocks, y }: BlockedUnits, others: readonly (readonly number[])[]): boolean {
  const within = blocks.map(String);
  const centred = (v: readonly number[]) => centreWithin(v, within);
  const { left } = takeOut(centred(y), others.map(centred));
  return dot(left, left) <= ROUNDING * dot(y, y);
}

function heldInWords({ factor }: Pick<Term, 'factor'>, others: readonly HeldTerm[]): string {
  const names = [...new Set(others.map((o) => o.term.factor.name))];
  return listInWords(names.map((name) => (name === factor.name ? `the other levels of ${name}` : name)));
}

function fewInWords(comparisons: number, held: string, { unitOfChange }: Pick<Term, 'unitOfChange'>): string {
  const found = comparisons === 1 ? '1 comparison is' : `${comparisons} comparisons are`;
  return `With ${held} held, ${found} left between ${unitOfChange}s; a verdict needs at least ${LEAST_COMPARISONS}.`;
}
