/** State of the generator: four 32-bit words, not all zero. */
export type XoshiroState = readonly [number, number, number, number];

/** A stream of 32-bit words. */
export interface WordStream {
  /** The next word, 0 … 2³² − 1. */
  readonly next: () => number;
  /** Moves 2⁶⁴ words ahead. */
  readonly jump: () => void;
  readonly state: () => XoshiroState;
}

/** Coefficients of the jump polynomial for 2⁶⁴ steps, as the authors publish them. */
const JUMP = [0x8764000b, 0xf542d2d3, 0x6fa035c3, 0x77f2db5b];

const rotate = (x: number, k: number) => (x << k) | (x >>> (32 - k));

/**
 * The generator xoshiro128** 1.1 of Blackman and Vigna 2021 (doi 10.1145/3460772) from a given state: period
 * 2¹²⁸ − 1, and a jump of 2⁶⁴ words, so that streams split off by jumping never overlap in practice.
 *
 * @example
 * wordStream([1, 2, 3, 4]).next() // 11520
 */
export function wordStream(from: XoshiroState): WordStream {
  let [a, b, c, d] = from;
  const next = () => {
    const word = Math.imul(rotate(Math.imul(b, 5), 7), 9) >>> 0;
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = rotate(d, 11);
    return word;
  };
  const jump = () => {
    const sum: [number, number, number, number] = [0, 0, 0, 0];
    for (let bit = 0; bit < 128; bit++) {
      if ((JUMP[bit >> 5]! >>> (bit & 31)) & 1) {
        sum[0] ^= a;
        sum[1] ^= b;
        sum[2] ^= c;
        sum[3] ^= d;
      }
      next();
    }
    [a, b, c, d] = sum;
  };
  return { next, jump, state: () => [a >>> 0, b >>> 0, c >>> 0, d >>> 0] };
}
