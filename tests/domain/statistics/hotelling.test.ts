import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chiSquareUpperTail } from '../../../api/domain/statistics/distributions.ts';
import {
  membershipInSample,
  membershipOfMember,
  membershipOfNewcomer,
  newObservationLimit,
} from '../../../api/domain/statistics/hotelling.ts';
import { leaveOneOutD2, mahalanobis, sampleSpread } from '../../../api/domain/statistics/mahalanobis.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { expectClose } from '../../support/close.ts';
import { GROUPS, R_SAYS } from '../../support/romano-british.ts';

describe('membership probabilities of the 45 sherds are those of R', () => {
  const cases = ['mahalanobis_ilr', 'mahalanobis_pc3'].flatMap((entry) =>
    GROUPS.map((g) => [entry, g] as const),
  );
  it.each(cases)('%s of %s', (entry, group) => {
    const r = R_SAYS[entry].value[group];
    const size = { n: r.n, p: r.p };
    const newcomers = r.D2_all_rows.map((d: number) => membershipOfNewcomer(d, size).probability);
    expectClose(newcomers, r.p_nonmember_all_rows, { floor: 0 });
    const members = r.loo_D2_members.map((d: number) => membershipOfMember(d, size).probability);
    expectClose(members, r.loo_p_members, { floor: 0 });
    const inSample = r.members_1based.map((row: number) => membershipInSample(r.D2_all_rows[row - 1], size));
    expectClose(inSample, r.insample_beta_p_members, { floor: 0 });
  });
});

describe('membership and limits are those of the NIST/SEMATECH e-Handbook 6.5.4', () => {
  it('gives p = .3428 to the new row of 6.5.4.1, where χ² would have said .0019', () => {
    const { probability, df } = membershipOfNewcomer(14.8667, { n: 5, p: 3 });
    expectClose(probability, 0.3428, { relative: 2e-4 });
    expect(df).toEqual([3, 2]);
    expectClose(chiSquareUpperTail(14.8667, 3), 0.0019, { relative: 0.03 });
  });

  it('gives the limits for a new observation of 6.5.4.3', () => {
    const found = [newObservationLimit({ n: 20, p: 2 }, 0.05), newObservationLimit({ n: 25, p: 5 }, 0.05)];
    expectClose(found, [7.8793, 16.916], { relative: 2e-5 });
  });
});

const size = fc
  .record({ p: fc.integer({ min: 1, max: 9 }), spare: fc.integer({ min: 2, max: 30 }) })
  .map(({ p, spare }) => ({ n: p + spare, p }));

describe('the forms of the test agree', () => {
  it('gives a member by F on the leave-one-out distance what it gives by beta on the in-sample one', () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0.001, max: 0.98, noNaN: true }), ({ n, p }, share) => {
        const d2 = (share * (n - 1) ** 2) / n;
        const byF = membershipOfMember(leaveOneOutD2(d2, { n, p }), { n, p }).probability;
        expectClose(byF, membershipInSample(d2, { n, p }), { floor: 1e-12, relative: 1e-8 });
      }),
    );
  });

  it('gives exactly alpha at the limit for alpha, and less beyond', () => {
    fc.assert(
      fc.property(size, fc.constantFrom(0.1, 0.05, 0.01), (sizes, alpha) => {
        const limit = newObservationLimit(sizes, alpha);
        expectClose(membershipOfNewcomer(limit, sizes).probability, alpha, { relative: 1e-8 });
        expect(membershipOfNewcomer(limit * 1.2, sizes).probability).toBeLessThan(alpha);
      }),
    );
  });

  it('refuses one true member in twenty at the 5 % limit, and χ² would refuse far more', () => {
    const random = randomStream(2026);
    const [n, p, rounds] = [12, 5, 4000];
    const draw = () => Array.from({ length: p }, () => random.normal());
    const limit = newObservationLimit({ n, p }, 0.05);
    let refused = 0;
    let byChiSquare = 0;
    for (let round = 0; round < rounds; round++) {
      const d2 = mahalanobis(draw(), sampleSpread(Array.from({ length: n }, draw)));
      if (d2 > limit) refused++;
      if (chiSquareUpperTail(d2, p) < 0.05) byChiSquare++;
    }
    // Three standard errors of a share of .05 among 4,000.
    expect(Math.abs(refused / rounds - 0.05)).toBeLessThan(3 * Math.sqrt((0.05 * 0.95) / rounds));
    expect(byChiSquare / rounds).toBeGreaterThan(0.25);
  });
});

describe('groups too small for a probability are refused', () => {
  it.each([
    [() => membershipOfNewcomer(1, { n: 8, p: 8 }), 'needs n > p; found n = 8, p = 8'],
    [() => membershipOfMember(1, { n: 9, p: 8 }), 'needs n > p; found n = 8, p = 8'],
    [() => membershipInSample(1, { n: 9, p: 8 }), 'needs n > p; found n = 8, p = 8'],
    [() => newObservationLimit({ n: 3, p: 0 }, 0.05), 'needs n > p; found n = 3, p = 0'],
  ])('%s', (ask, message) => {
    expect(ask).toThrow(message);
  });
});
