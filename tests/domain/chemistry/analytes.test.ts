import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ANALYTES, canonicalAnalyte } from '../../../api/domain/chemistry/analytes.ts';

describe('canonicalAnalyte knows an analyte however a laboratory writes it', () => {
  it.each([
    ['sio2', 'SiO2'],
    ['SIO2', 'SiO2'],
    ['SiO₂', 'SiO2'],
    [' SiO 2 ', 'SiO2'],
    ['Al₂O₃*', 'Al2O3'],
    ['Fe2O3T', 'Fe2O3'],
    ['Fe2O3t', 'Fe2O3'],
    ['Fe2O3(T)', 'Fe2O3'],
    ['Fe2O3 tot', 'Fe2O3'],
    ['Fe₂O₃ total', 'Fe2O3'],
    ['Fe2O3_T', 'Fe2O3'],
    ['Total Fe2O3', 'Fe2O3'],
    ['tFe2O3', 'Fe2O3'],
    ['ΣFe2O3', 'Fe2O3'],
    ['∑FeO', 'FeO'],
    ['FeO*', 'FeO'],
    ['FeO*T', 'FeO'],
    ['FeOtot', 'FeO'],
    ['FeT', 'Fe'],
    ['PB', 'Pb'],
    ['pb', 'Pb'],
    ['CO', 'Co'],
    ['Si K', 'Si'],
    ['Si-K', 'Si'],
    ['Pb Lα', 'Pb'],
    ['FeKa1', 'Fe'],
    ['Al203', 'Al2O3'],
    ['Si02', 'SiO2'],
    ['Mn0', 'MnO'],
    ['Ho2O3', 'Ho2O3'],
    ['H2O+', 'H2O'],
    ['H2O−', 'H2O'],
    ['LOI', 'LOI'],
    ['l.o.i.', 'LOI'],
    ['Loss on ignition', 'LOI'],
    ['LOI 1000 °C', 'LOI'],
    ['LOI (950)', 'LOI'],
    ['TOTAL', 'Total'],
    ['Sum', 'Total'],
    ['Sum:', 'Total'],
    ['Σ', 'Total'],
    ['Analytical total', 'Total'],
    ['silica', 'SiO2'],
    ['K', 'K'],
  ])('%j is %s', (text, expected) => {
    expect(canonicalAnalyte(text)).toBe(expected);
  });

  it.each([
    ...[
      '',
      ' ',
      'n',
      'y',
      'k',
      'No',
      'sample',
      'colour',
      'CaCO3',
      'PbS',
      'SiO2 (wt%)',
      'K20',
      'C02',
      'H20',
      'Tc',
      'O2',
    ],
    ...['Fe3+', '12', 'total mass', '__proto__', 'constructor'],
  ])('%j is no analyte', (text) => {
    expect(canonicalAnalyte(text)).toBeNull();
  });

  it('leaves its own spellings unchanged, and finds them in any case', () => {
    for (const name of ANALYTES) {
      expect(canonicalAnalyte(name)).toBe(name);
      expect(canonicalAnalyte(name.toUpperCase())).toBe(name);
      if (name.length > 1) expect(canonicalAnalyte(name.toLowerCase())).toBe(name);
    }
  });

  it('answers a known spelling or null for any text, and its answers are stable', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 12 }), (text) => {
        const found = canonicalAnalyte(text);
        expect(found === null ? null : canonicalAnalyte(found)).toBe(found);
      }),
      { numRuns: 2000 },
    );
  });
});
