import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toleranceInWords } from '../../../api/domain/firing/thermocouple.ts';
import { firingMethods, firingReferences } from '../../../api/domain/report/firing-methods.ts';

const kind = fc.constantFrom('thermocouple' as const, 'infrared' as const);

describe('the methods of a firing', () => {
  it('name every channel with its error, and correct for emissivity only where infrared was used', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1 })), fc.array(kind), (names, readings) => {
        const channels = names.map((name) => ({ name, tolerance: `± ${name.length} °C` }));
        const words = firingMethods({ channels, readings, version: '1' });
        for (const { name, tolerance } of channels) expect(words).toContain(`${name} by ${tolerance}`);
        expect(words.includes('Planck’s law')).toBe(readings.includes('infrared'));
      }),
    );
  });

  it('give the tolerance of IEC 60584-1 for a class 2 thermocouple and cite the standard', () => {
    const tolerance = toleranceInWords({ kind: 'class', type: 'K', class: 2 }, 850);
    const words = firingMethods({ channels: [{ name: 'top', tolerance }], readings: [], version: '1' });
    expect(words).toContain('top by type K, class 2 (IEC 60584-1): ± 2.5 °C or 0.75 % of the reading');
    expect(firingReferences({ channels: [{ tolerance }] }).map(({ text }) => text)).toEqual([
      expect.stringContaining('IEC 60584-1:2013'),
    ]);
  });

  it('cite nothing where nothing is known of the sensor, or nothing was measured', () => {
    const tolerance = toleranceInWords({ kind: 'unknown' }, 850);
    expect(firingReferences({ channels: [{ tolerance }] })).toEqual([]);
    expect(firingMethods({ channels: [], readings: [], version: '2' })).toBe('Computed with Nearsherd 2.');
  });
});
