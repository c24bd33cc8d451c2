import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeSample } from '../../../api/domain/placement/place.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import { leaveOneOutOff } from '../../../api/domain/reference/leave-one-out.ts';
import { axesWith, axesWithout, referencesOf } from '../../../api/domain/reference/refitted-axes.ts';
import { distanceOff } from '../../../api/domain/reference/spread.ts';
import { columnMeans } from '../../../api/domain/statistics/moments.ts';
import { pca } from '../../../api/domain/statistics/pca.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { drawPlacements, finishDraws } from '../../../api/domain/uncertainty/draw-placements.ts';
import { DEFAULT_UNCERTAINTY } from '../../../api/domain/uncertainty/types.ts';
import { expectClose } from '../../support/close.ts';
import { clrRows, GROUPS, RAW, rowsOf } from '../../support/romano-british.ts';
import { SHERDS, sampleOf, settingsFor, sherd } from '../../support/samples.ts';

/** Rows of a correlated cloud, the directions of unlike length so that components are well apart. */
const cloud = fc
  .record({ seed: fc.nat(1e6), D: fc.integer({ min: 3, max: 6 }), n: fc.integer({ min: 8, max: 20 }) })
  .map(({ seed, D, n }) => {
    const { normal } = randomStream(seed);
    return clrRows(
      Array.from({ length: n }, () => Array.from({ length: D }, (_, j) => Math.exp(0.4 ** j * normal()))),
    );
  });
const inBrief = (rows: readonly (readonly number[])[]) =>
  referencesOf(pca(rows), { n: rows.length, mean: columnMeans(rows) });
/** The square that projects on some axes: the same however the axes are turned among themselves. */
const projector = (axes: readonly (readonly number[])[]) =>
  axes[0]!.map((_, i) => axes[0]!.map((_, j) => axes.reduce((sum, a) => sum + a[i]! * a[j]!, 0)));

describe('components with one row less or more', () => {
  it('are those of the rows fitted anew', () => {
    fc.assert(
      fc.property(cloud, (rows) => {
        const [first, ...others] = rows;
        expectClose(
          projector(axesWithout(inBrief(rows), first!, 2)!),
          projector(pca(others).loadings.slice(0, 2)),
          {
            relative: 1e-6,
            floor: 1,
          },
        );
        expectClose(
          projector(axesWith(inBrief(others), first!, 2)),
          projector(pca(rows).loadings.slice(0, 2)),
          {
            relative: 1e-6,
            floor: 1,
          },
        );
      }),
      { numRuns: 40 },
    );
  });

  it('are refused where the others do not spread in so many directions', () => {
    const rows = clrRows(RAW.slice(0, 4));
    expect(axesWithout(inBrief(rows), rows[0]!, 3)).toBeNull();
    expect(axesWithout(inBrief(rows), rows[0]!, 2)).toHaveLength(2);
    expect(() => axesWithout(inBrief(rows.slice(0, 2)), rows[0]!, 1)).toThrow('need at least three; found 2');
  });
});

describe('how far members lie off components', () => {
  const model = fitReference(
    SHERDS,
    settingsFor(GROUPS, { covariance: { kind: 'components', count: 3 } }),
    {},
  );

  it('is what R has for components refitted without each (tests/fixtures/closed-parts)', () => {
    const file = path.resolve(import.meta.dirname, '../../fixtures/closed-parts/components_without.json');
    const { off } = JSON.parse(readFileSync(file, 'utf8'));
    for (const group of model.groups)
      expectClose(
        group.memberOff!,
        rowsOf(group.id).map((row) => off[row]),
      );
  });

  it('is the same when a member is placed among the others, and when it is drawn', () => {
    const settings = { ...DEFAULT_UNCERTAINTY, draws: 100, assumedRelative: null };
    for (const [g, group] of GROUPS.entries())
      for (const [i, row] of rowsOf(group).slice(0, 4).entries()) {
        const placed = placeSample(model, sherd(row)).groups.find((one) => one.group === group)!;
        expectClose(placed.off!.distance, model.groups[g]!.memberOff![i]!);
        const drawn = finishDraws(drawPlacements(model, { sample: sherd(row), slip: null, settings }));
        expect(drawn.groups[g]!.inside).toBe(placed.verdict === 'inside' ? 1 : 0);
      }
  });

  it('with more than 500 references is taken off the components as they are', () => {
    const rows = [...clrRows(RAW), ...clrRows(RAW)].slice(0, 50);
    const spread = { mean: columnMeans(rows), axes: pca(rows).loadings.slice(0, 2) };
    const many = leaveOneOutOff(rows, { ...spread, references: { ...inBrief(rows), n: 501 } })!;
    expectClose(
      many,
      rows.map((row) => (50 / 49) * distanceOff(row, spread)),
    );
  });

  it('is not asked of components that span all that closed parts can move in', () => {
    const all = fitReference(
      SHERDS,
      settingsFor(GROUPS, { covariance: { kind: 'components', count: 8 } }),
      {},
    );
    expect(all.groups.map((g) => g.memberOff)).toEqual([null, null, null]);
    expect(placeSample(all, sherd(3, 'replica')).groups.every((g) => g.off === null)).toBe(true);
  });

  it('cannot be told, so that the group is refused, when no reference can be left out', () => {
    const few = rowsOf('G1_kiln1').slice(0, 5);
    const one = fitReference(
      few.map((row) => sherd(row)),
      settingsFor(['G1_kiln1'], { covariance: { kind: 'components', count: 4 } }),
      {},
    );
    expect(one.groups[0]!.refusal).toBe(
      '4 components need references that spread in as many directions without any one of them; these 5 do not',
    );
  });
});

describe('true members of the only group, on components', () => {
  it('are seldom called outside: 5 of 120 at most, where components fitted to the members called 19', () => {
    const stream = randomStream(31);
    const oxides = Array.from({ length: 9 }, (_, j) => `O${j}`);
    let outside = 0;
    for (let round = 0; round < 120; round++) {
      const mix = oxides.map((_, k) => oxides.map(() => 0.25 * Math.SQRT1_2 ** k * stream.normal()));
      const draw = (id: string, group: string | null) => {
        const own = oxides.map(() => stream.normal());
        const parts = oxides.map((_, j) => Math.exp(mix.reduce((sum, row, k) => sum + row[j]! * own[k]!, 0)));
        return sampleOf(id, group, Object.fromEntries(oxides.map((oxide, j) => [oxide, parts[j]!])));
      };
      const sherds = Array.from({ length: 12 }, (_, i) => draw(`s${i}`, 'red'));
      const model = fitReference(sherds, settingsFor(['red']), {});
      const { method, verdict } = placeSample(model, draw('new', null)).groups[0]!;
      expect(method).toBe('first 6 components');
      if (verdict === 'outside') outside++;
    }
    expect(outside).toBeLessThanOrEqual(5);
  });
});
