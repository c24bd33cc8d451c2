import { describe, expect, it } from 'vitest';
import { fUpperTail, normalUpperTail } from '../../../api/domain/statistics/distributions.ts';
import { columnDeviations, mean } from '../../../api/domain/statistics/moments.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { wordStream, type XoshiroState } from '../../../api/domain/statistics/xoshiro.ts';

const take = <T>(n: number, next: () => T): T[] => Array.from({ length: n }, next);

describe('xoshiro128** gives published words', () => {
  it("gives the first ten of the authors' C code from state 1, 2, 3, 4 (as kept in the tests of Rust's rand_xoshiro)", () => {
    expect(take(10, wordStream([1, 2, 3, 4]).next)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  // Words, states and jumped states that the C code gave, as kept in the tests of xoshiro-6502.
  const start: XoshiroState = [0x964d4a0c, 0xd40ab895, 0xad7fdecb, 0x3006f0f0];

  it('gives the words and the state after one step of a second start', () => {
    const words = wordStream(start);
    expect(words.next()).toBe(0xf1391922);
    expect(words.state()).toEqual([0x72410269, 0xef382c52, 0x2e43bec7, 0x62432f20]);
    expect(take(3, words.next)).toEqual([0x6fe53806, 0xa5be2840, 0xf510ee70]);
  });

  it('jumps to the published state', () => {
    const words = wordStream(start);
    words.jump();
    expect(words.state()).toEqual([0x2a6dd50d, 0x01177499, 0xd7eb7d01, 0xddc48284]);
  });
});

describe('a random stream', () => {
  it('is the same for the same seed and another for another', () => {
    expect(take(5, randomStream(3).normal)).toEqual(take(5, randomStream(3).normal));
    expect(randomStream(3).uniform()).not.toBe(randomStream(4).uniform());
    expect(randomStream(0).uniform()).not.toBe(0);
  });

  it('splits into streams that repeat with the seed and do not repeat each other', () => {
    const draw = () => {
      const parent = randomStream(9);
      const children = [parent.split(), parent.split(), parent];
      return children.map((child) => take(50, child.uniform));
    };
    expect(draw()).toEqual(draw());
    expect(new Set(draw().flat()).size).toBe(150);
  });

  it('spreads uniforms evenly over [0, 1) (χ² over 20 bins within its 0.1 % limits)', () => {
    const counts = new Array<number>(20).fill(0);
    const { uniform } = randomStream(1);
    for (const u of take(20_000, uniform)) counts[Math.floor(u * 20)]!++;
    const chiSquare = counts.reduce((sum, c) => sum + (c - 1000) ** 2 / 1000, 0);
    // χ² on 19 degrees of freedom: 0.0005 and 0.9995 quantiles, R's qchisq.
    expect(chiSquare).toBeGreaterThan(4.9);
    expect(chiSquare).toBeLessThan(45.98);
  });

  it('draws normals of mean 0, deviation 1 and normal tails', () => {
    const { normal } = randomStream(2);
    const draws = take(20_000, normal);
    expect(Math.abs(mean(draws))).toBeLessThan(4 / Math.sqrt(20_000));
    expect(Math.abs(columnDeviations(draws.map((d) => [d]))[0]! - 1)).toBeLessThan(4 / Math.sqrt(40_000));
    for (const z of [1, 2, 3]) {
      const beyond = draws.filter((d) => d > z).length;
      const wanted = 20_000 * normalUpperTail(z);
      expect(Math.abs(beyond - wanted)).toBeLessThan(4 * Math.sqrt(wanted));
    }
  });

  it('draws each normal independently of the one before (lag-one correlation, tested as a regression)', () => {
    const draws = take(5000, randomStream(4).normal);
    const lag = mean(draws.slice(1).map((d, i) => d * draws[i]!));
    expect(fUpperTail(lag * lag * 5000, 1, 4999)).toBeGreaterThan(0.001);
  });

  it.each([[-1], [0.5], [2 ** 32], [Number.NaN]])('refuses the seed %s', (seed) => {
    expect(() => randomStream(seed)).toThrow(`needs a whole seed from 0 to 4294967295; found ${seed}`);
  });
});
