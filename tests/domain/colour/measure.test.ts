import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../../api/domain/colour/ciede2000.ts';
import { labOf } from '../../../api/domain/colour/lab.ts';
import { measureColour } from '../../../api/domain/colour/measure.ts';
import { readPatch } from '../../../api/domain/colour/patch.ts';
import { channelToLight, lightToChannel } from '../../../api/domain/colour/srgb.ts';
import type { LinearRgb, Outline, Pixels } from '../../../api/domain/colour/types.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';

const LEFT: Outline = [
  [0, 0],
  [0.5, 0],
  [0.5, 1],
  [0, 1],
];
const RIGHT: Outline = [
  [0.5, 0],
  [1, 0],
  [1, 1],
  [0.5, 1],
];
const GREY = { outline: LEFT, reflectance: 0.18 };

/** Left half one light, right half another; `lit` colours the light, `noise` is a relative standard deviation. */
function picture(
  [left, right]: readonly [LinearRgb, LinearRgb],
  { lit = [1, 1, 1] as LinearRgb, noise = 0, size = 128, seed = 1 } = {},
): Pixels {
  const random = randomStream(seed);
  const data = new Uint8ClampedArray(4 * size * size);
  for (let i = 0; i < size * size; i++) {
    const light = i % size < size / 2 ? left : right;
    const by = 1 + noise * random.normal();
    for (let c = 0; c < 3; c++) data[4 * i + c] = Math.round(lightToChannel(light[c]! * lit[c]! * by));
    data[4 * i + 3] = 255;
  }
  return { width: size, height: size, data };
}
const neutral = (light: number): LinearRgb => [light, light, light];

describe('a colour measured against grey', () => {
  it('is the colour painted, whatever the light: a brighter or tinted picture with its grey gives the same', () => {
    const channel = fc.double({ min: 0.05, max: 0.5, noNaN: true });
    const tint = fc.double({ min: 0.6, max: 1.4, noNaN: true });
    fc.assert(
      fc.property(fc.tuple(channel, channel, channel), fc.tuple(tint, tint, tint), (paint, lit) => {
        const found = measureColour(picture([neutral(0.18), paint], { lit }), RIGHT, GREY);
        // What is left is the rounding of both to whole bytes.
        expect(ciede2000(found.lab, labOf(paint))).toBeLessThan(1.5);
      }),
      { numRuns: 30 },
    );
  });

  it('is the grey’s own lightness where zone and grey are one material', () => {
    const { lab, error, spread } = measureColour(picture([neutral(0.2), neutral(0.2)]), RIGHT, GREY);
    // L* of 18 % reflectance by the CIE formula: 116 · 0.18^(1/3) − 16.
    expect(lab[0]).toBeCloseTo(116 * 0.18 ** (1 / 3) - 16, 9);
    for (const value of [lab[1], lab[2], ...error!, ...spread]) expect(Math.abs(value)).toBeLessThan(1e-9);
  });

  it('has the error that repeated pictures show', () => {
    const paint: LinearRgb = [0.06, 0.045, 0.035];
    const found = Array.from({ length: 40 }, (_, i) =>
      measureColour(picture([neutral(0.18), paint], { noise: 0.3, size: 96, seed: i + 1 }), RIGHT, GREY),
    );
    const light = found.map(({ lab }) => lab[0]);
    const mean = light.reduce((a, b) => a + b) / light.length;
    const seen = Math.sqrt(light.reduce((sum, l) => sum + (l - mean) ** 2, 0) / (light.length - 1));
    const said = Math.sqrt(found.reduce((sum, { error }) => sum + error![0] ** 2, 0) / found.length);
    // A standard deviation of 40 is itself known to 11 %.
    expect(said / seen).toBeGreaterThan(0.67);
    expect(said / seen).toBeLessThan(1.5);
    expect(found[0]!.spread[0]).toBeGreaterThan(10 * said);
  });

  it('means light, not bytes: half black and half white is half the light', () => {
    const data = new Uint8Array(4 * 64 * 64).fill(255);
    for (let i = 0; i < 64 * 64; i += 2) data.fill(0, 4 * i, 4 * i + 3);
    const { mean } = readPatch({ width: 64, height: 64, data }, LEFT);
    for (const channel of mean) expect(channel).toBeCloseTo(0.5, 12);
  });

  it('says what is burnt out and what a screen cannot show', () => {
    const shiny = picture([neutral(0.1), neutral(0.4)]);
    for (let i = 0; i < 128 * 128; i++)
      if (i % 128 >= 118) (shiny.data as Uint8ClampedArray).fill(255, 4 * i, 4 * i + 3);
    const { burnt, cautions } = measureColour(shiny, RIGHT, GREY);
    expect(burnt).toBeCloseTo(10 / 64, 12);
    expect(cautions.join()).toContain('16 % of the zone is burnt out');
    const bright = measureColour(picture([neutral(0.05), neutral(0.5)]), RIGHT, GREY);
    expect(bright).toMatchObject({ hex: '#ffffff', shown: false });
    expect(bright.cautions.join()).toContain('brighter than a screen can show');
    const dark = measureColour(picture([neutral(0.18), neutral(0)]), RIGHT, GREY);
    expect(dark.cautions.join()).toContain('100 % of the zone is as dark as the picture can hold');
  });

  it('has no error where a patch is too small to vary', () => {
    const small = picture([neutral(0.18), neutral(0.1)], { size: 16 });
    expect(measureColour(small, RIGHT, GREY).error).toBeNull();
  });

  it.each<[string, readonly [LinearRgb, LinearRgb], number, string]>([
    [
      'a burnt-out grey',
      [neutral(1), neutral(0.1)],
      0.18,
      'free of burnt-out pixels; 100 % of its pixels are',
    ],
    ['a dark grey', [neutral(0.004), neutral(0.1)], 0.18, 'too dark to measure against; found 0.4 %'],
    [
      'a burnt-out zone',
      [neutral(0.18), neutral(1)],
      0.18,
      'not burnt out in the picture; 100 % of its pixels are',
    ],
    [
      'a grey that reflects nothing',
      [neutral(0.18), neutral(0.1)],
      0,
      'more than 0 and at most 100 %; found 0 %',
    ],
  ])('%s is refused', (_, halves, reflectance, words) => {
    expect(() => measureColour(picture(halves), RIGHT, { outline: LEFT, reflectance })).toThrow(words);
  });
  it('without a grey, or with too few pixels, is refused', () => {
    const pixels = picture([neutral(0.18), neutral(0.1)]);
    expect(() => measureColour(pixels, RIGHT, null)).toThrow('none is outlined in this one');
    const tiny: Outline = [
      [0.6, 0.6],
      [0.62, 0.6],
      [0.62, 0.62],
    ];
    expect(() => measureColour(pixels, tiny, GREY)).toThrow('at least 100 pixels inside; found');
    const clear = { ...pixels, data: new Uint8Array(4 * 128 * 128).fill(90) };
    expect(() => measureColour(clear, RIGHT, GREY)).toThrow('at least 100 pixels inside; found 0');
  });
  it('is what its bytes say, once more by hand', () => {
    // Grey of byte 118 at 18 %, zone of bytes 64, 48, 40: each channel by 0.18 / light(118).
    const light = [64, 48, 40].map((byte) => (channelToLight(byte) * 0.18) / channelToLight(118));
    const data = Array.from({ length: 400 }, (_, i) =>
      i % 20 < 10 ? [118, 118, 118, 255] : [64, 48, 40, 255],
    );
    const found = measureColour({ width: 20, height: 20, data: data.flat() }, RIGHT, GREY);
    const wanted = labOf(light as unknown as LinearRgb);
    for (const i of [0, 1, 2] as const) expect(found.lab[i]).toBeCloseTo(wanted[i], 9);
  });
});
