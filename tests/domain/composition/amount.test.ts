import { describe, expect, it } from 'vitest';
import {
  addAmounts,
  assumedSigma,
  figureText,
  oneSigma,
  scaleAmount,
} from '../../../api/domain/composition/amount.ts';
import { expectClose } from '../../support/close.ts';
import { amount } from './build.ts';

describe('oneSigma', () => {
  it('halves 2σ, divides 95 % by the normal quantile, takes the rest as it is', () => {
    expect(oneSigma(0.3, '2σ')).toBe(0.15);
    expectClose(oneSigma(1.959964, '95 %'), 1);
    expect(oneSigma(0.3, '1σ')).toBe(0.3);
    expect(oneSigma(0.3, 'unstated')).toBe(0.3);
    expect(oneSigma(0.3, null)).toBe(0.3);
  });

  it('refuses what is no uncertainty', () => {
    expect(() => oneSigma(-1, '1σ')).toThrow('zero or more; found -1');
    expect(() => oneSigma(Number.NaN, '1σ')).toThrow('found NaN');
  });
});

describe('assumedSigma', () => {
  it('is relative far above the limit and a third of the limit far below it', () => {
    expect(assumedSigma(50, 0.03, 0.01)).toBeCloseTo(1.5, 5);
    expect(assumedSigma(0, 0.03, 0.03)).toBeCloseTo(0.01, 12);
  });

  it.each([0, 1, -0.1, Number.NaN])('refuses a relative error of %s', (error) => {
    expect(() => assumedSigma(1, error)).toThrow('between 0 and 1');
  });
});

describe('amounts', () => {
  it('keep what is unknown unknown when scaled', () => {
    expect(scaleAmount(amount(null, { limit: 0.2 }), 2)).toEqual(amount(null, { limit: 0.4 }));
  });

  it('add up with their standard deviations and resolutions in quadrature', () => {
    const stated = { sigmaBasis: 'stated' as const };
    const sum = addAmounts(
      amount(1, { sigma: 3, resolution: 0.3, limit: 0.1, ...stated }),
      amount(2, { sigma: 4, resolution: 0.4, limit: 0.2, ...stated }),
    );
    expectClose([sum.value!, sum.sigma!, sum.resolution!, sum.limit!], [3, 5, 0.5, 0.3]);
    expect(sum.sigmaBasis).toBe('stated');
  });

  it('lose σ where a detected term has none, and the limit where an undetected one has none', () => {
    expect(addAmounts(amount(1, { sigma: 1, sigmaBasis: 'stated' }), amount(2))).toEqual(amount(3));
    expect(addAmounts(amount(null, { limit: 0.1 }), amount(null))).toEqual(amount(null));
  });

  it('take a term below detection as nothing beside one that is detected', () => {
    const detected = amount(1, { sigma: 0.1, sigmaBasis: 'stated', resolution: 0.01 });
    expect(addAmounts(detected, amount(null, { limit: 0.2 }))).toEqual({ ...detected, limit: 0.2 });
  });
});

describe('figureText', () => {
  it.each([
    [98.20349, '98.2'],
    [100, '100'],
    [0.000123456, '0.0001235'],
    [0, '0'],
  ])('writes %s as %s', (figure, text) => {
    expect(figureText(figure)).toBe(text);
  });
});
