import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { paceDoubt } from '../../../api/domain/firing/pace-doubt.ts';

const doubt = (hours: number, { from = 20, to = 850 } = {}) =>
  paceDoubt({
    channel: { name: 'top', sensor: { kind: 'unknown' } },
    curve: [
      { seconds: 0, celsius: from },
      { seconds: 3600 * hours, celsius: to },
    ],
  });

describe('the pace of a log', () => {
  // Common practice, no published source: from a brushwood fire in the open to a wood kiln fired for a week.
  it.each([
    ['a brushwood fire', 0.35],
    ['a pit fire', 2],
    ['a small kiln', 10],
    ['a wood kiln fired for a week', 168],
  ])('of %s is not doubted', (_, hours) => {
    expect(doubt(hours)).toBeNull();
  });

  it('of minutes read as seconds is remarked on with its causes, and with how long it took as minutes', () => {
    expect(doubt(2 / 60)).toMatchObject({ kind: 'too-fast', channel: 'top', row: null });
    expect(doubt(2 / 60)?.message).toBe(
      'top: a rise from 20 to 850 °C in 0:02 h (25,000 °C per hour), faster than fires usually heat. A sensor put into a hot fire reads so; so do minutes read as seconds (as minutes it took 2:00 h).',
    );
  });

  it('of seconds read as minutes is remarked on where it is slower than a kiln is fired', () => {
    expect(doubt(10 * 60)).toMatchObject({ kind: 'too-slow' });
    expect(doubt(10 * 60)?.message).toContain(
      '(1.4 °C per hour), slower than kilns are usually fired. A kiln warmed over weeks reads so;',
    );
    expect(doubt(10 * 60)?.message).toContain('so do seconds read as minutes (as seconds it took 10:00 h).');
  });

  it('is doubted one way or not at all, and only of a rise that is a firing', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 5000, noNaN: true }),
        fc.integer({ min: 0, max: 1300 }),
        (h, to) => {
          const found = doubt(h, { to });
          const perHour = (to - 20) / h;
          if (to - 20 < 200) expect(found).toBeNull();
          else
            expect(found?.kind ?? null).toBe(perHour > 6000 ? 'too-fast' : perHour < 4 ? 'too-slow' : null);
        },
      ),
    );
  });

  it('of a log without a reading, or hottest at its first, is not told', () => {
    expect(paceDoubt({ channel: { name: 'top', sensor: { kind: 'unknown' } }, curve: [] })).toBeNull();
    expect(doubt(0, { from: 20, to: 900 })).toBeNull();
  });
});
