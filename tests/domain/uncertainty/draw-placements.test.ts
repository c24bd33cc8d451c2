import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeSample } from '../../../api/domain/placement/place.ts';
import type { CovarianceChoice, Scale } from '../../../api/domain/reference/types.ts';
import { drawPlacements, finishDraws } from '../../../api/domain/uncertainty/draw-placements.ts';
import { DEFAULT_UNCERTAINTY, type UncertaintyRequest } from '../../../api/domain/uncertainty/types.ts';
import { modelOf, OXIDES, sampleOf, stated } from './support.ts';

const settings = { ...DEFAULT_UNCERTAINTY, draws: 100 };
const exact = { ...settings, assumedRelative: null };
const wt = fc.double({ min: 0.5, max: 60, noNaN: true });
const parts = fc.array(wt, { minLength: 5, maxLength: 5 });
const SLIP = sampleOf('slip', [0.2, 65, 22, 9, 3.8], 0.02);
const methods: { scale: Scale; covariance: CovarianceChoice }[] = [
  { scale: 'log-ratio', covariance: { kind: 'sample' } },
  { scale: 'log-ratio', covariance: { kind: 'components', count: 2 } },
  { scale: 'log-ratio', covariance: { kind: 'shrinkage', target: 'oas' } },
  { scale: 'log10', covariance: { kind: 'sample' } },
  { scale: 'standardised', covariance: { kind: 'sample' } },
];

describe('placements drawn within their uncertainties', () => {
  it.each(methods)('without uncertainty are what placeSample gives: $scale, $covariance.kind', (choice) => {
    const { model } = modelOf(choice);
    fc.assert(
      fc.property(parts, (composition) => {
        const sample = sampleOf('tile', composition);
        const placed = placeSample(model, sample);
        const drawn = finishDraws(drawPlacements(model, { sample, slip: null, settings: exact }));
        for (const group of drawn.groups) {
          const wanted = placed.groups.find((g) => g.group === group.group)!;
          expect(group.distance.median).toBeCloseTo(wanted.distance, 8);
          expect(group.d2!.median / wanted.d2!).toBeCloseTo(1, 8);
          expect(group.inside).toBe(wanted.verdict === 'inside' ? 1 : 0);
          expect(group.outside).toBe(wanted.verdict === 'outside' ? 1 : 0);
          if (wanted.membership === null) expect(group.membership).toBeNull();
          else expect(group.membership!.low).toBeCloseTo(wanted.membership, 8);
          expect(group.nearest).toBe(placed.groups[0] === wanted ? 1 : 0);
        }
        drawn.scores.mean.forEach((s, k) => {
          expect(s).toBeCloseTo(placed.scores[k]!, 8);
        });
      }),
      { numRuns: 20 },
    );
  });

  it('a member of a group is drawn against the others, as placeSample places it', () => {
    const { model, samples } = modelOf();
    const sample = samples[3]!;
    const drawn = finishDraws(drawPlacements(model, { sample, slip: null, settings: exact }));
    expect(drawn.groups[0]!.d2!.median).toBeCloseTo(placeSample(model, sample).groups[0]!.d2!, 8);
  });

  it('scores scatter as the law of propagation says for small errors (GUM, JCGM 100:2008, 5.1.2)', () => {
    const { model } = modelOf();
    const [paint, relative] = [
      [52, 36, 4, 4.5, 3.5],
      [0.002, 0.003, 0.004, 0.003, 0.005],
    ];
    const sample = {
      ...sampleOf('tile', paint),
      amounts: Object.fromEntries(OXIDES.map((o, j) => [o, stated(paint[j]!, relative[j]! * paint[j]!)])),
    };
    const request = { sample, slip: null, settings: { ...exact, draws: 20_000 } };
    const { covariance } = finishDraws(drawPlacements(model, request)).scores;
    model.pca.loadings.forEach((loading, k) => {
      // A loading sums to 0, so closure and centring drop out: the score is Σ l·ln x.
      const wanted = model.parts.reduce(
        (sum, o, j) => sum + (loading[j]! * relative[OXIDES.indexOf(o)]!) ** 2,
        0,
      );
      expect(covariance[k]![k]! / wanted).toBeGreaterThan(0.96);
      expect(covariance[k]![k]! / wanted).toBeLessThan(1.04);
    });
  });

  it('with slip drawn off, too, scores scatter as the law of propagation says, closure and f carried', () => {
    const { model } = modelOf();
    const [paint, f, sigmaF] = [sampleOf('tile', [44, 42, 6, 4.5, 3.5], 0.004), 0.15, 0.004];
    const request: UncertaintyRequest = {
      sample: paint,
      slip: { analysed: SLIP, fraction: { f, sigma: sigmaF, df: null, from: 'stated' } },
      settings: { ...exact, draws: 20_000 },
    };
    const { covariance } = finishDraws(drawPlacements(model, request)).scores;
    const values = (s: typeof paint) => OXIDES.map((o) => s.amounts[o]!.value!);
    const [p, s] = [values(paint), values(SLIP)];
    const left = p.map((x, j) => x - f * s[j]!);
    model.pca.loadings.forEach((loading, k) => {
      const weight = left.map((x, j) => loading[model.parts.indexOf(OXIDES[j]!)]! / x);
      const through = (x: readonly number[], spread: (v: number) => number) => {
        const shared = weight.reduce((sum, w, j) => sum + (w * x[j]!) / 100, 0);
        return weight.reduce((sum, w, j) => sum + ((w - shared) * spread(x[j]!)) ** 2, 0);
      };
      const ofF = (weight.reduce((sum, w, j) => sum + w * s[j]!, 0) * sigmaF) ** 2;
      const wanted = through(p, (v) => 0.004 * v) + f ** 2 * through(s, (v) => 0.02 * v) + ofF;
      expect(covariance[k]![k]! / wanted).toBeGreaterThan(0.95);
      expect(covariance[k]![k]! / wanted).toBeLessThan(1.06);
    });
  });

  it('more uncertainty widens the interval of every distance', () => {
    const { model } = modelOf();
    const width = (relative: number) => {
      const sample = sampleOf('tile', [50, 38, 4, 4, 4], relative);
      const { low, high } = finishDraws(drawPlacements(model, { sample, slip: null, settings })).groups[0]!
        .distance;
      return high - low;
    };
    expect(width(0.1)).toBeGreaterThan(3 * width(0.02));
  });

  it('the same seed gives the same result, another seed another', () => {
    const { model } = modelOf();
    const run = (seed: number) =>
      finishDraws(
        drawPlacements(model, {
          sample: sampleOf('t', [50, 38, 4, 4, 4], 0.05),
          slip: null,
          settings: { ...settings, seed },
        }),
      );
    expect(run(5)).toEqual(run(5));
    expect(run(6).groups[0]!.d2).not.toEqual(run(5).groups[0]!.d2);
  });

  it('reports progress, and can be left in the middle', () => {
    const { model } = modelOf();
    const request = {
      sample: sampleOf('t', [50, 38, 4, 4, 4], 0.05),
      slip: null,
      settings: { ...settings, draws: 1000 },
    };
    const steps = drawPlacements(model, request);
    expect(steps.next()).toEqual({ done: false, value: { done: 256, of: 1000 } });
    expect(steps.return(undefined as never).done).toBe(true);
    expect(steps.next().done).toBe(true);
    expect([...drawPlacements(model, request)].at(-1)).toEqual({ done: 1000, of: 1000 });
  });

  it('a spent oxide is counted, and warned of when it is spent often', () => {
    const { model } = modelOf();
    const sample = sampleOf('tile', [45, 41, 4.4, 5, 4.6], 0.05);
    const slip = { analysed: SLIP, fraction: { f: 0.2, sigma: 0.01, df: 6, from: 'tracers' } };
    const drawn = finishDraws(
      drawPlacements(model, { sample, slip, settings: { ...settings, draws: 1000 } }),
    );
    const alumina = drawn.spent.find((s) => s.oxide === 'Al2O3')!;
    expect(alumina.share).toBeGreaterThan(0.3);
    expect(drawn.warnings[0]).toMatch(/Al2O3 came to nothing in \d+ % of draws/);
    expect(drawn.fraction!.low).toBeLessThan(0.19);
    expect(drawn.carried.join(' ')).toContain('f = 0.200 ± 0.010 (tracers)');
  });

  it('refuses too few draws, an oxide the slip was not measured for, and a limit that is not there', () => {
    const { model } = modelOf();
    const sample = sampleOf('tile', [50, 38, 4, 4, 4], 0.05);
    const run = (request: Partial<UncertaintyRequest>) =>
      finishDraws(drawPlacements(model, { sample, slip: null, settings, ...request }));
    expect(() => run({ settings: { ...settings, draws: 10 } })).toThrow(/at least 100 of them; found 10/);
    const { CaO, ...rest } = SLIP.amounts;
    const fraction = { f: 0.01, sigma: 0, df: null, from: 'stated' };
    const poor = { analysed: { ...SLIP, amounts: rest }, fraction };
    expect(() => run({ slip: poor })).toThrow(/CaO of slip was not measured/);
    expect(() => run({ slip: poor, settings: { ...settings, unmeasured: 'none' } })).not.toThrow();
    const below = { ...sample, amounts: { ...sample.amounts, CaO: { ...CaO!, value: null, limit: null } } };
    expect(() => run({ sample: below })).toThrow(/CaO of tile has none/);
    const far = { analysed: SLIP, fraction: { f: -3, sigma: 0.01, df: null, from: 'stated' } };
    expect(() => run({ slip: far })).toThrow(/never did in 1000/);
  });
});
