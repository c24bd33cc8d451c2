import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { electronDepth, electronRange } from '../../../api/domain/slip/electron-depth.ts';
import { overlapWarnings } from '../../../api/domain/slip/overlaps.ts';
import { readingDepths, transmission } from '../../../api/domain/slip/reading-depth.ts';
import { correctByLine, readThrough, substrateReadings } from '../../../api/domain/slip/substrate.ts';

const PAINT = { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 };
const SLIP = { PbO: 0.1, SiO2: 62, Al2O3: 24, Fe2O3: 9 };
const GEOMETRY = { incoming: 20, inAngle: 45, outAngle: 45 };

describe('depth of an XRF reading', () => {
  const depths = readingDepths({ oxides: PAINT, density: 4.5 }, GEOMETRY);
  const of = (oxide: string) => depths.find((d) => d.oxide === oxide)!;

  it('60 PbO, 32 SiO2, 6 Al2O3, 2 Fe2O3 at 4.5 g/cm³ passes .1490 of Fe Kα through 10 µm; 99 % from 24.2 µm (xraylib 4.0.0)', () => {
    expect(transmission(of('Fe2O3').chi, { density: 4.5, thickness: 10 })).toBeCloseTo(0.149, 4);
    expect(of('Fe2O3').depth99).toBeCloseTo(24.2, 1);
    expect(transmission(of('SiO2').chi, { density: 4.5, thickness: 10 }) / 1e-4).toBeCloseTo(1, 0);
  });

  it('at the depth for 99 % one hundredth is left of a line from beneath', () => {
    for (const { chi, depth99 } of depths)
      expect(transmission(chi, { density: 4.5, thickness: depth99 })).toBeCloseTo(0.01, 10);
  });

  it('two layers pass what one of both thicknesses passes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 50, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (a, b) => {
          const pass = (thickness: number) => transmission(423, { density: 4.5, thickness });
          expect(pass(a) * pass(b)).toBeCloseTo(pass(a + b), 12);
        },
      ),
    );
  });

  it('refuses angles, energies and layers that cannot be', () => {
    const layer = { oxides: PAINT, density: 4.5 };
    expect(() => readingDepths(layer, { ...GEOMETRY, inAngle: 0 })).toThrow(/one is 0°/);
    expect(() => readingDepths(layer, { ...GEOMETRY, incoming: 21 })).toThrow(/it is 21/);
    expect(() => readingDepths({ oxides: PAINT, density: 0 }, GEOMETRY)).toThrow(/they are 0 g\/cm³/);
  });
});

describe('what a reading is made of', () => {
  const stack = { paint: PAINT, slip: SLIP, thickness: 10, density: 4.5 };

  it('silicon and aluminium read the paint while iron reads the slip through it', () => {
    const read = Object.fromEntries(substrateReadings(stack, GEOMETRY).map((r) => [r.oxide, r]));
    expect(read.SiO2!.reads).toBe('paint');
    expect(read.Al2O3!.reads).toBe('paint');
    expect(read.Fe2O3!.substrateShare).toBeGreaterThan(0.5);
  });

  it('a paint on itself reads as itself, however thin', () => {
    const itself = readThrough({ ...stack, slip: PAINT, thickness: 3 }, GEOMETRY);
    for (const [oxide, wt] of Object.entries(PAINT)) expect(itself[oxide]).toBeCloseTo(wt, 10);
  });

  it('correcting line by line undoes what reading through did', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 60, noNaN: true }),
        fc.double({ min: 40, max: 70, noNaN: true }),
        (thickness, lead) => {
          const paint = { PbO: lead, SiO2: 92 - lead, Al2O3: 4, Fe2O3: 4 };
          const layer = { ...stack, paint, thickness };
          const { oxides } = correctByLine({ ...layer, paint: readThrough(layer, GEOMETRY) }, GEOMETRY);
          for (const [oxide, wt] of Object.entries(paint)) expect(oxides[oxide]).toBeCloseTo(wt, 5);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('refuses to correct a paint that everything shines through, and one that would turn negative', () => {
    expect(() => correctByLine({ ...stack, thickness: 0.1 }, GEOMETRY)).toThrow(
      /holds back at least a tenth/,
    );
    expect(() => correctByLine({ ...stack, paint: { ...PAINT, Fe2O3: 0.5 } }, GEOMETRY)).toThrow(
      /Fe2O3 comes to -/,
    );
  });
});

describe('depth of an SEM-EDS reading', () => {
  it('electrons of 20 keV go 0.858 µm into gold, as the handbook form of Kanaya & Okayama has it in open code', () => {
    // Gold is not among the table's elements; lead of gold's A, Z is checked by hand: 0.0276·196.97·20^1.67/(79^0.89·19.3).
    expect((0.0276 * 196.97 * 20 ** 1.67) / (79 ** 0.89 * 19.3)).toBeCloseTo(0.858, 3);
    expect(electronRange({ C: 1 }, 2.62, 20)).toBeCloseTo(3.823, 2);
  });

  it('a line needs its edge, so hard lines come from less deep than the electrons reach', () => {
    const { range, lines } = electronDepth({ oxides: PAINT, density: 4.5, beam: 20 });
    const by = Object.fromEntries(lines.map((l) => [l.oxide, l]));
    expect(by.Fe2O3!.depth).toBeLessThan(by.SiO2!.depth);
    expect(by.SiO2!.depth).toBeLessThan(range);
    expect(by.PbO!.line.shell).toBe('L');
    expect(by.Fe2O3!.depth).toBeCloseTo((0.064 * (20 ** 1.68 - 7.112 ** 1.68)) / 4.5, 3);
  });

  it('refuses a beam of nothing', () => {
    expect(() => electronDepth({ oxides: PAINT, density: 4.5, beam: 0 })).toThrow(
      /they are 4.5 g\/cm³ and 0 keV/,
    );
  });
});

describe('line overlaps', () => {
  it('arsenic and sulfur are warned of beside lead only', () => {
    expect(overlapWarnings(['PbO', 'SO3', 'As2O3', 'SiO2'])).toHaveLength(2);
    expect(overlapWarnings(['SO3', 'As2O3', 'SiO2'])).toEqual([]);
  });
});
