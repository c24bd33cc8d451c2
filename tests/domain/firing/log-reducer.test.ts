import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { logReducer } from '../../../api/domain/firing/log-reducer.ts';
import { timeAbove } from '../../../api/domain/firing/time-profile.ts';
import type { LogDigest, LogOptions } from '../../../api/domain/firing/types.ts';

type Reading = readonly [seconds: number, ...celsius: number[]];
const options = (channels: number, more: Partial<LogOptions> = {}): LogOptions => ({
  channels: Array.from({ length: channels }, (_, i) => ({ name: `c${i + 1}`, sensor: { kind: 'unknown' } })),
  ...more,
});

/** Rows are numbered from 2, as below a heading; `size` rows a chunk. */
function digestOf(readings: readonly Reading[], more: Partial<LogOptions> = {}, size = 7): LogDigest {
  const channels = readings[0]!.length - 1;
  const log = logReducer(options(channels, more));
  for (let at = 0; at < readings.length; at += size) {
    const part = readings.slice(at, at + size);
    log.add({
      seconds: part.map((r) => r[0]),
      celsius: Array.from({ length: channels }, (_, c) => part.map((r) => r[c + 1]!)),
      rows: part.map((_, i) => at + i + 2),
    });
  }
  return log.finish();
}
const flagsOf = (d: LogDigest) => d.flags.map((f) => [f.kind, f.row, f.count]);

/** One reading a minute, up to 800 °C and down. */
const fire = (n = 120): Reading[] =>
  Array.from({ length: n }, (_, i) => [60 * i, Math.round(20 + 780 * Math.sin((Math.PI * i) / (n - 1)))]);

describe('logReducer sums a straight rise and fall up by hand', () => {
  const up = Array.from({ length: 61 }, (_, i): Reading => [60 * i, 20 + 10 * i]);
  const down = Array.from({ length: 60 }, (_, i): Reading => [3660 + 60 * i, 615 - 5 * i]);
  const { channels, duration, interval } = digestOf([...up, ...down]);
  const [c] = channels;

  it('gives peak, duration and usual step', () => {
    expect(c!.peak).toEqual({ seconds: 3600, celsius: 620 });
    expect([duration, interval]).toEqual([7200, 60]);
  });

  it('gives the time above 500 °C: 12 minutes on the way up, 24 on the way down', () => {
    expect(timeAbove(c!.timeByTemperature, 500).value).toBeCloseTo(36 * 60, 6);
  });

  it('gives the fastest heating and cooling over ten minutes: 600 and 300 °C per hour', () => {
    expect(c!.fastestHeating!.perHour.value).toBeCloseTo(600, 6);
    expect(c!.fastestCooling!.perHour.value).toBeCloseTo(-300, 6);
  });

  it('bounds time above by the sensor’s tolerance: a class 2 sensor at 500 °C may be off by 3.75', () => {
    const sensor = { kind: 'class', type: 'K', class: 2 } as const;
    const found = digestOf([...up, ...down], { channels: [{ name: 'k', sensor }] }).channels[0]!;
    const { low, high } = timeAbove(found.timeByTemperature, 500);
    // The true temperature is (1 ± 0.0075) times the reading: 500 is read at 503.78 or 496.28.
    expect(low).toBeCloseTo(((620 - 500 / 0.9925) / 10 + (620 - 500 / 0.9925) / 5) * 60, 0);
    expect(high).toBeCloseTo(((620 - 500 / 1.0075) / 10 + (620 - 500 / 1.0075) / 5) * 60, 0);
  });
});

describe('logReducer keeps peaks and counts in any log', () => {
  const curve = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 20, maxLength: 2000 }).map((steps) =>
    steps.reduce<number[]>((all, s) => {
      all.push(Math.max(0, (all.at(-1) ?? 20) + s - 20));
      return all;
    }, []),
  );

  it('whatever the length, highest and lowest stay on the thinned curve, in order of time', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 10, max: 60 }), (values, plotPoints) => {
        const { curve: kept } = digestOf(
          values.map((v, i): Reading => [10 * i, v]),
          { plotPoints },
        ).channels[0]!;
        const shown = kept.map((p) => p.celsius);
        expect([Math.max(...shown), Math.min(...shown)]).toEqual([Math.max(...values), Math.min(...values)]);
        expect(kept.length).toBeLessThanOrEqual(plotPoints + 2);
        expect(kept.every((p, i) => i === 0 || p.seconds >= kept[i - 1]!.seconds)).toBe(true);
        expect(kept[0]!.seconds).toBe(0);
        expect(kept.at(-1)!.seconds).toBe(10 * (values.length - 1));
      }),
      { numRuns: 60 },
    );
  });

  it('however the log is cut into chunks, the digest is the same', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 1, max: 500 }), (values, size) => {
        const readings = values.map((v, i): Reading => [10 * i, v]);
        expect(digestOf(readings, {}, size)).toEqual(digestOf(readings, {}, 1e9));
      }),
      { numRuns: 30 },
    );
  });

  it('time above falls with the threshold and stays within its bounds', () => {
    fc.assert(
      fc.property(curve, (values) => {
        const sensor = { kind: 'class', type: 'K', class: 2 } as const;
        const { timeByTemperature } = digestOf(
          values.map((v, i): Reading => [10 * i, v]),
          {
            channels: [{ name: 'k', sensor }],
          },
        ).channels[0]!;
        const seconds = [50, 100, 200].map((t) => timeAbove(timeByTemperature, t));
        for (const s of seconds) expect(s.low <= s.value + 1e-9 && s.value <= s.high + 1e-9).toBe(true);
        expect(seconds[0]!.value).toBeGreaterThanOrEqual(seconds[1]!.value);
        expect(seconds[1]!.value).toBeGreaterThanOrEqual(seconds[2]!.value);
      }),
      { numRuns: 40 },
    );
  });
});

describe('logReducer flags what looks wrong, with its row', () => {
  it('repeated times', () => {
    const rows = fire();
    expect(flagsOf(digestOf([...rows.slice(0, 10), rows[9]!, ...rows.slice(10)]))).toEqual([
      ['duplicate-time', 12, 1],
    ]);
  });

  it('a clock set back an hour goes on from where it was', () => {
    const rows = fire().map(([s, c], i): Reading => [i < 70 ? s : s - 3600, c!]);
    const found = digestOf(rows);
    expect(flagsOf(found)).toEqual([['clock-back', 72, 1]]);
    expect(found.duration).toBe(60 * 119);
    expect(found.flags[0]!.message).toContain('summer time');
  });

  it('a clock set ahead an hour looks like an hour without readings, and is taken as one', () => {
    const rows = fire().map(([s, c], i): Reading => [i < 60 ? s : s + 3600, c!]);
    expect(flagsOf(digestOf(rows))).toEqual([['clock-forward', 62, 1]]);
  });

  it('a clock set back by hand is told from single rows out of order', () => {
    const back = fire().map(([s, c], i): Reading => [i < 60 ? s : s - 1020, c!]);
    const kinds = flagsOf(digestOf(back)).map(([kind]) => kind);
    expect(kinds).toEqual(['out-of-order', 'clock-back']);
    const rows = fire();
    const swapped = [...rows.slice(0, 40), rows[41]!, rows[40]!, ...rows.slice(42)];
    expect(flagsOf(digestOf(swapped))).toEqual([['out-of-order', 43, 1]]);
  });

  it('a log that starts again is set after the first', () => {
    const found = digestOf([...fire(50), ...fire(50)]);
    expect(flagsOf(found)).toEqual([['restart', 52, 1]]);
    expect(found.duration).toBe(60 * 99);
  });

  it('a gap counts towards the longest time above only', () => {
    const rows = fire().filter((_, i) => i < 55 || i > 65);
    const [whole, gapped] = [digestOf(fire()), digestOf(rows)];
    expect(flagsOf(gapped)).toEqual([['gap', 57, 1]]);
    const { low, value, high } = timeAbove(gapped.channels[0]!.timeByTemperature, 500);
    expect(gapped.gaps).toEqual([{ from: 54 * 60, to: 66 * 60 }]);
    expect(value).toBeCloseTo(timeAbove(whole.channels[0]!.timeByTemperature, 500).value, 0);
    expect([Math.round(value - low), Math.round(high - value)]).toEqual([720, 0]);
  });

  it('a spike is left out of the peak and kept as a mark; a true jump is not', () => {
    const rows = fire().map(([s, c], i): Reading => [s, i === 30 ? 1400 : c!]);
    const found = digestOf(rows);
    expect(flagsOf(found)).toEqual([['spike', 32, 1]]);
    expect(found.channels[0]).toMatchObject({ spikes: 1, spikePoints: [{ seconds: 1800, celsius: 1400 }] });
    expect(found.channels[0]!.peak!.celsius).toBe(800);
    const jump = fire().map(([s, c], i): Reading => [s, i < 30 ? c! : c! + 400]);
    expect(digestOf(jump).channels[0]!.spikes).toBe(0);
  });

  it('missing and impossible readings, channel by channel', () => {
    const rows = fire().map(([s, c], i): Reading => [s, i === 3 ? Number.NaN : c!, i > 90 ? 9999 : c!]);
    expect(digestOf(rows).flags.map((f) => [f.kind, f.channel, f.row, f.count])).toEqual([
      ['missing', 'c1', 5, 1],
      ['out-of-range', 'c2', 93, 29],
    ]);
  });

  it('°F taken for °C, and °C taken for °F', () => {
    const hot = fire().map(([s, c]): Reading => [s, 1.8 * c! + 32]);
    expect(digestOf(hot).flags[0]).toMatchObject({ kind: 'fahrenheit', channel: 'c1' });
    const cold = fire().map(([s, c]): Reading => [s, (c! - 32) / 1.8]);
    expect(digestOf(cold).flags[0]).toMatchObject({ kind: 'celsius-as-fahrenheit' });
    expect(digestOf(fire()).flags).toEqual([]);
  });

  it('minutes read as seconds, and seconds read as minutes, once for all channels', () => {
    const slowed = (by: number) => fire().map(([s, c]): Reading => [by * s, c!, c! - 5]);
    expect(digestOf(slowed(1 / 60)).flags.map((one) => one.kind)).toEqual(['too-fast']);
    expect(digestOf(slowed(1)).flags).toEqual([]);
    expect(digestOf(slowed(400)).flags.map((one) => one.kind)).toEqual(['too-slow']);
  });

  it('no pace of a fire that the logger ran long before and after, whatever its first reading', () => {
    const days = 86_400;
    const minutes = (from: number, to: number, celsius: (s: number) => number) =>
      Array.from({ length: (to - from) / 60 }, (_, i): Reading => [from + 60 * i, celsius(60 * i)]);
    const still = minutes(0, 9 * days, (s) => (s < days ? 350 - s / 288 : 20));
    const rise = minutes(9 * days, 9 * days + 28_800, (s) => 20 + Math.round(s / 36));
    const after = minutes(9 * days + 28_800, 12 * days, () => 20);
    expect(digestOf([...still, ...rise, ...after], {}, 500).flags).toEqual([]);
    const quick = (by: number) => rise.map(([s, c]): Reading => [9 * days + (s - 9 * days) * by, c!]);
    expect(digestOf(quick(1 / 60)).flags.map((one) => one.kind)).toEqual(['too-fast']);
  });

  it('a sensor put into a hot fire, as a remark that names that cause and does not say what is wrong', () => {
    const cold = Array.from({ length: 60 }, (_, i): Reading => [5 * i, 20]);
    const raku = Array.from({ length: 120 }, (_, i): Reading => [300 + 5 * i, Math.min(950, 20 + 31 * i)]);
    const { flags } = digestOf([...cold, ...raku]);
    expect(flags.map((one) => one.kind)).toEqual(['too-fast']);
    expect(flags[0]!.message).toContain('A sensor put into a hot fire reads so;');
    expect(flags[0]!.message).not.toMatch(/\?|check/i);
  });
});

describe('logReducer refuses', () => {
  it('a log without rows or without readings', () => {
    expect(() => logReducer(options(1)).finish()).toThrow('a log needs a row with a time; found none');
    expect(() => digestOf([[0, Number.NaN]])).toThrow('a log needs a reading in one channel; found none');
  });

  it('chunks of another shape, and rows without a time', () => {
    const log = logReducer(options(2));
    expect(() => log.add({ seconds: [0], celsius: [[1]], rows: [2] })).toThrow('2 readings for each row');
    expect(() => log.add({ seconds: [Number.NaN], celsius: [[1], [1]], rows: [9] })).toThrow(
      'row 9 has none',
    );
  });

  it('settings without sense', () => {
    expect(() => logReducer(options(0))).toThrow('a log needs a channel; found none');
    expect(() => logReducer(options(1, { rateWindow: 0 }))).toThrow('a window above 0 s; found 0');
    expect(() => logReducer(options(1, { plotPoints: 3 }))).toThrow('10 points or more; found 3');
  });
});
