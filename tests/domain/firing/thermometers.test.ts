import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readingBounds } from '../../../api/domain/firing/hand-reading.ts';
import { shownTemperature, trueTemperature } from '../../../api/domain/firing/infrared.ts';
import {
  boundsOf,
  thermocoupleTolerance,
  toleranceInWords,
} from '../../../api/domain/firing/thermocouple.ts';
import type { HandReading, Sensor } from '../../../api/domain/firing/types.ts';

const k = (grade: 1 | 2): Sensor => ({ kind: 'class', type: 'K', class: grade });

describe('thermocouples keep the tolerances of IEC 60584-1 (type K)', () => {
  it('class 2 is the greater of 2.5 °C and 0.0075 t', () => {
    const found = [300, 400, 850].map((t) => thermocoupleTolerance(t, k(2)));
    expect(found).toEqual([2.5, 3, 6.375]);
  });

  it('class 1 is the greater of 1.5 °C and 0.004 t, which meet at 375 °C', () => {
    expect([20, 375, 850].map((t) => thermocoupleTolerance(t, k(1)))).toEqual([1.5, 1.5, 3.4]);
  });

  it('the two rules of a class meet without a step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 1200, noNaN: true }),
        fc.constantFrom(1 as const, 2 as const),
        (t, c) => {
          const near = Math.abs(thermocoupleTolerance(t + 1e-6, k(c)) - thermocoupleTolerance(t, k(c)));
          expect(near).toBeLessThan(1e-7);
          expect(thermocoupleTolerance(t, k(1))).toBeLessThan(thermocoupleTolerance(t, k(2)));
        },
      ),
    );
  });

  it('bounds add half a step of the last digit', () => {
    expect(boundsOf(850, { sensor: k(2), resolution: 1 })).toEqual({
      value: 850,
      low: 843.125,
      high: 856.875,
    });
  });

  it('says where the class ends, and where nothing is known', () => {
    expect(toleranceInWords(k(1), 1040)).toContain('the class ends at 1000 °C');
    expect(toleranceInWords({ kind: 'unknown' }, 850)).toContain('nothing known');
    expect(() => thermocoupleTolerance(850, { kind: 'stated', celsius: Number.NaN })).toThrow(
      'a stated error needs 0 °C or more; found NaN',
    );
  });
});

describe('infrared thermometers follow Planck’s law', () => {
  it('at a true 800 °C, emissivity .85 with .95 set, they show 791, 767 and 737 °C at 1, 3.9 and 10 µm (sources, by Planck)', () => {
    const shown = [1, 3.9, 10].map((micrometres) =>
      shownTemperature(800, { emissivity: 0.85, set: 0.95, micrometres }),
    );
    expect(shown.map(Math.round)).toEqual([791, 767, 737]);
  });

  it('radiate by the law itself: the ratio of radiances is that of emissivities', () => {
    const radiance = (celsius: number, um: number) =>
      1 / Math.expm1(14_387.768775 / (um * (celsius + 273.15)));
    const shown = shownTemperature(800, { emissivity: 0.85, set: 0.95, micrometres: 3.9 });
    expect(radiance(shown, 3.9) / radiance(800, 3.9)).toBeCloseTo(0.85 / 0.95, 10);
  });

  const view = fc.record({
    emissivity: fc.double({ min: 0.2, max: 1, noNaN: true }),
    set: fc.double({ min: 0.2, max: 1, noNaN: true }),
    micrometres: fc.double({ min: 0.7, max: 14, noNaN: true }),
  });
  it('the correction undoes what the wrong setting did, and does nothing where the setting is right', () => {
    fc.assert(
      fc.property(view, fc.double({ min: 300, max: 1300, noNaN: true }), (v, celsius) => {
        expect(trueTemperature(shownTemperature(celsius, v), v)).toBeCloseTo(celsius, 6);
        expect(trueTemperature(celsius, { ...v, set: v.emissivity })).toBeCloseTo(celsius, 6);
        const lower = { ...v, emissivity: v.emissivity * 0.9 };
        expect(trueTemperature(celsius, lower)).toBeGreaterThan(trueTemperature(celsius, v));
      }),
    );
  });

  it('refuse what no surface is', () => {
    const right = { emissivity: 0.9, set: 0.95, micrometres: 8 };
    expect(() => trueTemperature(800, { ...right, emissivity: 1.2 })).toThrow('at most 1; found 1.2');
    expect(() => trueTemperature(800, { ...right, micrometres: 0 })).toThrow('0.5 to 20 µm; found 0');
    expect(() => trueTemperature(-300, right)).toThrow('more than −273.15 °C; found -300');
  });
});

describe('hand readings', () => {
  const infrared = (low: number, high: number): HandReading => ({
    kind: 'infrared',
    celsius: 767,
    resolution: 1,
    set: 0.95,
    emissivity: { value: 0.85, low, high },
    micrometres: 3.9,
    accuracy: { celsius: 2, share: 0.01 },
  });

  it('by infrared hold the true temperature, wider the less the surface is known', () => {
    const narrow = readingBounds(infrared(0.85, 0.85));
    const wide = readingBounds(infrared(0.7, 0.95));
    expect(Math.round(narrow.value)).toBe(800);
    expect(narrow.value).toBe(wide.value);
    expect(wide.low).toBeLessThan(narrow.low);
    expect(wide.high).toBeGreaterThan(narrow.high);
  });

  it('by thermocouple are its tolerance and half a step', () => {
    const reading: HandReading = { kind: 'thermocouple', celsius: 800, resolution: 10, sensor: k(2) };
    expect(readingBounds(reading)).toEqual({ value: 800, low: 789, high: 811 });
  });

  it('refuse bounds that are not around the value', () => {
    expect(() => readingBounds(infrared(0.9, 0.95))).toThrow('needs bounds around it; found 0.9, 0.85, 0.95');
    expect(() => readingBounds({ kind: 'thermocouple', celsius: 800, resolution: -1, sensor: k(2) })).toThrow(
      'a step of 0 or more; found -1',
    );
  });
});
