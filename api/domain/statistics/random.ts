import { RequirementError } from '../requirement.ts';
import { type WordStream, wordStream, type XoshiroState } from './xoshiro.ts';

/** A seeded source of random numbers: the same seed gives the same numbers on every machine. */
export interface RandomStream {
  /** Uniform on [0, 1), 53 bits. */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
  /** A stream of its own, 2⁶⁴ words away from this one, and from any other split off from it. */
  readonly split: () => RandomStream;
}

/** Spreads a seed over the state: a Weyl sequence through the MurmurHash3 finaliser. */
function spread(seed: number): XoshiroState {
  const word = (k: number) => {
    let h = (seed + Math.imul(0x9e3779b9, k)) | 0;
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    return (h ^ (h >>> 16)) >>> 0;
  };
  return [word(1), word(2), word(3), word(4)];
}

function fromWords(words: WordStream): RandomStream {
  const uniform = () => ((words.next() >>> 5) * 2 ** 26 + (words.next() >>> 6)) / 2 ** 53;
  let spare: number | null = null;
  const normal = () => {
    if (spare !== null) {
      const held = spare;
      spare = null;
      return held;
    }
    const [first, second] = polarPair(uniform);
    spare = second;
    return first;
  };
  const split = () => {
    const child = wordStream(words.state());
    words.jump();
    spare = null;
    return fromWords(child);
  };
  return { uniform, normal, split };
}

/** Two independent standard normals by Marsaglia's polar method. */
function polarPair(uniform: () => number): [number, number] {
  for (;;) {
    const u = 2 * uniform() - 1;
    const v = 2 * uniform() - 1;
    const s = u * u + v * v;
    if (s >= 1 || s === 0) continue;
    const scale = Math.sqrt((-2 * Math.log(s)) / s);
    return [u * scale, v * scale];
  }
}

/**
 * A random stream from a whole-number seed (0 … 2³² − 1), by xoshiro128** (see `wordStream`). `split()` hands out
 * the present position as a new stream and moves this one 2⁶⁴ words on, so parallel work draws no number twice.
 * Normals by Marsaglia and Bray's polar method (doi 10.1137/1006063). Throws when the seed is not such a number.
 *
 * @example
 * randomStream(7).uniform() === randomStream(7).uniform() // true
 * randomStream(1.5) // throws randomStream needs a whole seed from 0 to 4294967295; found 1.5
 */
export function randomStream(seed: number): RandomStream {
  if (!(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32))
    throw new RequirementError(`randomStream needs a whole seed from 0 to ${2 ** 32 - 1}; found ${seed}`);
  return fromWords(wordStream(spread(seed)));
}
