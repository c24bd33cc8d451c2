import { RequirementError } from '../requirement.ts';

/** A two-level fraction. Words are sets of factors as bits: factor 1 is bit 0. */
export interface Fraction {
  readonly factors: number;
  /** Number of factors that vary freely; the others follow by the generators. */
  readonly basic: number;
  /** `D=ABC`, `E=-ABD`. */
  readonly generators: readonly string[];
  /** Products of factors that never change, all of them, with their constant sign. */
  readonly words: readonly { readonly bits: number; readonly sign: 1 | -1 }[];
  /** Length of the shortest word; null for the full design. */
  readonly resolution: number | null;
  /** One row a run: −1 or 1 for each factor. */
  readonly runs: readonly (readonly (1 | -1)[])[];
}

const MOST = 10;
const LETTERS = 'ABCDEFGHIJ';

const size = (bits: number) => {
  let n = 0;
  for (let left = bits; left > 0; left >>= 1) n += left & 1;
  return n;
};
const lettersOf = (bits: number) => [...LETTERS].filter((_, i) => bits & (1 << i)).join('');

/**
 * A fraction 2^(k − p) of all settings of k two-level factors by its generators (`D=ABC`: the fourth factor's sign is
 * the product of the first three; letters by the order of the factors), or the full design without any. Box & Hunter
 * 1961, doi 10.1080/00401706.1961.10489951. Throws on a generator that does not read so, or names a letter twice.
 *
 * @example
 * const half = fractionBy(4, ['D=ABC'])
 * half.resolution // 4
 * half.runs.length // 8
 * half.runs[0] // [-1, -1, -1, -1]
 * fractionBy(3, ['C=AD']) // throws letters A to B on the right of C=AD
 */
export function fractionBy(factors: number, generators: readonly string[]): Fraction {
  const basic = factors - generators.length;
  if (factors > MOST || basic < 1)
    throw new RequirementError(
      `a fraction needs 1 to ${MOST} factors and fewer generators than factors; found ${factors} and ${generators.length}`,
    );
  const read = generators.map((text) => readGenerator(text, factors, basic));
  const order = read.map((g) => g.factor);
  if (new Set(order).size < order.length)
    throw new RequirementError(
      `each generator needs a factor of its own on the left; found ${generators.join(', ')}`,
    );
  const words = allWords(read.map((g) => ({ bits: g.bits | (1 << g.factor), sign: g.sign })));
  const runs = Array.from({ length: 2 ** basic }, (_, run) => {
    const free = Array.from({ length: basic }, (__, i): 1 | -1 => (run & (1 << i) ? 1 : -1));
    const rest = read.toSorted((a, b) => a.factor - b.factor).map((g) => signOf(g, free));
    return [...free, ...rest];
  });
  const shortest = words.length === 0 ? null : Math.min(...words.map((w) => size(w.bits)));
  return { factors, basic, generators, words, resolution: shortest, runs };
}

interface ReadGenerator {
  readonly factor: number;
  readonly bits: number;
  readonly sign: 1 | -1;
}

function signOf({ bits, sign }: ReadGenerator, free: readonly (1 | -1)[]): 1 | -1 {
  return free.reduce<1 | -1>((s, f, i) => (bits & (1 << i) && f < 0 ? (s > 0 ? -1 : 1) : s), sign);
}

function readGenerator(text: string, factors: number, basic: number): ReadGenerator {
  const match = /^([A-J])=(-?)([A-J]+)$/.exec(text.replace(/\s/g, '').toUpperCase());
  const [, left = '', minus, right = ''] = match ?? [];
  const factor = LETTERS.indexOf(left);
  const places = [...right].map((letter) => LETTERS.indexOf(letter));
  const fits = match && factor >= basic && factor < factors && places.every((p) => p < basic);
  if (!fits || new Set(places).size < places.length)
    throw new RequirementError(
      `a generator needs a letter ${LETTERS[basic]} to ${LETTERS[factors - 1]} on the left and different letters A to ${LETTERS[basic - 1]} on the right of ${text}`,
    );
  return { factor, bits: places.reduce((bits, p) => bits | (1 << p), 0), sign: minus ? -1 : 1 };
}

/** All products of the generating words. */
function allWords(generating: readonly { bits: number; sign: 1 | -1 }[]): Fraction['words'] {
  return generating
    .reduce<{ bits: number; sign: 1 | -1 }[]>(
      (words, g) =>
        words.concat(words.map((w) => ({ bits: w.bits ^ g.bits, sign: (w.sign * g.sign) as 1 | -1 }))),
      [{ bits: 0, sign: 1 }],
    )
    .filter((w) => w.bits !== 0);
}

/**
 * The fraction of k factors in 2^b runs with the longest shortest word and, of those, the fewest words of that length
 * (minimum aberration as far as the shortest words go), by trying every choice of generators. Throws when 2^b runs
 * cannot tell k factors apart (k > 2^b − 1), or beyond ten factors.
 *
 * @example
 * bestFraction(5, 4).resolution // 5
 * bestFraction(7, 3) // { resolution: 3, generators: ['D=AB', 'E=AC', 'F=BC', 'G=ABC'] }
 * bestFraction(8, 3) // throws 8 runs can tell at most 7 factors apart; found 8
 */
export function bestFraction(factors: number, basic: number): Fraction {
  if (basic >= factors) return fractionBy(factors, []);
  if (factors > 2 ** basic - 1)
    throw new RequirementError(
      `${2 ** basic} runs can tell at most ${2 ** basic - 1} factors apart; found ${factors}`,
    );
  const products = Array.from({ length: 2 ** basic }, (_, bits) => bits)
    .filter((bits) => size(bits) >= 2)
    .sort((a, b) => size(a) - size(b) || a - b);
  const added = factors - basic;
  let best: { choice: number[]; score: number } | null = null;
  for (const choice of choices(products, added)) {
    const words = allWords(choice.map((bits, i) => ({ bits: bits | (1 << (basic + i)), sign: 1 })));
    const score = scoreOf(words.map((w) => size(w.bits)));
    if (best === null || score > best.score) best = { choice, score };
  }
  return fractionBy(
    factors,
    best!.choice.map((bits, i) => `${LETTERS[basic + i]}=${lettersOf(bits)}`),
  );
}

/** Longer shortest words first, then fewer of them. */
function scoreOf(lengths: readonly number[]): number {
  const shortest = Math.min(...lengths);
  return shortest - lengths.filter((l) => l === shortest).length / 1e4;
}

function* choices(from: readonly number[], count: number): Generator<number[]> {
  if (count === 0) {
    yield [];
    return;
  }
  for (let i = 0; i + count <= from.length; i++)
    for (const rest of choices(from.slice(i + 1), count - 1)) yield [from[i]!, ...rest];
}
