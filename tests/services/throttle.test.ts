import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createThrottle } from '../../api/services/throttle.ts';

describe('a throttle', () => {
  it('never allows more than the burst and what has since been filled up', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30_000 }), { maxLength: 200 }), (waits) => {
        let time = 0;
        const throttle = createThrottle({ burst: 5, perMinute: 6 }, () => time);
        let spent = 0;
        for (const wait of waits) {
          time += wait;
          if (!throttle.allows('a')) continue;
          throttle.spend('a');
          spent++;
          expect(spent).toBeLessThanOrEqual(5 + (time * 6) / 60_000 + 1e-9);
        }
      }),
    );
  });
  it('counts each address for itself and fills up again', () => {
    let time = 0;
    const throttle = createThrottle({ burst: 1, perMinute: 1 }, () => time);
    throttle.spend('a');
    expect([throttle.allows('a'), throttle.allows('b')]).toEqual([false, true]);
    time = 60_000;
    expect(throttle.allows('a')).toBe(true);
  });
  it('remembers only so many addresses', () => {
    const throttle = createThrottle({ burst: 1, perMinute: 0, most: 2 }, () => 0);
    for (const address of ['a', 'b', 'c']) throttle.spend(address);
    expect(['a', 'b', 'c'].map(throttle.allows)).toEqual([true, false, false]);
  });
});
