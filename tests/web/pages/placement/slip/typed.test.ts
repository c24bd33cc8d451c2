import { describe, expect, it } from 'vitest';
import { readComposition, targetOf } from '../../../../../web/pages/placement/slip/fired-choice.ts';
import { readNumbers } from '../../../../../web/pages/placement/slip/typed-rows.ts';

describe('a composition typed in', () => {
  it('is read with commas, semicolons or lines between, and a decimal comma', () => {
    const read = { PbO: 60, SiO2: 32.5, Al2O3: 6 };
    expect(readComposition('PbO 60, SiO2 32.5, Al2O3 6')).toEqual(read);
    expect(readComposition('PbO: 60; SiO2: 32,5; Al2O3=6 %')).toBeNull();
    expect(readComposition('PbO 60\nSiO2 32,5\nAl2O3 6%')).toEqual(read);
  });
  it('is nothing where a piece is no oxide with an amount', () => {
    expect(readComposition('PbO sixty')).toBeNull();
    expect(readComposition('')).toBeNull();
    expect(targetOf({ batch: null, typed: 'PbO', relativeError: null })).toBeNull();
  });
  it('goes to the service with its error as a share', () => {
    const asked = targetOf({ batch: null, typed: 'PbO 60', relativeError: 2 });
    expect(asked).toMatchObject({ kind: 'typed', oxides: { PbO: 60 }, relativeError: 0.02 });
  });
});

describe('rows typed in', () => {
  it('are a label and so many numbers', () => {
    expect(readNumbers('T1; 12; 1; 0,4; 0.02\n\nT2\t20\t1\t0.3\t0.02', 4)).toEqual([
      { label: 'T1', numbers: [12, 1, 0.4, 0.02] },
      { label: 'T2', numbers: [20, 1, 0.3, 0.02] },
    ]);
  });
  it('are refused where a number is missing or is none', () => {
    expect(readNumbers('T1; 12; 1', 4)).toBeNull();
    expect(readNumbers('T1; 12; 1; x; 2', 4)).toBeNull();
  });
});
