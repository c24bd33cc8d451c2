import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logReducer } from '../../../api/domain/firing/log-reducer.ts';
import { shiftLog } from '../../../api/domain/firing/shift-log.ts';
import { summariseLog } from '../../../api/domain/firing/summary.ts';
import { TimeProfile, timeAbove } from '../../../api/domain/firing/time-profile.ts';
import type { Sensor } from '../../../api/domain/firing/types.ts';

const UNKNOWN: Sensor = { kind: 'unknown' };
const profileOf = (celsius: readonly number[], step: number, sensor: Sensor = UNKNOWN) => {
  const profile = new TimeProfile(sensor);
  for (const [i, to] of celsius.slice(1).entries())
    profile.add(celsius[i]!, to, { seconds: step, gap: false });
  return profile.result();
};
/** By hand: the share of each straight line at or above a threshold. */
const byHand = (celsius: readonly number[], step: number, threshold: number) =>
  celsius.slice(1).reduce((sum, b, i) => {
    const a = celsius[i]!;
    if (a >= threshold && b >= threshold) return sum + step;
    if (a < threshold && b < threshold) return sum;
    return sum + (step * (Math.max(a, b) - threshold)) / Math.abs(b - a);
  }, 0);

describe('time spent in each degree', () => {
  const shown = fc.integer({ min: -500, max: 15_000 }).map((tenths) => tenths / 10);
  const curve = fc.array(shown, { minLength: 2, maxLength: 60 });

  it('gives the time above any whole degree that straight lines give by hand', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: -60, max: 1550 }), (celsius, threshold) => {
        const found = timeAbove(profileOf(celsius, 60), threshold);
        expect(found.value).toBeCloseTo(byHand(celsius, 60, threshold), 2);
      }),
      { numRuns: 200 },
    );
  });

  it('counts all of the time above the coldest reading', () => {
    fc.assert(
      fc.property(curve, (celsius) => {
        const found = timeAbove(profileOf(celsius, 10), -100);
        expect(found.value).toBeCloseTo(10 * (celsius.length - 1), 2);
      }),
    );
  });

  it('bounds a hold by the class of its sensor: at 800 °C class 2 of IEC 60584-1 leaves 6 °C', () => {
    const held = profileOf([800, 800], 600, { kind: 'class', type: 'K', class: 2 });
    expect([794, 795, 800, 806, 807].map((t) => timeAbove(held, t).low)).toEqual([600, 0, 0, 0, 0]);
    expect([794, 800, 801, 806, 807].map((t) => timeAbove(held, t).high)).toEqual([600, 600, 600, 600, 0]);
    expect([800, 801].map((t) => timeAbove(held, t).value)).toEqual([600, 0]);
  });

  it('is empty without time', () => {
    expect(timeAbove(profileOf([800], 60), 100)).toEqual({ value: 0, low: 0, high: 0 });
  });
});

describe('a log on another clock', () => {
  const log = () => {
    const reducer = logReducer({ channels: [{ name: 'top', sensor: UNKNOWN }] });
    const rows = Array.from({ length: 61 }, (_, i) => i).filter((i) => i < 20 || i > 29);
    reducer.add({
      seconds: rows.map((i) => 60 * i),
      celsius: [rows.map((i) => 20 + 10 * i)],
      rows: rows.map((i) => i + 2),
    });
    return reducer.finish();
  };
  const settings = { stages: [], rateBands: [100, 600], thresholds: [500] };

  it('keeps every amount and moves every time', () => {
    fc.assert(
      fc.property(fc.integer({ min: -7200, max: 7200 }), (by) => {
        const [at, moved] = [log(), shiftLog(log(), by)].map((d) => summariseLog(d, settings));
        const [was, is] = [at!.channels[0]!, moved!.channels[0]!];
        expect(is.peak).toEqual({ ...was.peak, seconds: was.peak!.seconds + by });
        expect(is.timeAbove).toEqual(was.timeAbove);
        expect(is.bands[0]!.rate!.perHour.value).toBeCloseTo(was.bands[0]!.rate!.perHour.value, 6);
        expect(shiftLog(log(), by).gaps).toEqual([{ from: 19 * 60 + by, to: 30 * 60 + by }]);
      }),
      { numRuns: 30 },
    );
  });

  it('says what began before the fire was lit with a minus', () => {
    expect(summariseLog(shiftLog(log(), -7200), settings).sentence).toContain('at −1:00 h');
  });

  it('refuses more than twelve temperatures to stay above', () => {
    const thresholds = Array.from({ length: 13 }, (_, i) => 100 * i);
    expect(() => summariseLog(log(), { ...settings, thresholds })).toThrow('up to 12 temperatures');
    expect(() => summariseLog(log(), { ...settings, thresholds: [Number.NaN] })).toThrow('found NaN');
  });
});
