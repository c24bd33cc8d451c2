import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ELEMENTS } from '../../../api/domain/chemistry/atomic-weights.ts';
import { molarMass, parseFormula } from '../../../api/domain/chemistry/formula.ts';
import { plainFormula } from '../../../api/domain/chemistry/plain-formula.ts';

const elements = (text: string) => parseFormula(text).elements;

describe('parseFormula reads what potters and mineralogists write', () => {
  it.each([
    ['2PbCO3·Pb(OH)2', { Pb: 3, C: 2, O: 8, H: 2 }],
    ['Al2O3.2SiO2.2H2O', { Al: 2, O: 9, Si: 2, H: 4 }],
    ['Al₂Si₂O₅(OH)₄', { Al: 2, Si: 2, O: 9, H: 4 }],
    ['CuSO4.5H2O', { Cu: 1, S: 1, O: 9, H: 10 }],
    ['CuSO4 x 5 H2O', { Cu: 1, S: 1, O: 9, H: 10 }],
    ['MgCl2*6H2O', { Mg: 1, Cl: 2, H: 12, O: 6 }],
    ['MgCl2.6H2O', { Mg: 1, Cl: 2, H: 12, O: 6 }],
    ['PbCl2.PbO', { Pb: 2, Cl: 2, O: 1 }],
    ['AlO1.5(SiO2)0.5', { Al: 1, O: 2.5, Si: 0.5 }],
    ['FeS2.5H2O', { Fe: 1, S: 2, H: 10, O: 5 }],
    ['CaSO4·½H2O', { Ca: 1, S: 1, O: 4.5, H: 1 }],
    ['CaSO4·1/2H2O', { Ca: 1, S: 1, O: 4.5, H: 1 }],
    ['CaSO4·1½H2O', { Ca: 1, S: 1, O: 5.5, H: 3 }],
    ['MnO2·2.5H2O', { Mn: 1, O: 4.5, H: 5 }],
    ['2.5H2O', { H: 5, O: 2.5 }],
    ['Na0.5K0.5AlSi3O8', { Na: 0.5, K: 0.5, Al: 1, Si: 3, O: 8 }],
    ['Mg1.8Fe0.2SiO4', { Mg: 1.8, Fe: 0.2, Si: 1, O: 4 }],
    ['AlO1.5', { Al: 1, O: 1.5 }],
    ['Fe2.5O4', { Fe: 2.5, O: 4 }],
    ['[PbO·PbSO4]2', { Pb: 4, O: 10, S: 2 }],
    ['{[Ca(OH)2]2}3', { Ca: 6, O: 12, H: 12 }],
  ])('%s', (text, expected) => {
    expect(elements(text)).toEqual(expected);
  });

  it('keeps a plain spelling of the text', () => {
    expect(parseFormula(' Pb₃ O₄ ').text).toBe('Pb3O4');
  });
});

describe('parseFormula refuses what has no single composition', () => {
  it.each([
    ['', 'it is empty'],
    ['   ', 'it is empty'],
    ['SO4²⁻', 'carries a charge'],
    ['Fe3+', 'carries a charge'],
    ['SO4^2-', 'carries a charge'],
    ['(Mg,Fe)2SiO4', 'write each share'],
    ['CuSO4·nH2O', 'n is none'],
    ['CaxNa1', 'x is none'],
    ['Si02', 'is a letter O meant?'],
    ['SiO0', 'counts above zero'],
    ['CaSO4·0H2O', 'counts above zero'],
    ['CaSO4·1/0H2O', 'counts above zero'],
    ['Ca(OH2', ') is missing'],
    ['CaOH)2', 'matching brackets'],
    ['Ca(OH]2', 'matching brackets'],
    ['()2', 'an element in every part'],
    ['CaO·', 'an element in every part'],
    ['Xx2', 'Xx is none'],
    ['Tc2O7', 'Tc is none'],
    ['sio2', 's is none'],
    ['Pbo', 'o is none'],
    ['12', 'an element in every part'],
    ['A'.repeat(300), 'at most 200 characters'],
  ])('%j', (text, words) => {
    expect(() => parseFormula(text)).toThrow(words);
  });

  it('says where it stopped', () => {
    expect(() => parseFormula('PbQ')).toThrow('at character 3 of PbQ');
  });
});

describe('parseFormula keeps its invariants', () => {
  const symbol = fc.constantFrom(...ELEMENTS);
  const counts = fc.uniqueArray(fc.tuple(symbol, fc.integer({ min: 1, max: 40 })), {
    minLength: 1,
    maxLength: 8,
    selector: ([name]) => name,
  });
  const written = (list: readonly (readonly [string, number])[]) =>
    list.map(([name, count]) => (count === 1 ? name : `${name}${count}`)).join('');

  it('reads back the counts that a formula was written from', () => {
    fc.assert(
      fc.property(counts, (list) => {
        expect(elements(written(list))).toEqual(Object.fromEntries(list));
      }),
    );
  });

  it('reads subscript digits as it reads plain digits', () => {
    const subscript = (text: string) => text.replace(/\d/g, (d) => String.fromCodePoint(0x2080 + Number(d)));
    fc.assert(
      fc.property(counts, (list) => {
        expect(elements(subscript(written(list)))).toEqual(elements(written(list)));
      }),
    );
  });

  it('adds the masses of a hydrate’s parts and multiplies a bracket’s', () => {
    fc.assert(
      fc.property(counts, counts, fc.integer({ min: 2, max: 12 }), (a, b, n) => {
        const [first, second] = [written(a), written(b)];
        expect(molarMass(`${first}·${n}${second}`)).toBeCloseTo(molarMass(first) + n * molarMass(second), 6);
        expect(molarMass(`(${first})${n}`)).toBeCloseTo(n * molarMass(first), 6);
      }),
    );
  });

  it('never throws anything but a requirement, whatever the text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        try {
          expect(molarMass(parseFormula(text))).toBeGreaterThan(0);
        } catch (error) {
          expect((error as Error).name).toBe('RequirementError');
        }
      }),
      { numRuns: 2000 },
    );
  });

  it('leaves plain text alone once it is plain', () => {
    fc.assert(
      fc.property(counts, (list) => {
        const plain = plainFormula(written(list));
        expect(plainFormula(plain)).toBe(plain);
      }),
    );
  });
});

describe('molarMass agrees with what follows from other sources', () => {
  // NIST Chemistry WebBook molecular weights (SRD 69), from memory of the printed value; weights there are older.
  it.each([
    ['H2O', 18.0153],
    ['CO2', 44.0095],
    ['SiO2', 60.0843],
    ['CaCO3', 100.087],
    ['PbS', 239.3],
  ])('%s', (formula, expected) => {
    expect(Math.abs(molarMass(formula) / expected - 1)).toBeLessThan(3e-4);
  });
});
