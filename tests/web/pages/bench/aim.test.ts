import { describe, expect, it } from 'vitest';
import type { Amounts, Sample } from '../../../../api/domain/composition/types.ts';
import { randomStream } from '../../../../api/domain/statistics/random.ts';
import { aimAtGroup, aimAtSherd, aimAtTyped } from '../../../../web/pages/bench/target/aim.ts';

const of = (value: number): Amounts[string] => ({
  ...{ value, limit: null, sigma: 0.02 * value, sigmaBasis: 'stated', resolution: null },
});
const PAINT = { PbO: 55, SiO2: 33, MnO: 9, Al2O3: 3 };
const SLIP = { SiO2: 70, Al2O3: 30 };
const slip = { name: 'Red slip', amounts: { SiO2: of(70), Al2O3: of(30) }, share: 0.2 };
const read = (share: number, jitter: () => number): Amounts =>
  Object.fromEntries(
    Object.entries(PAINT).map(([oxide, wt]) => [
      oxide,
      of(((1 - share) * wt + share * (SLIP[oxide as keyof typeof SLIP] ?? 0)) * Math.exp(0.03 * jitter())),
    ]),
  );
const stream = randomStream(4);
const samples = Array.from(
  { length: 14 },
  (_, i): Sample => ({
    ...{
      id: `s${i}`,
      label: `S${i}`,
      group: 'g',
      role: 'reference',
      measured: 'paint',
      spots: 1,
      rawTotal: 100,
    },
    amounts: read(0.2, () => stream.normal()),
  }),
);
const group = { id: 'g', name: 'Red' };

describe('a target', () => {
  it('is a group’s centre with the slip drawn off each sherd', () => {
    const { aimed, spread } = aimAtGroup(samples, group, { slip, leftOut: [] });
    expect(aimed.parts.PbO).toBeCloseTo(55, -0.5);
    expect(Math.abs(aimed.parts.PbO! - 55)).toBeLessThan(1.5);
    expect(aimed.sigma.PbO).toBeGreaterThan(0);
    expect(spread?.n).toBe(14);
    expect(aimed.remarks.join(' ')).toContain('20 % slip (Red slip) drawn off');
  });

  it('leaves out the oxides not aimed at, and still offers them', () => {
    const { aimed } = aimAtGroup(samples, group, { slip: null, leftOut: ['MnO'] });
    expect(Object.keys(aimed.parts)).not.toContain('MnO');
    expect(aimed.offered).toContain('MnO');
  });

  it('may be one sherd or typed figures, slip drawn off them too', () => {
    const sherd = aimAtSherd(
      'S1',
      read(0.2, () => 0),
      { slip, leftOut: [] },
    );
    expect(sherd.parts.PbO).toBeCloseTo(55, 6);
    expect(sherd.parts.Al2O3).toBeCloseTo(3, 6);
    const typed = { values: { PbO: 44, SiO2: 40.4, MnO: 7.2, Al2O3: 8.4 }, sigma: {} };
    expect(aimAtTyped(typed, { slip, leftOut: ['MnO'] }).parts).toEqual({
      PbO: expect.closeTo(55, 9),
      SiO2: expect.closeTo(33, 9),
      Al2O3: expect.closeTo(3, 9),
    });
  });

  it('is refused where more slip is drawn off than was read', () => {
    const much = { ...slip, share: 0.6 };
    expect(() =>
      aimAtSherd(
        'S1',
        read(0.2, () => 0),
        { slip: much, leftOut: [] },
      ),
    ).toThrow('above nothing');
  });
});
