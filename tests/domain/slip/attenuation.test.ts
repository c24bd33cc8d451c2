import { describe, expect, it } from 'vitest';
import {
  INCOMING_ENERGIES,
  MASS_ATTENUATION,
  TABLE_ENERGIES,
  XRAY_LINES,
} from '../../../api/domain/slip/attenuation.generated.ts';
import { elementFractions, lineOf, massAttenuation } from '../../../api/domain/slip/attenuation.ts';
import xraylib from '../../fixtures/slip/xraylib.json' with { type: 'json' };

const energyOf = (name: string) => {
  const [symbol, shell] = name.split(' ');
  return name === '20 keV' ? 20 : XRAY_LINES.find(([s, k]) => s === symbol && k === shell)![2];
};

describe('mass attenuation', () => {
  const rows = Object.entries(xraylib.massAttenuation).flatMap(([oxide, by]) =>
    Object.entries(by).map(([line, wanted]) => ({ oxide, line, wanted })),
  );
  it.each(rows)('of $oxide at $line agrees with xraylib', ({ oxide, line, wanted }) => {
    expect(massAttenuation({ [oxide]: 100 }, energyOf(line)) / wanted).toBeCloseTo(1, 3);
  });

  it('mixes in proportion to mass', () => {
    const [lead, silica] = [massAttenuation({ PbO: 1 }, 6.3995), massAttenuation({ SiO2: 1 }, 6.3995)];
    expect(massAttenuation({ PbO: 60, SiO2: 40 }, 6.3995)).toBeCloseTo(0.6 * lead + 0.4 * silica, 9);
  });

  it('every element has a coefficient at every energy, and every line lies below its edge', () => {
    for (const row of Object.values(MASS_ATTENUATION)) {
      expect(row).toHaveLength(TABLE_ENERGIES.length);
      for (const mu of row) expect(mu).toBeGreaterThan(0);
    }
    for (const [, , energy, edge] of XRAY_LINES) expect(energy).toBeLessThan(edge);
    for (const energy of INCOMING_ENERGIES) expect(TABLE_ENERGIES).toContain(energy);
  });

  it('element fractions sum to 1 whatever the oxides sum to', () => {
    const sum = Object.values(elementFractions({ PbO: 30, SiO2: 10, Fe2O3: 4 })).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(1, 12);
  });

  it('refuses an energy or an element off the table, and an empty composition', () => {
    expect(() => massAttenuation({ PbO: 1 }, 7)).toThrow(/7 keV is not in it/);
    expect(() => massAttenuation({ Eu2O3: 1 }, 20)).toThrow(/Eu is not in it/);
    expect(() => elementFractions({})).toThrow(/it is empty/);
  });

  it('a beam below the K edge reads the L line, and below that the M line', () => {
    expect([lineOf('SnO2', 40), lineOf('SnO2', 20), lineOf('PbO', 12)].map((l) => l!.shell)).toEqual([
      'K',
      'L',
      'M',
    ]);
    expect(lineOf('Li2O', 40)).toBeNull();
  });
});
