import { describe, expect, it } from 'vitest';
import {
  BLANK_MATERIAL,
  formOfMaterial,
  readAnalysis,
  readMaterial,
} from '../../../../web/pages/bench/materials/material-form.ts';

describe('an analysis as typed', () => {
  it('is read with or without ±, with commas, tabs and a loss on ignition', () => {
    expect(readAnalysis('SiO2 60,2 ± 0.4\nAl2O3\t24.1\nFe 3\nLOI 8.5\nTotal 95.8')).toEqual({
      values: { SiO2: 60.2, Al2O3: 24.1, Fe: 3 },
      sigma: { SiO2: 0.4 },
      lossOnIgnition: 8.5,
    });
  });
  it.each([
    ['Clay 60', '“Clay” is no oxide'],
    ['SiO2 lots', 'found “lots”'],
    ['SiO2 -3', 'zero or more'],
    ['SiO2 60 some', 'The ± of SiO2'],
    ['', 'at least one line'],
    ['SiO2 40\nPbO 30\nSiO2 10', 'SiO2 stands on two lines.'],
    ['SiO2 40\nLOI 3\nLOI 4', 'LOI stands on two lines.'],
  ])('says what is wrong with “%s”', (text, words) => {
    expect(readAnalysis(text)).toContain(words);
  });
});

describe('a material as typed', () => {
  it('comes back as it was kept', () => {
    const form = { ...BLANK_MATERIAL, name: 'Ore', formula: 'PbS', low: '80', high: '92.5', gangue: 'SiO2' };
    const read = readMaterial({ ...form, price: '3,5', onHand: '120' });
    if (typeof read === 'string') throw new Error(read);
    expect(read.making).toEqual({
      ...{ kind: 'formula', formula: 'PbS', gangue: 'SiO2' },
      purity: { low: 0.8, high: 0.925 },
    });
    const stored = { ...read, id: 'x', createdAt: '', updatedAt: '' };
    expect(readMaterial(formOfMaterial(stored))).toEqual(read);
  });
  it.each([
    [{ formula: '' }, 'A formula is needed'],
    [{ formula: 'PbS', low: '0' }, 'above 0 and up to 100'],
    [{ formula: 'PbS', low: '90', high: '80' }, 'the smaller one first'],
    [{ formula: 'PbS', price: '-1' }, 'The price needs'],
    [{ formula: 'PbS', onHand: 'much' }, 'The amount on hand needs'],
  ])('says what is wrong: %j', (part, words) => {
    expect(readMaterial({ ...BLANK_MATERIAL, ...part })).toContain(words);
  });
});
