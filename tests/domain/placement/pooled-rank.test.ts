import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeSample } from '../../../api/domain/placement/place.ts';
import { pooledRank } from '../../../api/domain/placement/pooled-rank.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import type { CovarianceChoice } from '../../../api/domain/reference/types.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { GROUPS, R_SAYS, rowsOf } from '../../support/romano-british.ts';
import { SHERDS, sampleOf, settingsFor, sherd } from '../../support/samples.ts';

const METHODS: readonly (readonly [string, CovarianceChoice])[] = [
  ['sample', { kind: 'sample' }],
  ['components', { kind: 'components', count: 3 }],
  ['Ledoit–Wolf', { kind: 'shrinkage', target: 'ledoit-wolf' }],
  ['OAS', { kind: 'shrinkage', target: 'oas' }],
];
const typicality = (
  samples: readonly ReturnType<typeof sherd>[],
  covariance: CovarianceChoice,
  own: ReturnType<typeof sherd>,
) =>
  placeSample(fitReference(samples, settingsFor(GROUPS, { covariance }), {}), own).groups.find(
    (g) => g.group === 'G1_kiln1',
  )!.typicality;

describe('a rank among the members of a group', () => {
  it.each(METHODS)(
    'is the same for a sherd whether it is placed as a member or as a newcomer to the others (%s)',
    (_, covariance) => {
      for (const row of rowsOf('G1_kiln1')) {
        const others = SHERDS.filter((s) => s.id !== sherd(row).id);
        const as = typicality(SHERDS, covariance, sherd(row));
        expect(typicality(others, covariance, sherd(row, 'replica'))).toEqual(as);
        expect(as!.of).toBe(20);
      }
    },
  );

  it("under a sample covariance orders members as R's leave-one-out distances do", () => {
    const distances: number[] = R_SAYS.mahalanobis_ilr.value.G1_kiln1.loo_D2_members;
    rowsOf('G1_kiln1').forEach((row, i) => {
      const further = distances.filter((d, k) => k !== i && d >= distances[i]!).length;
      expect(typicality(SHERDS, { kind: 'sample' }, sherd(row))!.atLeastAsFar).toBe(further);
    });
  });

  it('counts a copy of a member as no further out than the member, whatever the rounding', () => {
    for (const [, covariance] of METHODS)
      for (const row of rowsOf('G1_kiln1'))
        expect(typicality(SHERDS, covariance, sherd(row, 'replica'))!.atLeastAsFar).toBeGreaterThan(0);
  });

  it('falls as a sample moves out, down to 1 over n + 1', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        const { normal } = randomStream(seed);
        const rows = Array.from({ length: 9 }, () => [normal(), normal()]);
        const companions = {
          rows,
          axes: [
            [1, 0],
            [0, 1],
          ],
          mean: [0, 0],
          method: 'sample' as const,
        };
        const ranks = [0, 1, 3, 100].map((r) => pooledRank([r, r], companions)!.value);
        expect(ranks[3]).toBeCloseTo(0.1, 12);
        expect(ranks[0]! >= ranks[3]!).toBe(true);
      }),
    );
  });

  it('is there for a newcomer to four sherds, though none of them can be left out', () => {
    const four = [0, 5, 10, 15].map((row) => sherd(row));
    const model = fitReference(four, settingsFor(['G1_kiln1']), {});
    const g = placeSample(model, sherd(40, 'replica')).groups[0]!;
    expect(g.typicality).toEqual({ value: 0.2, atLeastAsFar: 0, of: 4 });
    expect(g.verdict).toBe('borderline');
    expect(model.groups[0]!.memberD2).toBeNull();
  });

  it('is not given where all of them together have no spread', () => {
    expect(
      pooledRank([0, 0], {
        rows: [[1, 1]],
        axes: [
          [1, 0],
          [0, 1],
        ],
        mean: [0, 0],
        method: 'sample',
      }),
    ).toBeNull();
  });
});

describe('a true newcomer', () => {
  it.each([
    ['OAS shrinkage', 5],
    ['first 4 components', 10],
    ['sample covariance in 8 directions', 14],
  ])('is further out than all members as often as 1 in n + 1 says (%s, n = %i)', (method, n) => {
    const rounds = 300;
    const stream = randomStream(7 + n);
    const oxides = Array.from({ length: 9 }, (_, j) => `O${j}`);
    let first = 0;
    for (let round = 0; round < rounds; round++) {
      const mix = oxides.map((_, k) => oxides.map(() => 0.25 * Math.SQRT1_2 ** k * stream.normal()));
      const draw = (id: string, group: string | null) => {
        const own = oxides.map(() => stream.normal());
        const parts = oxides.map((_, j) => Math.exp(mix.reduce((sum, row, k) => sum + row[j]! * own[k]!, 0)));
        return sampleOf(id, group, Object.fromEntries(oxides.map((oxide, j) => [oxide, parts[j]!])));
      };
      const sherds = Array.from({ length: n }, (_, i) => draw(`s${i}`, 'red'));
      const g = placeSample(fitReference(sherds, settingsFor(['red']), {}), draw('new', null)).groups[0]!;
      expect(g.method).toBe(method);
      if (g.typicality!.atLeastAsFar === 0) first++;
    }
    const wanted = 1 / (n + 1);
    const error = Math.sqrt((wanted * (1 - wanted)) / rounds);
    expect(Math.abs(first / rounds - wanted)).toBeLessThan(2.6 * error);
  });
});
