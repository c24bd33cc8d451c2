import { readFileSync } from 'node:fs';
import { converter } from 'culori';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ciede2000 } from '../../../api/domain/colour/ciede2000.ts';
import { labOf, lightnessOf, reflectanceOf } from '../../../api/domain/colour/lab.ts';
import { channelToLight, hexOf, lightToChannel } from '../../../api/domain/colour/srgb.ts';
import type { Lab, LinearRgb } from '../../../api/domain/colour/types.ts';

/** Sharma, Wu & Dalal 2005, table 1, DOI 10.1002/col.20070. */
const SHARMA: [Lab, Lab, number][] = JSON.parse(
  readFileSync(new URL('../../fixtures/colour/sharma.json', import.meta.url), 'utf8'),
);

const lab = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
  fc.double({ min: -100, max: 100, noNaN: true }),
);

describe('CIEDE2000', () => {
  it('gives all 34 published pairs to their four decimals, both ways round', () => {
    expect(SHARMA).toHaveLength(34);
    for (const [one, other, distance] of SHARMA) {
      expect(ciede2000(one, other)).toBeCloseTo(distance, 4);
      expect(ciede2000(other, one)).toBeCloseTo(distance, 4);
    }
  });
  it('is nothing between a colour and itself, and never negative', () => {
    fc.assert(fc.property(lab, (one) => ciede2000(one, one) === 0));
    fc.assert(fc.property(lab, lab, (one, other) => ciede2000(one, other) >= 0));
  });
});

describe('sRGB', () => {
  it('is the L*a*b* (D65) that culori, an independent library, gives: 343 colours', () => {
    const theirs = converter('lab65');
    const steps = [0, 19, 64, 118, 128, 200, 255];
    // It uses a matrix of more digits than IEC 61966-2-1 prints.
    for (const r of steps)
      for (const g of steps)
        for (const b of steps) {
          const [light, wanted] = [
            [r, g, b].map(channelToLight),
            theirs({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 }),
          ];
          const found = labOf(light as unknown as LinearRgb);
          const off = [found[0] - wanted.l, found[1] - wanted.a, found[2] - wanted.b];
          expect(Math.max(...off.map(Math.abs)), `${r} ${g} ${b}`).toBeLessThan(0.04);
        }
  });
  it('comes back from linear light byte by byte', () => {
    for (let byte = 0; byte < 256; byte++) expect(lightToChannel(channelToLight(byte))).toBeCloseTo(byte, 9);
  });
  it('writes light beyond white as white', () => expect(hexOf([2, 1, -1])).toBe('#ffff00'));
});

describe('lightness and reflectance', () => {
  it('undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        expect(reflectanceOf(lightnessOf(share))).toBeCloseTo(share, 12);
      }),
    );
  });
  it('are those of a grey whose channels are alike', () => {
    const [lightness, a, b] = labOf([0.18, 0.18, 0.18]);
    expect(lightness).toBeCloseTo(lightnessOf(0.18), 10);
    expect(Math.hypot(a, b)).toBeLessThan(1e-10);
  });
  it('refuse what is no share and no lightness', () => {
    expect(() => lightnessOf(-0.1)).toThrow('a share of 0 to 1; found -0.1');
    expect(() => reflectanceOf(101)).toThrow('an L* of 0 to 100; found 101');
  });
});
