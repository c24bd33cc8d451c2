import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arrangements, type Stratum } from '../../../api/domain/trials/arrangements.ts';
import { conditionalEffect } from '../../../api/domain/trials/conditional.ts';
import { toGrid } from '../../../api/domain/trials/grid.ts';
import { expectClose } from '../../support/close.ts';
import { TRIAL_ANSWERS } from '../../support/trial-answers.ts';

/** Strata by a key, from columns. */
function strataBy(key: readonly number[], scores: readonly number[], steps: readonly number[]): Stratum[] {
  return [...new Set(key)].map((k) => {
    const own = key.flatMap((v, i) => (v === k ? [i] : []));
    return { scores: own.map((i) => scores[i]!), steps: [own.map((i) => steps[i]!)] };
  });
}

// fisher.test and mantelhaen.test find their limits by a root search that stops at 1.2e-4.
describe('exact conditional effects are those of R', () => {
  const { infert, infert_clogit_spontaneous, mantelhaen_exact, exact_logistic_limits } = TRIAL_ANSWERS;

  it('gives the conditional estimate of clogit within 83 matched sets (infert, Trichopoulos et al. 1976)', () => {
    const strata = strataBy(infert.value.stratum, infert.value.case, infert.value.spontaneous);
    const { estimate } = conditionalEffect(arrangements(strata), { level: 0.95, own: 1 });
    expectClose(estimate!, infert_clogit_spontaneous.value.coef, { relative: 1e-8 });
  });

  it('gives the exact limits of fisher.test for one 2 × 2 table', () => {
    const [a, b, c, e] = exact_logistic_limits.value.table;
    const repeat = (n: number, score: number, step: number) => Array.from({ length: n }, () => [score, step]);
    const zones = [...repeat(a, 1, 1), ...repeat(b, 0, 1), ...repeat(c, 1, 0), ...repeat(e, 0, 0)];
    const deals = arrangements([{ scores: zones.map((z) => z[0]!), steps: [zones.map((z) => z[1]!)] }]);
    const found = conditionalEffect(deals, { level: 0.95, own: 1 });
    const r = exact_logistic_limits.value;
    expectClose([found.low!, found.estimate!, found.high!], [r.log_low, r.log_estimate, r.log_high], {
      relative: 2e-4,
    });
    expectClose(found.p, 2 * r.p_greater);
  });

  it('gives the exact common odds ratio of mantelhaen.test over three strata of infert', () => {
    const r = mantelhaen_exact.value;
    const any = infert.value.spontaneous.map((s: number) => (s > 0 ? 1 : 0));
    const found = conditionalEffect(arrangements(strataBy(r.education, infert.value.case, any)), {
      level: 0.95,
      own: 1,
    });
    expectClose([found.low!, found.estimate!, found.high!], [r.log_low, r.log_estimate, r.log_high], {
      relative: 2e-4,
    });
    expectClose(found.p, 2 * r.p_greater, { floor: 0, relative: 1e-7 });
  });
});

/** All deals by brute force: every order of the scores of every stratum. */
function bruteTotals(strata: readonly Stratum[]): Map<number, number> {
  const orders = (left: readonly number[]): number[][] =>
    left.length === 0
      ? [[]]
      : [...new Set(left)].flatMap((first) =>
          orders(left.toSpliced(left.indexOf(first), 1)).map((rest) => [first, ...rest]),
        );
  let sums: { total: number; held: number }[] = [{ total: 0, held: 0 }];
  for (const { scores, steps } of strata) {
    const own = orders(scores).map((o) => ({
      total: o.reduce((sum, s, i) => sum + s * steps[0]![i]!, 0),
      held: o.reduce((sum, s, i) => sum + s * (steps[1]?.[i] ?? 0), 0),
    }));
    sums = sums.flatMap((a) => own.map((b) => ({ total: a.total + b.total, held: a.held + b.held })));
  }
  const wanted = strata.reduce(
    (sum, s) => sum + s.scores.reduce((own, score, i) => own + score * (s.steps[1]?.[i] ?? 0), 0),
    0,
  );
  const kept = sums.filter((s) => s.held === wanted);
  const shares = new Map<number, number>();
  for (const { total } of kept) shares.set(total, (shares.get(total) ?? 0) + 1 / kept.length);
  return shares;
}

const zone = fc.record({
  score: fc.integer({ min: 0, max: 2 }),
  a: fc.integer({ min: 0, max: 4 }),
  b: fc.integer({ min: 0, max: 1 }),
});
const strataOf = (factors: number) =>
  fc.array(fc.array(zone, { minLength: 2, maxLength: 5 }), { minLength: 1, maxLength: 3 }).map((tiles) =>
    tiles.map(
      (zones): Stratum => ({
        scores: zones.map((z) => z.score),
        steps: [zones.map((z) => z.a), zones.map((z) => z.b)].slice(0, factors),
      }),
    ),
  );

describe('arrangements', () => {
  for (const factors of [1, 2])
    it(`counts every deal as brute force does, with ${factors - 1} factors held`, () => {
      fc.assert(
        fc.property(strataOf(factors), (strata) => {
          const wanted = [...bruteTotals(strata)].sort((a, b) => a[0] - b[0]);
          const found = arrangements(strata);
          expect(found.totals).toEqual(wanted.map(([t]) => t));
          expectClose(
            found.shares,
            wanted.map(([, s]) => s),
          );
        }),
        { numRuns: 60 },
      );
    });

  it('stays exact where the deals are too many to list', () => {
    const steps = Array.from({ length: 40 }, (_, i) => i);
    const { deals, shares } = arrangements([{ scores: steps.map((i) => i % 2), steps: [steps] }]);
    expect(deals).toBeCloseTo(137846528820, -2);
    expectClose(
      shares.reduce((a, b) => a + b, 0),
      1,
    );
  });

  it('refuses more totals than it can hold', () => {
    expect(() => arrangements([{ scores: [0, 1], steps: [[0, 5_000_000]] }])).toThrow(
      'at most 2000000 totals',
    );
  });
});

describe('conditionalEffect', () => {
  it('turns its sign with the scale, and never leaves the estimate outside the limits', () => {
    fc.assert(
      fc.property(strataOf(1), (strata) => {
        const top = Math.max(...strata.flatMap((s) => s.steps[0]!));
        const turned = strata.map((s) => ({ ...s, steps: [s.steps[0]!.map((v) => top - v)] }));
        const found = conditionalEffect(arrangements(strata), { level: 0.9, own: 0.5 });
        const other = conditionalEffect(arrangements(turned), { level: 0.9, own: 0.5 });
        expect(found.p).toBeCloseTo(other.p, 9);
        if (found.low !== null) expect(other.high).toBeCloseTo(-found.low, 6);
        if (found.estimate !== null) {
          expect(found.low ?? -1e9).toBeLessThanOrEqual(found.estimate);
          expect(found.high ?? 1e9).toBeGreaterThanOrEqual(found.estimate);
        }
      }),
      { numRuns: 100 },
    );
  });

  it('is wider with the observed total counted whole', () => {
    const deals = arrangements([{ scores: [0, 0, 1, 0, 1, 1], steps: [[0, 1, 2, 3, 4, 5]] }]);
    const mid = conditionalEffect(deals, { level: 0.95, own: 0.5 });
    const whole = conditionalEffect(deals, { level: 0.95, own: 1 });
    expect(whole.low!).toBeLessThan(mid.low!);
    expect(whole.high!).toBeGreaterThan(mid.high!);
  });

  it('has no upper end where the thickest zones are exactly the glossy ones', () => {
    const deals = arrangements([{ scores: [0, 0, 0, 1, 1, 1], steps: [[0, 1, 2, 3, 4, 5]] }]);
    const found = conditionalEffect(deals, { level: 0.95, own: 0.5 });
    expect(found).toMatchObject({ estimate: null, high: null });
    expectClose([found.p, found.smallestP], [0.1, 0.1]);
    expect(found.low).toBeGreaterThan(-1);
  });

  it('says nothing where all zones are alike', () => {
    const deals = arrangements([{ scores: [1, 1, 1], steps: [[0, 1, 2]] }]);
    expect(conditionalEffect(deals, { level: 0.95, own: 0.5 })).toEqual({
      estimate: null,
      low: null,
      high: null,
      p: 1,
      smallestP: 1,
    });
  });
});

describe('toGrid', () => {
  it('puts measured thicknesses back to within half a step', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 300, noNaN: true }), { minLength: 2, maxLength: 30 }),
        (values) => {
          const { steps, size } = toGrid(values, 1000);
          const low = Math.min(...values);
          const off = values.map((v, i) => Math.abs(low + steps[i]! * size - v));
          expect(Math.max(...off)).toBeLessThanOrEqual(0.5001 * size);
          expect(Math.max(...steps)).toBeLessThanOrEqual(1000);
        },
      ),
    );
  });

  it('finds the common step of decimals', () => {
    expect(toGrid([12.1, 13.4, 11.8], 100)).toMatchObject({ steps: [3, 16, 0], exact: true });
  });
});
