import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareFirings } from '../../../api/domain/firing/compare.ts';
import { logReducer } from '../../../api/domain/firing/log-reducer.ts';
import { stagesInOrder } from '../../../api/domain/firing/stages.ts';
import { summariseLog } from '../../../api/domain/firing/summary.ts';
import { thinLargestTriangle } from '../../../api/domain/firing/thin.ts';
import type { AirStage, LogDigest, Sensor } from '../../../api/domain/firing/types.ts';

const K2: Sensor = { kind: 'class', type: 'K', class: 2 };

/** Straight from 20 °C to the peak in an hour and back to 20 °C in three, one reading a minute. */
function log(peaks: readonly number[], sensor: Sensor = K2): LogDigest {
  const reducer = logReducer({
    channels: peaks.map((_, i) => ({ name: ['top', 'bottom'][i]!, sensor })),
  });
  const at = (peak: number, m: number) =>
    Math.round(10 * (m <= 60 ? 20 + ((peak - 20) * m) / 60 : peak - ((peak - 20) * (m - 60)) / 180)) / 10;
  const minutes = Array.from({ length: 241 }, (_, m) => m);
  reducer.add({
    seconds: minutes.map((m) => 60 * m),
    celsius: peaks.map((p) => minutes.map((m) => at(p, m))),
    rows: minutes.map((m) => m + 2),
  });
  return reducer.finish();
}
const none = { stages: [], rateBands: [], thresholds: [600, 800] };
const stage = (air: AirStage['air'], from: number, to: number): AirStage => ({ air, from, to, note: null });

describe('summariseLog', () => {
  it('gives the peak with tolerance and half a step: 860 ± 6.45 ± 0.05 °C for class 2 read to 0.1', () => {
    const { peak } = summariseLog(log([860]), none).channels[0]!;
    expect(peak).toMatchObject({ value: 860, seconds: 3600 });
    expect(peak!.high - peak!.value).toBeCloseTo(6.5, 9);
  });

  it('gives rates between temperatures, up and down, bounded by the tolerance at both', () => {
    const { bands } = summariseLog(log([860]), { ...none, rateBands: [200, 400, 900] }).channels[0]!;
    expect(bands.map((b) => [b.direction, b.from, b.to, b.rate && Math.round(b.rate.perHour.value)])).toEqual(
      [
        ['heating', 200, 400, 840],
        ['heating', 400, 900, null],
        ['cooling', 400, 200, -280],
        ['cooling', 900, 400, null],
      ],
    );
    const { value, low } = bands[0]!.rate!.perHour;
    expect(value - low).toBeCloseTo((2.5 + 3 + 0.1) / (200 / 840), 1);
  });

  it('sums up each stage of air', () => {
    const stages = [stage('smothered', 3600, 7200), stage('oxidising', 0, 3600)];
    const found = summariseLog(log([860]), { ...none, stages }).channels[0]!.stages;
    expect(found.map((s) => s.stage.air)).toEqual(['oxidising', 'smothered']);
    expect(found[0]).toMatchObject({ start: { value: 20 }, end: { value: 860 }, highest: { value: 860 } });
    expect(found[1]!.rate!.perHour.value).toBeCloseTo(-280, 0);
    const late = summariseLog(log([860]), { ...none, stages: [stage('neutral', 20_000, 30_000)] });
    expect(late.channels[0]!.stages[0]).toMatchObject({ start: null, highest: null, rate: null });
  });

  it('says how uneven the channels are, at worst and at best', () => {
    const found = summariseLog(log([860, 820]), none);
    expect(found.unevenness!.value).toBe(40);
    expect(found.unevenness!.low).toBeCloseTo(40 - 6.45 - 6.15 - 0.1, 6);
    expect(summariseLog(log([860]), none).unevenness).toBeNull();
  });

  it('reads as sentences with bounds', () => {
    expect(summariseLog(log([860, 820]), none).sentence).toMatch(
      /^Peak 860 ± 7 °C at 1:00 h \(top\)\. Above 800 °C for 0:17 h \(0:15 to 0:19\)\. Fastest heating 840 °C per hour/,
    );
    expect(summariseLog(log([860], { kind: 'unknown' }), none).channels[0]!.tolerance).toContain(
      'nothing known',
    );
  });

  it('refuses bands that do not rise and stages that overlap', () => {
    expect(() => summariseLog(log([860]), { ...none, rateBands: [300, 200] })).toThrow('need to rise');
    const over = [stage('reducing', 0, 4000), stage('smothered', 3600, 7200)];
    expect(() => summariseLog(log([860]), { ...none, stages: over })).toThrow(
      'smothered begins at 1:00 before reducing ends at 1:07',
    );
    expect(() => stagesInOrder([stage('reducing', 100, 50)])).toThrow('needs to end after it begins');
  });
});

describe('compareFirings', () => {
  const named = (name: string, peak: number) => ({ name, summary: summariseLog(log([peak]), none) });

  it('calls firings different only beyond their sensors’ errors', () => {
    const found = compareFirings([named('May', 860), named('June', 840), named('July', 855)]);
    expect(found.rows[0]).toMatchObject({ quantity: 'peak', differ: true });
    expect(found.sentence).toMatch(/^May, June and July differ in peak/);
    const alike = compareFirings([named('May', 860), named('July', 855)]);
    expect(alike.rows[0]!.differ).toBe(false);
    expect(alike.sentence).not.toContain('differ in peak');
  });

  it('says nothing of what only one firing has', () => {
    const [two, one] = [{ name: 'May', summary: summariseLog(log([860, 820]), none) }, named('June', 860)];
    const row = compareFirings([two, one]).rows.find((r) => r.quantity === 'unevenness of peaks');
    expect(row).toMatchObject({ differ: null, values: [{ value: 40 }, null] });
  });

  it('judges by no length of a log: it has no error, and is not that of the firing', () => {
    const longer = (hours: number) => {
      const { name, summary } = named('June', 860);
      return { name, summary: { ...summary, duration: summary.duration + 3600 * hours } };
    };
    const { rows, sentence } = compareFirings([named('May', 860), longer(20)]);
    const row = rows.find((r) => r.quantity === 'length of the log');
    expect(row).toMatchObject({ differ: null, values: [{ value: 4 }, { value: 24 }] });
    expect(row?.notJudged).toContain('not how long the fire burned');
    expect(sentence).toBe('May and June: nothing differs by more than the sensors’ errors.');
    expect(rows.filter((r) => r.notJudged !== null)).toEqual([row]);
  });

  it('refuses one firing', () => {
    expect(() => compareFirings([named('May', 860)])).toThrow('two firings or more; found 1');
  });
});

describe('thinLargestTriangle', () => {
  const curve = fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 3, maxLength: 400 });

  it('keeps ends and extremes, in order, at about the number asked for', () => {
    fc.assert(
      fc.property(curve, fc.integer({ min: 3, max: 50 }), (celsius, points) => {
        const kept = thinLargestTriangle(
          celsius.map((_, i) => i),
          celsius,
          points,
        );
        const shown = kept.map((i) => celsius[i]!);
        expect([Math.max(...shown), Math.min(...shown)]).toEqual([
          Math.max(...celsius),
          Math.min(...celsius),
        ]);
        expect([kept[0], kept.at(-1)]).toEqual([0, celsius.length - 1]);
        expect(kept.every((v, i) => i === 0 || v > kept[i - 1]!)).toBe(true);
        expect(kept.length).toBeLessThanOrEqual(points + 2);
      }),
    );
  });

  it('keeps the corner of a bend rather than points on the straight', () => {
    const celsius = Array.from({ length: 101 }, (_, i) => (i <= 50 ? 10 * i : 500 + (i - 50)));
    const kept = thinLargestTriangle(
      celsius.map((_, i) => i),
      celsius,
      4,
    );
    expect(kept.some((i) => Math.abs(i - 50) <= 1)).toBe(true);
  });

  it('refuses columns of different length and fewer than three points', () => {
    expect(() => thinLargestTriangle([0, 1], [0], 3)).toThrow('found 2 and 1');
    expect(() => thinLargestTriangle([0, 1, 2, 3], [0, 1, 2, 3], 2)).toThrow('3 points or more; found 2');
  });
});
