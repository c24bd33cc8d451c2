import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { StatedParts } from '../../../api/domain/batch/difference-split.ts';
import { evaporationOutlook, layerMass } from '../../../api/domain/batch/evaporation.ts';
import { comparePrediction } from '../../../api/domain/batch/prediction.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';

const stated = (parts: Record<string, number>, sigma: number | null = 0.1): StatedParts =>
  Object.fromEntries(Object.entries(parts).map(([oxide, value]) => [oxide, { value, sigma }]));
const close = (parts: Record<string, number>) => {
  const total = Object.values(parts).reduce((a, b) => a + b, 0);
  return Object.fromEntries(Object.entries(parts).map(([oxide, v]) => [oxide, (100 * v) / total]));
};

const PAINT = { PbO: 55, SiO2: 28, Al2O3: 7, Fe2O3: 4, MnO: 6 };
const SLIP = { PbO: 0, SiO2: 58, Al2O3: 27, Fe2O3: 14, MnO: 1 };
/** The paint after a share of its lead left and a share of slip mixed in. */
function tile(lost: number, f: number): Record<string, number> {
  const after = close({ ...PAINT, PbO: PAINT.PbO * (1 - lost) });
  return Object.fromEntries(
    Object.keys(PAINT).map((o) => [o, (1 - f) * after[o]! + f * SLIP[o as keyof typeof SLIP]]),
  );
}
const share = fc.double({ min: 0, max: 0.6, noNaN: true });

describe('the difference between prediction and measurement', () => {
  it('is slip, lead lost and the rest, oxide by oxide, whatever was measured', () => {
    const parts = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(parts, share, (numbers, f) => {
        const measured = stated(Object.fromEntries(Object.keys(PAINT).map((o, i) => [o, numbers[i]!])));
        const slip = { parts: stated(SLIP), share: { f, sigma: 0.02 } };
        const { rows } = comparePrediction({ predicted: stated(PAINT), measured, slip });
        for (const row of rows)
          expect(row.slip + row.evaporation + row.unexplained).toBeCloseTo(row.difference, 9);
        for (const part of ['slip', 'evaporation', 'unexplained', 'difference'] as const)
          expect(rows.reduce((sum, row) => sum + row[part], 0)).toBeCloseTo(0, 8);
      }),
    );
  });
  it('finds the lead that left and leaves nothing unexplained, when that and slip are all there is', () => {
    fc.assert(
      fc.property(share, share, (lost, f) => {
        const slip = { parts: stated(SLIP), share: { f, sigma: 0.01 } };
        const found = comparePrediction({ predicted: stated(PAINT), measured: stated(tile(lost, f)), slip });
        expect(found.leadLost!.share).toBeCloseTo(lost, 9);
        for (const row of found.rows) expect(row.unexplained).toBeCloseTo(0, 8);
      }),
    );
  });
  it('leaves a surplus of lead unexplained', () => {
    const measured = stated(close({ ...PAINT, PbO: 80 }));
    const { leadLost, rows } = comparePrediction({ predicted: stated(PAINT), measured, slip: null });
    expect(leadLost!.share).toBe(0);
    expect(rows[0]!.unexplained).toBeGreaterThan(5);
    expect(rows[0]!.z).toBeGreaterThan(2);
  });
  it('does not call a small loss told from none', () => {
    const wide = { predicted: stated(PAINT, 3), measured: stated(tile(0.03, 0), 3), slip: null };
    const { leadLost, words } = comparePrediction(wide);
    expect(leadLost!.told).toBe(false);
    expect(words[0]).toContain('cannot be told from none');
  });
  it('calls no loss certain to be none: its σ is that of the figures on either side of nothing', () => {
    // By hand, lead alone against the rest: R = PbO/(100 − PbO), 1 − R_measured/R_predicted, both 60 ± 1 before closure.
    const three = (lead: number) =>
      stated({ PbO: lead, SiO2: 0.75 * (100 - lead), Al2O3: 0.25 * (100 - lead) }, 1);
    const at = (lead: number) =>
      comparePrediction({ predicted: three(60), measured: three(lead), slip: null });
    for (const lead of [59.99, 60, 60.2]) {
      const { leadLost, words } = at(lead);
      // One side: relative variance of PbO/(SiO2 + Al2O3) is 1/60² + 2/40²; two sides double it.
      expect(leadLost!.sigma).toBeCloseTo(Math.sqrt(2 * (1 / 3600 + 2 / 1600)), 2);
      expect(words[0]).toMatch(
        /^0\.[0-1] ± 5\.\d % of the lead may have evaporated: .* cannot be told from none/,
      );
    }
    expect(at(60.2).rows[0]!.sigma.evaporation).toBeCloseTo(at(59.8).rows[0]!.sigma.evaporation, 1);
    const much = at(70);
    expect(much.leadLost).toMatchObject({ share: 0, surplus: true, told: false });
    expect(much.words[0]).toContain('more was read than predicted');
    expect(much.rows[0]!.z).toBeGreaterThan(2);
    const bare = comparePrediction({
      predicted: stated(PAINT, null),
      measured: stated(PAINT, null),
      slip: null,
    });
    expect(bare.words[0]).toContain('none can be ruled out');
  });
  it('says when no uncertainty was stated', () => {
    const bare = comparePrediction({
      predicted: stated(PAINT, null),
      measured: stated(tile(0.3, 0), null),
      slip: null,
    });
    expect(bare.rows[0]!.z).toBeNull();
    expect(bare.words.at(-1)).toContain('no difference can be called real');
  });
  it('names what only one side has', () => {
    const measured = stated({ ...tile(0, 0), TiO2: 1 });
    expect(comparePrediction({ predicted: stated(PAINT), measured, slip: null }).leftOut).toEqual(['TiO2']);
  });
  it('carries uncertainty as 1,500 seeded draws do', () => {
    const stream = randomStream(5);
    const input = (noise: () => number) => {
      const noisy = (parts: Record<string, number>, sigma: number) =>
        Object.fromEntries(
          Object.entries(parts).map(([o, v]) => [o, { value: Math.max(0, v + sigma * noise()), sigma }]),
        );
      const slip = { parts: noisy(SLIP, 0.1), share: { f: 0.2 + 0.02 * noise(), sigma: 0.02 } };
      return { predicted: noisy(PAINT, 0.3), measured: noisy(tile(0.25, 0.2), 0.3), slip };
    };
    const linear = comparePrediction(input(() => 0));
    const draws = Array.from({ length: 1500 }, () => comparePrediction(input(() => stream.normal())));
    const spread = (values: number[]) => {
      const mean = values.reduce((a, b) => a + b, 0) / values.length;
      return Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (values.length - 1));
    };
    expect(spread(draws.map((d) => d.leadLost!.share)) / linear.leadLost!.sigma).toBeCloseTo(1, 1);
    expect(linear.rows[0]).toMatchObject({ oxide: 'PbO', z: null });
    linear.rows.slice(1).forEach((row, i) => {
      const j = i + 1;
      expect(spread(draws.map((d) => d.rows[j]!.unexplained)) / row.sigma.unexplained).toBeCloseTo(1, 1);
      expect(spread(draws.map((d) => d.rows[j]!.slip)) / row.sigma.slip).toBeCloseTo(1, 1);
    });
  });
  it.each([
    [{ measured: stated({ CaO: 3 }) }, 'at least two oxides'],
    [{ slip: { parts: stated(SLIP), share: { f: 1, sigma: 0 } } }, '0 to below 1'],
    [{ measured: stated({ ...PAINT, PbO: -1 }) }, 'zero or more; PbO is -1'],
  ])('is refused where it cannot be told: %#', (change, words) => {
    const input = { predicted: stated(PAINT), measured: stated(PAINT), slip: null };
    expect(() => comparePrediction({ ...input, ...change })).toThrow(words);
  });
});

/** Preston & Turner 1935: 0.10 to 11.6 mg/cm² an hour at 900 °C for melts of 54 to 99.8 wt% PbO. */
describe('evaporation of lead oxide', () => {
  const layer = { milligrams: layerMass(60, 4.5), leadOxide: 60, hours: 0.5, celsius: 900 };
  it('is bounded by the published losses', () => {
    const lead = 27 * 0.6;
    const { share: found } = evaporationOutlook(layer);
    expect(found.low).toBeCloseTo((0.1 * 0.5) / lead, 10);
    expect(found.high).toBeCloseTo((11.6 * 0.5) / lead, 10);
  });
  it('never passes all of it', () => expect(evaporationOutlook({ ...layer, hours: 100 }).share.high).toBe(1));
  it.each([
    [{ celsius: 820 }, 'less leaves than that'],
    [{ celsius: 1000 }, 'more may leave than that'],
    [{ leadOxide: 30 }, 'loses less'],
    [{}, 'plausibility only'],
  ])('says where the published melts differ: %j', (change, words) => {
    expect(evaporationOutlook({ ...layer, ...change }).words).toContain(words);
  });
  it.each([[{ hours: 0 }], [{ milligrams: -1 }], [{ leadOxide: 0 }]])('needs a layer: %j', (change) => {
    expect(() => evaporationOutlook({ ...layer, ...change })).toThrow('above zero');
  });
  it('needs a thickness', () => expect(() => layerMass(0, 4)).toThrow('above zero'));
});
