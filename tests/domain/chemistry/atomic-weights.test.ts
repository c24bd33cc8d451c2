import { describe, expect, it } from 'vitest';
import { ATOMIC_WEIGHTS, atomicWeight, ELEMENTS } from '../../../api/domain/chemistry/atomic-weights.ts';

describe('atomic weights', () => {
  it('are the IUPAC 2021 values (doi 10.1515/pac-2019-0603) for lead and aluminium', () => {
    expect(ATOMIC_WEIGHTS.Pb).toEqual({ weight: 207.2, uncertainty: 1.1, interval: [206.14, 207.94] });
    expect(ATOMIC_WEIGHTS.Al?.weight).toBe(26.9815384);
    expect(ATOMIC_WEIGHTS.Si?.interval).toEqual([28.084, 28.086]);
  });

  it('lie inside their natural interval, within their uncertainty', () => {
    for (const [symbol, { weight, uncertainty, interval }] of Object.entries(ATOMIC_WEIGHTS)) {
      const [low, high] = interval ?? [weight, weight];
      expect(weight - uncertainty, symbol).toBeLessThanOrEqual(low);
      expect(weight + uncertainty, symbol).toBeGreaterThanOrEqual(high);
    }
  });

  it('cover the 84 elements that have a standard value, no symbol twice', () => {
    expect(ELEMENTS).toHaveLength(84);
    expect(new Set(ELEMENTS).size).toBe(84);
  });

  it('rise along the table but at the known inversions: Ar–K, Co–Ni, Te–I, Th–Pa', () => {
    const falls = ELEMENTS.slice(1).filter((s, i) => atomicWeight(s) < atomicWeight(ELEMENTS[i]!));
    expect(falls).toEqual(['K', 'Ni', 'I', 'Pa']);
  });

  it('refuse what is no element, inherited names included', () => {
    expect(() => atomicWeight('Tc')).toThrow('Tc has no standard atomic weight');
    expect(() => atomicWeight('toString')).toThrow('toString has no standard atomic weight');
  });
});
