import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanSlip, slipFor } from '../../../api/domain/slip/slip-source.ts';
import { amount } from '../../support/samples.ts';

const slip = (label: string, silica: number | null, group: string | null = 'g') => ({
  id: label,
  label,
  group,
  spots: 1,
  amounts: { SiO2: amount(silica, silica === null ? 0.2 : null), Al2O3: amount(20) },
});
const shelf = { slips: [slip('a', 60), slip('b', 62), slip('c', 50, null)], names: { g: 'Red ware' } };

describe('the slip beneath a paint', () => {
  it('is its own, another specimen’s or the mean of a group, and says which', () => {
    const paint = { id: 'c', label: 'c' };
    expect(slipFor({ kind: 'own' }, paint, shelf).amounts.SiO2!.value).toBe(50);
    expect(slipFor({ kind: 'specimen', specimen: 'b' }, paint, shelf).label).toBe('slip of b');
    const mean = slipFor({ kind: 'group', group: 'g' }, paint, shelf);
    expect(mean).toMatchObject({ label: 'mean slip of Red ware (n = 2)', amounts: { SiO2: { value: 61 } } });
  });
  it('must have been analysed', () => {
    const paint = { id: 'z', label: 'Tile 9' };
    expect(() => slipFor({ kind: 'own' }, paint, shelf)).toThrow('Tile 9 has none of its own');
    expect(() => slipFor({ kind: 'specimen', specimen: 'z' }, paint, shelf)).toThrow('has none');
    expect(() => slipFor({ kind: 'group', group: 'h' }, paint, shelf)).toThrow('this ware group has none');
  });
});

describe('the mean slip of a group', () => {
  it('lies within its slips whatever their order', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 1, max: 90, noNaN: true }), { minLength: 2, maxLength: 9 }),
        (wts) => {
          const mean = meanSlip(
            'g',
            wts.map((wt, i) => slip(`${i}`, wt)),
          ).amounts.SiO2!;
          const turned = meanSlip(
            'g',
            wts.toReversed().map((wt, i) => slip(`${i}`, wt)),
          ).amounts.SiO2!;
          expect(mean.value).toBeGreaterThanOrEqual(Math.min(...wts) - 1e-9);
          expect(mean.value).toBeLessThanOrEqual(Math.max(...wts) + 1e-9);
          expect(turned.value).toBeCloseTo(mean.value!, 9);
        },
      ),
    );
  });
  it('carries the standard uncertainty of one new slip', () => {
    // Prediction of a new observation, s·√(1 + 1/n): R 4.2, x <- c(58,60,61,65); sd(x)*sqrt(1+1/4) gives 3.291403.
    const wts = [58, 60, 61, 65];
    expect(
      meanSlip(
        'g',
        wts.map((wt, i) => slip(`${i}`, wt)),
      ).amounts.SiO2!.sigma,
    ).toBeCloseTo(3.291403, 6);
  });
  it('is below detection where all are, and counts 0.65 of the limit beside others', () => {
    expect(meanSlip('g', [slip('a', null), slip('b', null)]).amounts.SiO2).toMatchObject({
      value: null,
      limit: 0.2,
    });
    expect(meanSlip('g', [slip('a', null), slip('b', 1)]).amounts.SiO2!.value).toBeCloseTo(
      (0.13 + 1) / 2,
      12,
    );
  });
  it('holds only oxides measured in all', () => {
    const { SiO2: _, ...rest } = slip('b', 1).amounts;
    expect(Object.keys(meanSlip('g', [slip('a', 60), { ...slip('b', 1), amounts: rest }]).amounts)).toEqual([
      'Al2O3',
    ]);
  });
});
