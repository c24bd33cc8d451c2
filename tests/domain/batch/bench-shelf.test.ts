import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  buildShelf,
  fireOfEntry,
  linesOfEntries,
  materialOfEntry,
  roastOfEntry,
} from '../../../api/domain/batch/bench-shelf.ts';
import { contentMass } from '../../../api/domain/batch/content.ts';
import type { MaterialEntry, RoastEntry } from '../../../api/domain/batch/entries.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';

const ore = (over: Partial<MaterialEntry> = {}): MaterialEntry => ({
  ...{ id: 'ore', name: 'Ore', source: '', handling: '', hazards: [], pricePerKg: null, onHand: null },
  making: { kind: 'formula', formula: 'PbS', purity: { low: 0.8, high: 0.9 }, gangue: 'SiO2' },
  ...over,
});
const roast = (over: Partial<RoastEntry> = {}): RoastEntry => ({
  ...{ id: 'r1', name: 'Roast 1', charge: [{ material: 'galena', amount: 100, water: 0 }] },
  ...{ massOut: 101, weighing: 0.1, celsius: 800, hours: 3, looks: null, sulfur: null },
  ...over,
});

describe('the shelf of a study', () => {
  it('holds the starter shelf, own materials and roasts', () => {
    const shelf = buildShelf([ore()], [roast()]);
    expect(shelf.materials.size).toBe(starterShelf().length + 2);
    expect(shelf.materials.get('r1')?.origin.kind).toBe('roast');
    expect(shelf.faults).toEqual({});
  });

  it('makes one gram of every material weigh one gram, whatever the purity', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 1, noNaN: true }), (share) => {
        const making = { ...ore().making, purity: { low: share, high: share } } as MaterialEntry['making'];
        expect(contentMass(materialOfEntry(ore({ making })).content)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('roasts a roast again, in whatever order they are kept', () => {
    const again = roast({ id: 'r2', charge: [{ material: 'r1', amount: 101, water: 0 }], massOut: 97 });
    const [one, other] = [buildShelf([], [again, roast()]), buildShelf([], [roast(), again])];
    expect(one.faults).toEqual({});
    expect(one.materials.get('r2')).toEqual(other.materials.get('r2'));
    // Lead stays: 100 g of galena hold 86.599 g of lead (PbS 239.3, Pb 207.2; CIAAW 2021), in 97 g of charge.
    expect(one.materials.get('r2')!.content.moles.Pb! * 207.2 * 97).toBeCloseTo(86.6, 1);
  });

  it('leaves out what cannot be, saying why, and what depends on it', () => {
    const making = { ...ore().making, formula: 'Pbx' } as MaterialEntry['making'];
    const charge = [{ material: 'ore', amount: 10, water: 0 }];
    const shelf = buildShelf([ore({ making })], [roast({ charge })]);
    expect(shelf.faults.ore).toContain('a formula needs');
    expect(shelf.faults.r1).toContain('not on the shelf');
    expect(shelf.materials.has('r1')).toBe(false);
  });

  it('leaves out roasts that hold each other', () => {
    const one = roast({ charge: [{ material: 'r2', amount: 1, water: 0 }] });
    const two = roast({ id: 'r2', charge: [{ material: 'r1', amount: 1, water: 0 }] });
    expect(Object.keys(buildShelf([], [one, two]).faults)).toEqual(['r1', 'r2']);
  });

  it('refuses a line that names nothing on it, and a charge that gained more than sulfate can', () => {
    const shelf = buildShelf([], []);
    expect(() => linesOfEntries([{ material: 'gold', amount: 1, water: 0 }], shelf)).toThrow('gold is not');
    expect(() => roastOfEntry(roast({ massOut: 140 }), shelf)).toThrow('cannot gain more than that');
  });

  it('takes the sulfur that a fire keeps from its settings, or from its temperature', () => {
    const entry = { celsius: 850, atmosphere: 'air', sulfurPerLead: null } as const;
    expect(fireOfEntry(entry).sulfurWords).not.toBe('as set by hand');
    expect(fireOfEntry({ ...entry, sulfurPerLead: { low: 0.1, high: 0.2 } }).sulfurPerLead).toEqual({
      low: 0.1,
      high: 0.2,
      central: expect.closeTo(0.15, 12),
    });
  });
});
