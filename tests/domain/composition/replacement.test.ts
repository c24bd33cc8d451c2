import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { multiplicativeReplacement } from '../../../api/domain/composition/replacement.ts';
import { expectClose } from '../../support/close.ts';
import { positiveParts, scale } from './arbitrary.ts';

describe('multiplicative replacement', () => {
  it('gives the published example with one limit (Martín-Fernández et al. 2003, doi 10.1023/A:1023866030544)', () => {
    const parts = [0, 0.125, 0.1237, 0.7253, 0.026];
    const found = multiplicativeReplacement(parts, [0.02, 0.02, 0.02, 0.02, 0.02], { fraction: 2 / 3 });
    const published = [0.013333, 0.123333, 0.122051, 0.715629, 0.025653];
    for (const [at, value] of found.entries()) expect(Math.abs(value - published[at]!)).toBeLessThan(6e-7);
  });

  it('gives the published example with missing entries and a limit for each', () => {
    const parts = [0.6, null, 0.25, 0.03, 0.12, null];
    const found = multiplicativeReplacement(parts, [null, 0.01, null, null, null, 0.005]);
    const published = [0.59415, 0.0065, 0.247562, 0.029707, 0.11883, 0.00325];
    for (const [at, value] of found.entries()) expect(Math.abs(value - published[at]!)).toBeLessThan(6e-7);
  });

  const gappy = fc.tuple(positiveParts(3), fc.nat(), scale).map(([parts, seed, factor]) => ({
    parts: parts.map((x, i) => (i === seed % parts.length ? null : x)),
    factor,
  }));

  it('keeps the total and the ratios of detected parts, in whatever unit', () => {
    fc.assert(
      fc.property(gappy, ({ parts, factor }) => {
        const total = parts.reduce<number>((sum, x) => sum + (x ?? 0), 0);
        const limits = parts.map(() => 1e-3 * total);
        const found = multiplicativeReplacement(parts, limits);
        expectClose(
          found.reduce((a, b) => a + b),
          total,
        );
        const shrunk = found.flatMap((x, i) => (parts[i] === null ? [] : [x / parts[i]!]));
        for (const ratio of shrunk) expectClose(ratio, shrunk[0]!);
        const scaled = multiplicativeReplacement(
          parts.map((x) => x && x * factor),
          limits.map((x) => x * factor),
        );
        expectClose(
          scaled,
          found.map((x) => x * factor),
        );
      }),
    );
  });

  it('leaves a composition without gaps as it is, and needs no limits for it', () => {
    expect(multiplicativeReplacement([1, 2, 3], [])).toEqual([1, 2, 3]);
  });

  it('refuses what it cannot replace', () => {
    const part = [0.6, null, 0.4];
    expect(() => multiplicativeReplacement(part, [])).toThrow('part 2 of 3 has none');
    expect(() => multiplicativeReplacement(part, [1, 0, 1])).toThrow('above zero; part 2 of 3 is 0');
    expect(() => multiplicativeReplacement(part, [1, 1, 1], { fraction: 0 })).toThrow('fraction above 0');
    expect(() => multiplicativeReplacement(part, [1, 1, 1], { fraction: 1.1 })).toThrow('found 1.1');
    expect(() => multiplicativeReplacement(part, [1, 2, 1])).toThrow('1.3 would replace 1');
    expect(() => multiplicativeReplacement([-1, 2], [1, 1])).toThrow('zero or more; part 1 of 2 is -1');
    expect(() => multiplicativeReplacement([null, null], [1, 1])).toThrow('detected parts that outweigh');
  });
});
