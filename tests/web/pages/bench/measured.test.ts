import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../../api/domain/batch/batch.ts';
import { buildShelf, fireOfEntry, linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import type { Amounts } from '../../../../api/domain/composition/types.ts';
import { setBeside, shareFromTile, statedOfAmounts } from '../../../../web/pages/bench/measured/compare.ts';

const shelf = buildShelf([], []);
const lines = [
  { material: 'litharge', amount: 60, water: 0 },
  { material: 'quartz', amount: 28, water: 0 },
  { material: 'kaolinite', amount: 12, water: 0 },
  { material: 'hausmannite', amount: 6, water: 0 },
];
const fired = fireBatch(
  linesOfEntries(lines, shelf),
  fireOfEntry({ celsius: 850, atmosphere: 'air', sulfurPerLead: null }),
);
const of = (value: number): Amounts[string] => ({
  ...{ value, limit: null, sigma: 0.02 * value + 0.02, sigmaBasis: 'stated', resolution: null },
});
const slip: Amounts = { SiO2: of(62), Al2O3: of(26), Fe2O3: of(11.9), MnO: of(0.1) };
const percent = Object.fromEntries(fired.oxides.map((one) => [one.oxide, one.percent]));

/** A reading made by hand: a share of slip mixed in, a share of lead gone. */
function reading(share: number, lost: number): Amounts {
  const batch = { ...percent, PbO: percent.PbO! * (1 - lost) };
  const total = Object.values(batch).reduce((sum, x) => sum + x, 0);
  const parts = new Set([...Object.keys(batch), ...Object.keys(slip)]);
  return Object.fromEntries(
    [...parts].map((oxide) => [
      oxide,
      of(
        (1 - share) * ((100 * (batch[oxide as keyof typeof batch] ?? 0)) / total) +
          share * (slip[oxide]?.value ?? 0),
      ),
    ]),
  );
}

describe('a tile beside its batch', () => {
  it('finds the share of slip and the lead that it was made with', () => {
    const paint = reading(0.3, 0.2);
    const split = setBeside({ fired, paint, slip, share: { f: 0.3, sigma: 0.02 } });
    expect(split.leadLost!.share).toBeCloseTo(0.2, 1);
    expect(shareFromTile({ fired, paint: reading(0.3, 0), slip }).f).toBeCloseTo(0.3, 2);
  });

  it('adds up: slip, lead lost and the unexplained make the difference', () => {
    const { rows } = setBeside({ fired, paint: reading(0.2, 0.1), slip, share: { f: 0.15, sigma: 0.05 } });
    for (const row of rows)
      expect(row.slip + row.evaporation + row.unexplained).toBeCloseTo(row.difference, 9);
  });

  it('takes what lies below detection as even between nothing and its limit', () => {
    const amounts: Amounts = { CuO: { ...of(1), value: null, limit: 0.12, sigma: null } };
    expect(statedOfAmounts(amounts).CuO).toEqual({
      value: expect.closeTo(0.078, 9),
      sigma: expect.closeTo(0.12 / Math.sqrt(12), 9),
    });
  });

  it('refuses a share that is none', () => {
    expect(() => setBeside({ fired, paint: reading(0.2, 0), slip, share: { f: 1.2, sigma: 0 } })).toThrow(
      '0 to below 1',
    );
  });
});
