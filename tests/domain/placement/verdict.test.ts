import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rankAmong, verdictOf } from '../../../api/domain/placement/verdict.ts';

const nothing = { membership: null, typicality: null, ratio: null, off: null };
const rank = (atLeastAsFar: number, of: number) => ({
  value: (1 + atLeastAsFar) / (of + 1),
  atLeastAsFar,
  of,
});
const off = (distance: number, furthestMember: number, members = 10) => ({
  distance,
  furthestMember,
  rank: rank(distance > furthestMember ? 0 : 3, members),
});

describe('a verdict', () => {
  it.each([
    [0.3, 'inside'],
    [0.05, 'inside'],
    [0.049, 'borderline'],
    [0.01, 'borderline'],
    [0.0099, 'outside'],
  ])('by probability %f is %s', (membership, verdict) => {
    expect(verdictOf({ ...nothing, membership })).toBe(verdict);
  });

  it.each([
    [3, 12, 0.9, 'inside'],
    [0, 12, 1.2, 'borderline'],
    [0, 12, 2, 'outside'],
    [0, 40, 1.1, 'outside'],
    [2, 40, 1, 'borderline'],
  ])('by rank, %i of %i at least as far and %f times the furthest, is %s', (further, of, ratio, verdict) => {
    expect(verdictOf({ ...nothing, typicality: rank(further, of), ratio })).toBe(verdict);
  });

  it.each([
    [0.4, off(1, 2), 'inside'],
    [0.4, off(2.2, 2), 'inside'],
    [0.4, off(2.5, 2), 'borderline'],
    [0.4, off(4, 2), 'outside'],
    [0.4, off(2.1, 2, 30), 'borderline'],
    [0.001, off(1, 2), 'outside'],
    [0.02, off(4, 2), 'outside'],
  ])('on components counts what lies off them: p %f, %o is %s', (membership, away, verdict) => {
    expect(verdictOf({ ...nothing, membership, off: away })).toBe(verdict);
  });

  it('by rank alone, members without a distance of their own, is never more than borderline', () => {
    expect(verdictOf({ ...nothing, typicality: rank(0, 4) })).toBe('borderline');
    expect(verdictOf({ ...nothing, typicality: rank(1, 4) })).toBe('inside');
  });

  it('is unknown where there is neither probability nor rank', () => {
    expect(verdictOf(nothing)).toBe('unknown');
  });

  it('never softens as a sample moves out', () => {
    const order = ['inside', 'borderline', 'outside'];
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 9, noNaN: true }),
        (p, smaller, distance) => {
          const near = verdictOf({ ...nothing, membership: p, off: off(distance, 2) });
          const far = verdictOf({ ...nothing, membership: p * smaller, off: off(distance * 1.5, 2) });
          expect(order.indexOf(far)).toBeGreaterThanOrEqual(order.indexOf(near));
        },
      ),
    );
  });
});

describe('a rank', () => {
  it('counts ties as at least as far, so that it never claims too much', () => {
    expect(rankAmong(2, [1, 2, 2, 3])).toEqual({ value: 4 / 5, atLeastAsFar: 3, of: 4 });
  });

  it('is 1 over n + 1 beyond all, and 1 at the centre', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1 }), (members) => {
        expect(rankAmong(101, members).value).toBe(1 / (members.length + 1));
        expect(rankAmong(0, members).value).toBe(1);
      }),
    );
  });
});
