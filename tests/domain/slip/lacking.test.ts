import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lackingIn } from '../../../api/domain/slip/lacking.ts';
import { amount } from '../../support/samples.ts';

const OXIDES = ['SiO2', 'PbO', 'Al2O3', 'TiO2', 'MnO'];
const slipOf = (oxides: readonly string[]) => ({
  label: 'slip of T1',
  spots: 1,
  amounts: Object.fromEntries(oxides.map((oxide) => [oxide, amount(10)])),
});

describe('oxides that a slip lacks', () => {
  it('are those compared less those measured, in the order compared', () => {
    fc.assert(
      fc.property(fc.subarray(OXIDES), fc.subarray(OXIDES), (measured, compared) => {
        const lacking = lackingIn(slipOf(measured), compared, 'none');
        expect(lacking).toEqual(compared.filter((oxide) => !measured.includes(oxide)));
      }),
    );
  });
  it('stop the drawing unless they are taken as none', () => {
    expect(lackingIn(slipOf(OXIDES), OXIDES, 'drop')).toEqual([]);
    expect(() => lackingIn(slipOf(['SiO2']), ['SiO2', 'PbO', 'MnO'], 'drop')).toThrow(
      'PbO, MnO were not measured in the slip of T1',
    );
  });
});
