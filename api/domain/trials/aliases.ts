import { listInWords } from '../placement/words.ts';
import type { Fraction } from './fraction.ts';

/**
 * What a fraction cannot tell apart, in words: each factor with the pairs it is mixed up with, pairs mixed up with one
 * another, or that nothing up to pairs is. Names are in the order of the factors.
 *
 * @example
 * aliasSentences(fractionBy(3, ['C=AB']), ['lead', 'roast', 'air'])[0] // 'What lead does cannot be told from what roast and air do together.'
 * aliasSentences(fractionBy(4, ['D=ABC']), ['a', 'b', 'c', 'd'])[0] // 'Each factor by itself is clear of pairs of others.'
 * aliasSentences(fractionBy(2, []), ['a', 'b']) // []
 */
export function aliasSentences({ words, resolution, factors }: Fraction, names: readonly string[]): string[] {
  if (resolution === null) return [];
  const sets = words.map((w) => w.bits);
  const named = (bits: number) => listInWords(names.filter((_, i) => bits & (1 << i)));
  if (resolution === 2)
    return sets
      .filter((bits) => count(bits) === 2)
      .map((bits) => `${named(bits)} always change together: what each does cannot be told apart.`);
  if (resolution === 3)
    return names.flatMap((name, i) => {
      const pairs = sets.map((bits) => bits ^ (1 << i)).filter((bits) => count(bits) === 2);
      return pairs.length === 0
        ? []
        : [`What ${name} does cannot be told from what ${pairs.map(named).join(', or ')} do together.`];
    });
  const clear = 'Each factor by itself is clear of pairs of others.';
  if (resolution > 4) return [clear, 'Pairs are clear of one another too.'];
  return [clear, ...pairSets(sets, factors).map((set) => mixedPairs(set.map(named)))];
}

function count(bits: number): number {
  return bits === 0 ? 0 : (bits & 1) + count(bits >> 1);
}

const mixedPairs = (pairs: readonly string[]) =>
  `What ${pairs[0]} do together cannot be told from what ${pairs.slice(1).join(', or ')} do together.`;

/** Pairs of factors grouped by being mixed up with one another. */
function pairSets(words: readonly number[], factors: number): number[][] {
  const pairs = Array.from({ length: factors }, (_, i) =>
    Array.from({ length: i }, (__, j) => (1 << j) | (1 << i)),
  ).flat();
  const seen = new Set<number>();
  return pairs.flatMap((pair) => {
    if (seen.has(pair)) return [];
    const set = [pair, ...words.map((w) => w ^ pair).filter((bits) => count(bits) === 2)];
    for (const member of set) seen.add(member);
    return set.length > 1 ? [set] : [];
  });
}
