import { describe, expect, it } from 'vitest';
import { fractionsFromGroup } from '../../../api/domain/slip/group-fraction.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { analysed } from './support.ts';

const PAINT = { PbO: 62, SiO2: 31, MnO: 7, Al2O3: 0, TiO2: 0 };
const SLIP = { PbO: 0.1, SiO2: 76, MnO: 0.3, Al2O3: 22.4, TiO2: 1.2 };
const SIGMA = { PbO: 0.6, SiO2: 0.5, MnO: 0.1, Al2O3: 0.2, TiO2: 0.03 };
const mixture = (f: number) =>
  Object.fromEntries(
    Object.entries(PAINT).map(([k, v]) => [k, (1 - f) * v + f * SLIP[k as keyof typeof SLIP]]),
  );
const paints = [0.1, 0.15, 0.25, 0.3].map((f, i) => analysed(mixture(f), SIGMA, `sherd ${i}`));
const slips = [analysed(SLIP, SIGMA, 'slip a'), analysed(SLIP, SIGMA, 'slip b')];

describe('slip fractions from a group', () => {
  it('finds every fraction and the paint without slip', () => {
    const group = fractionsFromGroup({ paints, slips, known: { Al2O3: 0, TiO2: 0 } });
    expect(group.estimates.map((e) => Math.round(1e6 * e.estimate.f) / 1e6)).toEqual([0.1, 0.15, 0.25, 0.3]);
    expect(group.paintEnd.PbO!.value).toBeCloseTo(62, 5);
    expect(group.consistency.agree).toBe(true);
    // Four paints and two slips of five oxides, each with one sum fixed; four f, eight oxides of both ends, less the sums.
    expect(group.consistency.df).toBe(6 * 4 - (4 + 3 + 5 - 2));
  });

  it('does not depend on the order of analyses or oxides', () => {
    const noisy = paints.map((p, i) => ({
      ...p,
      amounts: { ...p.amounts, PbO: { ...p.amounts.PbO!, value: p.amounts.PbO!.value! + 0.3 * (i - 1) } },
    }));
    const one = fractionsFromGroup({ paints: noisy, slips, known: { TiO2: 0 } });
    const oxides = [...one.oxides].reverse();
    const other = fractionsFromGroup({ paints: [...noisy].reverse(), slips, known: { TiO2: 0 }, oxides });
    one.estimates.forEach(({ estimate }, i) => {
      expect(other.estimates[3 - i]!.estimate.f).toBeCloseTo(estimate.f, 5);
    });
  });

  it('says when the paints lie off the line, and widens the intervals', () => {
    const { normal } = randomStream(4);
    const varied = paints.map((p) => ({
      ...p,
      amounts: Object.fromEntries(
        Object.entries(p.amounts).map(([k, a]) => [k, { ...a, value: a.value! * Math.exp(0.15 * normal()) }]),
      ),
    }));
    const group = fractionsFromGroup({ paints: varied, slips, known: { Al2O3: 0, TiO2: 0 } });
    expect(group.consistency.agree).toBe(false);
    expect(group.estimates[0]!.estimate.warnings[0]).toMatch(/lie off the line/);
    expect(group.estimates[0]!.estimate.df).not.toBeNull();
  });

  it('says that f cannot be told when slip and paint are alike within their errors', () => {
    const [a, b, c] = [0.2, 0.4, 1].map((f) => ({ PbO: 50 - f, SiO2: 49 + f / 2, Al2O3: 1 + f / 2 }));
    const vague = { PbO: 1, SiO2: 1, Al2O3: 0.5 };
    const group = fractionsFromGroup({
      paints: [analysed(a!, vague, 'a'), analysed(b!, vague, 'b')],
      slips: [analysed(c!, vague, 'slip')],
      known: { Al2O3: 1 },
    });
    expect(group.estimates[0]!.estimate.cannotTell).toMatch(/angle between paint and slip \d\.\d°/);
  });

  it('refuses a group without anchor and one whose analyses share one oxide', () => {
    expect(() => fractionsFromGroup({ paints, slips, known: {} })).toThrow(/known; none is given/);
    const poor = [analysed({ TiO2: 1 }, 0.1, 'poor')];
    expect(() => fractionsFromGroup({ paints, slips: poor, known: { TiO2: 0 } })).toThrow(/shared: TiO2/);
  });
});
