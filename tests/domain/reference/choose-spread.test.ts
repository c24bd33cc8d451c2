import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseSpread, reachOf } from '../../../api/domain/reference/choose-spread.ts';
import { expectClose } from '../../support/close.ts';

const request = (n: number, p: number, undetected: readonly string[] = []) => ({
  n,
  p,
  components: p,
  undetected,
});

describe('the default by n and p', () => {
  it.each([
    [40, 8, 'sample', 8],
    [14, 8, 'sample', 8],
    [13, 8, 'components', 7],
    [10, 8, 'components', 4],
    [8, 11, 'components', 2],
    [7, 11, 'oas', 11],
    [4, 8, 'oas', 8],
    [7, 1, 'sample', 1],
    [6, 1, 'oas', 1],
  ])('for n = %i and p = %i is %s in %i directions', (n, p, method, directions) => {
    expect(chooseSpread(request(n, p), { kind: 'auto' })).toMatchObject({ method, p: directions });
  });

  it('leaves six degrees of freedom wherever it leads to a probability, and takes all the directions that do', () => {
    fc.assert(
      fc.property(fc.integer({ min: 4, max: 80 }), fc.integer({ min: 1, max: 20 }), (n, p) => {
        const choice = chooseSpread(request(n, p), { kind: 'auto' });
        if ('refusal' in choice || choice.method === 'oas') expect(Math.min(n - 6, p - 1)).toBeLessThan(2);
        else {
          expect(n - choice.p).toBeGreaterThanOrEqual(6);
          expect(choice.p === p || n - choice.p === 6).toBe(true);
        }
      }),
    );
  });

  it('never spans a direction that only replaced values fill', () => {
    expect(chooseSpread(request(60, 8, ['SnO2']), { kind: 'auto' })).toMatchObject({
      method: 'components',
      p: 7,
    });
  });

  it('explains itself with n, degrees of freedom and reach', () => {
    const choice = chooseSpread(request(40, 8), { kind: 'auto' });
    expect('explanation' in choice && choice.explanation).toBe(
      'Sample covariance in all p = 8 directions: n = 40 sherds leave 32 degrees of freedom, and the 5 % limit lies 1.2 times as far out as if the spread were known exactly.',
    );
  });
});

describe('the reach of a test', () => {
  it("follows from Hotelling's limit: 7.8793 at n = 20, p = 2 (NIST/SEMATECH e-Handbook 6.5.4.3) over χ² 5.99146", () => {
    expectClose(reachOf(20, 2), Math.sqrt(7.8793 / 5.99146), { relative: 1e-5 });
  });

  it('falls towards 1 as the group grows, and is infinite when n ≤ p', () => {
    expect(reachOf(8, 8)).toBe(Number.POSITIVE_INFINITY);
    expect(reachOf(12, 8)).toBeGreaterThan(reachOf(13, 8));
    expectClose(reachOf(1e6, 8), 1, { relative: 1e-4 });
  });
});

describe('what the data cannot carry is refused with the reason', () => {
  it.each([
    [request(3, 8), { kind: 'auto' }, 'A spread needs at least 4 sherds; the group has n = 3'],
    [
      request(3, 8),
      { kind: 'shrinkage', target: 'oas' },
      'A spread needs at least 4 sherds; the group has n = 3',
    ],
    [
      request(8, 8),
      { kind: 'sample' },
      'needs n − 1 ≥ p; the group has n = 8 sherds; work in at most 6 components',
    ],
    [request(20, 8, ['SnO2', 'CuO']), { kind: 'sample' }, 'SnO2, CuO is below detection in every sherd'],
    [request(20, 8), { kind: 'components', count: 9 }, '9 components were asked for; the references have 8'],
    [
      request(5, 8),
      { kind: 'components', count: 5 },
      '5 components need n − 1 ≥ 5; the group has n = 5 sherds',
    ],
  ] as const)('%o with %o', (asked, choice, message) => {
    expect(chooseSpread(asked, choice)).toEqual({ refusal: expect.stringContaining(message) });
  });
});
