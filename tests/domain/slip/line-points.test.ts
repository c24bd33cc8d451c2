import { describe, expect, it } from 'vitest';
import type { Amounts } from '../../../api/domain/composition/types.ts';
import { fractionsFromGroup } from '../../../api/domain/slip/group-fraction.ts';
import { linePoints } from '../../../api/domain/slip/line-points.ts';

const of = (value: number) =>
  ({ value, limit: null, sigma: 0.1, sigmaBasis: 'stated', resolution: null }) as const;
const analysed = (label: string, wt: Record<string, number>) => ({
  label,
  spots: 1,
  amounts: Object.fromEntries(Object.entries(wt).map(([oxide, x]) => [oxide, of(x)])) as Amounts,
});
/** The slip was not measured for lead; the paint was. */
const slip = analysed('slip', { SiO2: 80, Al2O3: 20 });
const paint = (f: number) => analysed(`f${f}`, { PbO: 70 - 70 * f, SiO2: 30 + 50 * f, Al2O3: 20 * f });

describe('analyses as points of a line', () => {
  it('are held to 100 one by one, where the oxides used are all of theirs', () => {
    expect(linePoints([paint(0.2), slip], ['SiO2', 'Al2O3']).closed).toEqual([false, true]);
  });
  it('give the shares that were mixed, though the slip has fewer oxides than the paint', () => {
    const shares = [0.1, 0.2, 0.35];
    const { estimates, oxides } = fractionsFromGroup({
      paints: shares.map(paint),
      slips: [slip, slip],
      known: { Al2O3: 0 },
    });
    expect(oxides).toEqual(['SiO2', 'Al2O3']);
    for (const [i, { estimate }] of estimates.entries()) expect(estimate.f).toBeCloseTo(shares[i]!, 6);
  });
  it('must have errors that leave every oxide to be weighed', () => {
    const wild = { PbO: of(1e-9), SiO2: { ...of(50), sigma: 1e-160 }, Al2O3: { ...of(50), sigma: 1e-160 } };
    expect(() => linePoints([{ label: 'T1', spots: 1, amounts: wild }], ['SiO2', 'Al2O3'])).toThrow(
      'those of T1 do not',
    );
  });
});
