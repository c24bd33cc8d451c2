import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aitchisonDistance } from '../../../api/domain/composition/aitchison.ts';
import { placeSample } from '../../../api/domain/placement/place.ts';
import type { GroupPlacement, Placement } from '../../../api/domain/placement/types.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import type { ModelSettings } from '../../../api/domain/reference/types.ts';
import { expectClose } from '../../support/close.ts';
import { GROUPS, R_SAYS, RAW, rowsOf, SHRINKAGE } from '../../support/romano-british.ts';
import { amount, POTTERY_NAMES, SHERDS, sampleOf, settingsFor, sherd } from '../../support/samples.ts';

const fitted = (changes: Partial<ModelSettings> = {}) =>
  fitReference(SHERDS, settingsFor(GROUPS, changes), POTTERY_NAMES);
const against = (placement: Placement, group: string): GroupPlacement =>
  placement.groups.find((g) => g.group === group)!;
const ROWS = RAW.map((_, row) => row);

describe('placed as strangers, the 45 sherds have the distances and probabilities of R', () => {
  it.each([
    ['mahalanobis_ilr', { kind: 'sample' }],
    ['mahalanobis_pc3', { kind: 'components', count: 3 }],
  ] as const)('%s', (entry, covariance) => {
    const model = fitted({ covariance });
    const placements = ROWS.map((row) => placeSample(model, sherd(row, 'replica')));
    for (const group of GROUPS) {
      const r = R_SAYS[entry].value[group];
      const found = placements.map((p) => against(p, group));
      expectClose(
        found.map((g) => g.d2!),
        r.D2_all_rows,
      );
      // Probabilities as small as 5e-40 rest on D² to the power of half the degrees of freedom.
      expectClose(
        found.map((g) => g.membership!),
        r.p_nonmember_all_rows,
        { floor: 0, relative: 1e-8 },
      );
      expect(
        found.every((g) => !g.leaveOneOut && g.n === r.n && g.df!.join() === [r.p, r.n - r.p].join()),
      ).toBe(true);
    }
  });

  it.each(['ledoit-wolf', 'oas'] as const)(
    'and under shrinkage (%s) the distances of scikit-learn, with a rank in place of a probability',
    (target) => {
      const model = fitted({ covariance: { kind: 'shrinkage', target } });
      const placements = ROWS.map((row) => placeSample(model, sherd(row, 'replica')));
      for (const group of GROUPS) {
        const found = placements.map((p) => against(p, group));
        expectClose(
          found.map((g) => g.d2!),
          SHRINKAGE[group][target === 'oas' ? 'oas' : 'ledoit_wolf'].D2_all_rows,
        );
        expect(found.every((g) => g.membership === null && g.df === null)).toBe(true);
        expect(found[0]!.membershipRefusal).toContain('no exact distribution');
      }
    },
  );
});

describe('placed as themselves, members are left out', () => {
  it.each([
    ['mahalanobis_ilr', { kind: 'sample' }],
    ['mahalanobis_pc3', { kind: 'components', count: 3 }],
  ] as const)('and have the leave-one-out distances and probabilities of R: %s', (entry, covariance) => {
    const model = fitted({ covariance });
    for (const group of GROUPS) {
      const r = R_SAYS[entry].value[group];
      const found = rowsOf(group).map((row) => against(placeSample(model, sherd(row)), group));
      expectClose(
        found.map((g) => g.d2!),
        r.loo_D2_members,
      );
      expectClose(
        found.map((g) => g.membership!),
        r.loo_p_members,
        { floor: 0, relative: 1e-8 },
      );
      expect(found.every((g) => g.leaveOneOut && g.n === r.n - 1)).toBe(true);
    }
  });

  it('agree with the distances kept in the model', () => {
    const model = fitted({ covariance: { kind: 'shrinkage', target: 'oas' } });
    rowsOf('G1_kiln1').forEach((row, i) => {
      expectClose(against(placeSample(model, sherd(row)), 'G1_kiln1').d2!, model.groups[0]!.memberD2![i]!);
    });
  });

  it('the only sherd of a group has nothing to be compared with in it', () => {
    const model = fitReference([sherd(0), ...SHERDS.slice(21)], settingsFor(GROUPS), POTTERY_NAMES);
    const g = against(placeSample(model, sherd(0)), 'G1_kiln1');
    expect(g).toMatchObject({
      refusal: 'It is the only sherd of the group',
      verdict: 'unknown',
      leaveOneOut: false,
    });
  });

  it('a member without which the group is too small is refused, though a stranger is not', () => {
    const nine = rowsOf('G1_kiln1')
      .slice(0, 9)
      .map((row) => sherd(row));
    const model = fitReference(
      [...nine, ...SHERDS.slice(21)],
      settingsFor(GROUPS, { covariance: { kind: 'sample' } }),
      {},
    );
    expect(against(placeSample(model, sherd(20, 'replica')), 'G1_kiln1').membership).toBeGreaterThan(0);
    const g = against(placeSample(model, sherd(0)), 'G1_kiln1');
    expect(g.refusal).toBe(
      'Without it the group is too small: a sample covariance needs n − 1 ≥ p; found n = 8, p = 8',
    );
    expect([g.d2, g.membership, g.typicality, g.verdict]).toEqual([null, null, null, 'unknown']);
  });
});

describe('distances to centres and sherds', () => {
  const model = fitted();

  it('are Aitchison distances, nearest group and sherd first', () => {
    const placement = placeSample(model, sherd(4, 'replica'));
    const own = RAW[4]!;
    for (const g of placement.groups) {
      const centre = model.groups.find((other) => other.id === g.group)!.centre;
      expectClose(g.distance, aitchisonDistance(own, centre));
    }
    expect(placement.groups.map((g) => g.group)).toEqual(['G1_kiln1', 'G2_kilns23', 'G3_kilns45']);
    const all = RAW.map((row, i) => ({ id: SHERDS[i]!.id, distance: aitchisonDistance(own, row) }));
    const nearest = all.sort((a, b) => a.distance - b.distance).slice(0, 10);
    expect(placement.nearest.map((s) => s.id)).toEqual(nearest.map((s) => s.id));
    expectClose(
      placement.nearest.map((s) => s.distance),
      nearest.map((s) => s.distance),
      { floor: 0.1 },
    );
  });

  it("give R's Aitchison distances between the first six sherds, itself not counted", () => {
    const two = fitReference(SHERDS.slice(0, 6), settingsFor(['G1_kiln1']), {});
    const placement = placeSample(two, sherd(0));
    const wanted = R_SAYS.aitchison_dist_corner6.value[0].slice(1).sort((a: number, b: number) => a - b);
    expectClose(
      placement.nearest.map((s) => s.distance),
      wanted,
    );
  });

  it('hold for a stranger that lies off every component of a few references', () => {
    const rows = [0, 7, 14, 20];
    const few = fitReference(
      rows.map((row) => sherd(row)),
      settingsFor(['G1_kiln1']),
      {},
    );
    expect(few.pca.eigenvalues).toHaveLength(3);
    expect(few.parts).toHaveLength(9);
    const placement = placeSample(few, sherd(40, 'replica'));
    const wanted = rows.map((row) => aitchisonDistance(RAW[40]!, RAW[row]!)).sort((a, b) => a - b);
    expectClose(
      placement.nearest.map((s) => s.distance),
      wanted,
    );
  });
});

describe('contributions', () => {
  const composition = fc.array(fc.double({ min: 0.01, max: 60, noNaN: true }), {
    minLength: 9,
    maxLength: 9,
  });
  const oxides = Object.keys(SHERDS[0]!.amounts);
  const replica = (parts: readonly number[]) =>
    sampleOf('tile', null, Object.fromEntries(oxides.map((oxide, j) => [oxide, parts[j]!])));

  it.each([
    ['log-ratio', 'auto'],
    ['log-ratio', 'sample'],
    ['log10', 'sample'],
    ['standardised', 'auto'],
  ] as const)('share the distance out to 1, and D² to its sum (%s, %s)', (scale, kind) => {
    const model = fitted({ scale, covariance: { kind } });
    fc.assert(
      fc.property(composition, (parts) => {
        for (const g of placeSample(model, replica(parts)).groups) {
          const total = (of: (c: (typeof g.contributions)[number]) => number) =>
            g.contributions.reduce((sum, c) => sum + of(c), 0);
          expectClose(
            total((c) => c.share),
            1,
          );
          expectClose(
            total((c) => c.d2!),
            g.d2!,
            { relative: 1e-7, floor: 1 },
          );
          if (scale === 'log-ratio') {
            const off = total((c) => Math.log(c.factor) ** 2);
            expectClose(Math.sqrt(off), g.distance);
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('name the oxide that is off, and by what factor', () => {
    const model = fitted();
    const centre = model.groups[0]!.centre;
    const doubled = replica(centre.map((v, j) => (j === 1 ? 2 * v : v)));
    const g = against(placeSample(model, doubled), 'G1_kiln1');
    const iron = g.contributions.find((c) => c.oxide === 'Fe2O3')!;
    // In log-ratios one part of nine doubled is off by 2^(8/9), the others by 2^(−1/9).
    expectClose(iron.factor, 2 ** (8 / 9));
    expectClose(iron.share, 8 / 9);
    expectClose(iron.z!, ((8 / 9) * Math.LN2) / model.groups[0]!.deviation![1]!);
  });
});

describe('a placement is a pure function of the model as JSON', () => {
  it.each([
    [{}],
    [{ covariance: { kind: 'shrinkage', target: 'oas' } }],
    [{ covariance: { kind: 'components', count: 3 }, scale: 'log10' }],
    [{ scale: 'standardised' }],
  ] as const)('the model sent over the wire gives the same numbers: %o', (changes) => {
    const model = fitted(changes);
    const sent = JSON.parse(JSON.stringify(model));
    for (const row of [0, 25, 40]) {
      for (const as of ['reference', 'replica'] as const)
        expect(JSON.stringify(placeSample(sent, sherd(row, as)))).toBe(
          JSON.stringify(placeSample(model, sherd(row, as))),
        );
    }
  });

  it('does not depend on the unit of the amounts, nor on oxides the model does not compare', () => {
    const model = fitted();
    const plain = placeSample(model, sherd(30, 'replica'));
    const scaled = Object.entries(sherd(30, 'replica').amounts).map(([o, a]) => [o, amount(a.value! * 3)]);
    const other = { ...sherd(30, 'replica'), amounts: { ...Object.fromEntries(scaled), SO3: amount(5) } };
    expectClose(placeSample(model, other).coordinates, plain.coordinates);
    expectClose(
      placeSample(model, other).groups.map((g) => g.d2!),
      plain.groups.map((g) => g.d2!),
    );
  });
});

describe('what components leave out is not lost', () => {
  const model = fitted({ covariance: { kind: 'components', count: 2 } });

  it('a sample moved off the components keeps its D² and is called outside all the same', () => {
    const group = model.groups[0]!;
    const hidden = model.pca.loadings[7]!;
    const moved = group.mean.map((v, j) => Math.exp(v + 3 * hidden[j]!));
    const tile = sampleOf(
      'tile',
      null,
      Object.fromEntries(model.parts.map((oxide, j) => [oxide, moved[j]!])),
    );
    const g = against(placeSample(model, tile), 'G1_kiln1');
    expect(g.d2).toBeLessThan(1e-9);
    expect(g.membership).toBeGreaterThan(0.999);
    expectClose(g.off!.distance, 3);
    expect(g.off!.rank).toEqual({ value: 1 / 22, atLeastAsFar: 0, of: 21 });
    expect(g.verdict).toBe('outside');
    expect(placeSample(model, tile).sentence).toContain('it lies off them');
  });

  it('is not asked where all directions are measured', () => {
    expect(against(placeSample(fitted(), sherd(3, 'replica')), 'G1_kiln1').off).toBeNull();
  });
});

describe('below detection in a replica', () => {
  const model = fitted();
  const base = sherd(2, 'replica');
  const blank = (limit: number | null) => ({
    ...base,
    amounts: { ...base.amounts, BaO: amount(null, limit) },
  });

  it('is replaced by its own limit, said, and warned of where it makes the gap', () => {
    const placement = placeSample(model, blank(0.0001));
    expect(placement.replaced.map(({ oxide, limit }) => [oxide, limit])).toEqual([['BaO', 0.0001]]);
    const g = against(placement, 'G1_kiln1');
    expect(g.warnings.at(-1)).toBe(
      'BaO is below detection here: how far it is off is set by the value that replaces it.',
    );
    expect(placement.sentence).toContain('barium, not detected in it');
  });

  it('is refused without a limit, and a missing oxide is refused by name', () => {
    expect(() => placeSample(model, blank(null))).toThrow('BaO has none in S03 again');
    const { BaO: _, ...rest } = base.amounts;
    expect(() => placeSample(model, { ...base, amounts: rest })).toThrow('BaO was not measured in S03 again');
  });
});
