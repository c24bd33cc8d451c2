import { describe, expect, it } from 'vitest';
import { describeTotal } from '../../../api/domain/composition/total.ts';
import { amount } from './build.ts';

const judge = (rawTotal: number, values: Readonly<Record<string, number>> = { SiO2: 60 }) =>
  describeTotal(rawTotal, {
    amounts: Object.fromEntries(Object.entries(values).map(([oxide, value]) => [oxide, amount(value)])),
    relative: false,
    hints: [],
  });

describe('describeTotal', () => {
  // 98–102 %: raw totals usual in EDS of archaeological glass before normalisation.
  it.each([
    [97.99, 'low'],
    [98, 'usual'],
    [102, 'usual'],
    [102.01, 'high'],
  ])('calls %s %s', (rawTotal, judgement) => {
    expect(judge(rawTotal).judgement).toBe(judgement);
  });

  it('explains a low total by what was not measured', () => {
    expect(judge(33, { Al2O3: 18 }).message).toContain('SiO2 was not measured');
    expect(judge(95).message).toContain('Loss on ignition was not measured');
    expect(judge(95).message).not.toContain('headings');
    expect(judge(95, { SiO2: 60, LOI: 3 }).message).toContain('Elements not sought');
  });

  it('says when iron stated as Fe2O3 lifts a total over 100', () => {
    expect(judge(102.5, { SiO2: 60, Fe2O3: 9 }).message).toContain('as FeO the total would be 101.6');
    expect(judge(100.4, { SiO2: 60, Fe2O3: 9 }).message).toContain('as FeO the total would be 99.5');
    expect(judge(100.4, { SiO2: 60, FeO: 9 }).message).not.toContain('as FeO');
    expect(judge(108, { SiO2: 60, Fe2O3: 9 }).message).not.toContain('as FeO');
  });

  it.each([30, 140])('sends the reader of a total of %s to units and headings', (rawTotal) => {
    expect(judge(rawTotal).message).toContain('units and column headings should be checked first');
  });

  it('does not judge atom %', () => {
    const found = describeTotal(100, { amounts: {}, relative: true, hints: ['x'] });
    expect(found.judgement).toBe('unknown');
    expect(found.message).toContain('scaled to sum to 100');
  });

  it('adds hints it is given', () => {
    expect(describeTotal(90, { amounts: {}, relative: false, hints: ['A hint.'] }).message).toMatch(
      /A hint\.$/,
    );
  });
});
