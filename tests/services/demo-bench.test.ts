import { describe, expect, it } from 'vitest';
import { adviseBatch } from '../../api/domain/batch/advice.ts';
import { fireBatch } from '../../api/domain/batch/batch.ts';
import { buildShelf, fireOfEntry, linesOfEntries } from '../../api/domain/batch/bench-shelf.ts';
import { DEMO_BATCHES, DEMO_MATERIALS, DEMO_ROASTS } from '../../api/services/demo/bench.ts';
import { TILES } from '../../api/services/demo/recipes.ts';

const shelf = buildShelf(DEMO_MATERIALS, DEMO_ROASTS);
const fired = (name: string) => {
  const batch = DEMO_BATCHES.find((one) => one.tiles.includes(name))!;
  const fire = fireOfEntry(batch.fire);
  const result = fireBatch(linesOfEntries(batch.lines, shelf), fire);
  return { result, advice: adviseBatch(result, fire).map((one) => one.what) };
};

describe('the bench of the demo study', () => {
  it('says of every material, roast and batch that it is invented', () => {
    expect(
      DEMO_MATERIALS.every(({ source, name }) => /invented/i.test(source) && /invented/.test(name)),
    ).toBe(true);
    expect(DEMO_ROASTS.every(({ note }) => /invented/i.test(note))).toBe(true);
    expect(DEMO_BATCHES.every(({ note }) => /invented/i.test(note))).toBe(true);
  });

  it('holds roasts that a mixture of lead compounds explains', () => {
    expect(shelf.faults).toEqual({});
    expect([...shelf.roasts.keys()]).toEqual(['roast-1', 'roast-2', 'frit-1']);
    const [once, twice] = [shelf.roasts.get('roast-1')!, shelf.roasts.get('roast-2')!];
    expect(twice.sulfur.perLead.high).toBeLessThan(once.sulfur.perLead.high);
  });

  it('paints each of the nine tiles with one batch', () => {
    const painted = DEMO_BATCHES.flatMap((batch) => batch.tiles);
    expect([...painted].sort()).toEqual(TILES.map((tile) => tile.label));
  });

  it.each(TILES.map((tile) => [tile.label, tile] as const))(
    'fires to the paint of %s within 2.5 wt%% of lead, silica and manganese, sulfur apart',
    (label, tile) => {
      const oxides = ['SiO2', 'Al2O3', 'Fe2O3', 'MnO', 'PbO', 'CaO', 'CuO'];
      const closed = (of: (oxide: string) => number) => {
        const total = oxides.reduce((sum, oxide) => sum + of(oxide), 0);
        return oxides.map((oxide) => (100 * of(oxide)) / total);
      };
      const { result } = fired(label);
      const predicted = closed((oxide) => result.oxides.find((one) => one.oxide === oxide)?.percent ?? 0);
      const painted = closed((oxide) => tile.paint[oxide] ?? 0);
      predicted.forEach((value, i) => {
        expect(Math.abs(value - painted[i]!), oxides[i]).toBeLessThan(2.5);
      });
    },
  );

  it('is told that the roast is missing where raw galena went in, and not where it was roasted twice', () => {
    expect(fired('Tile 1').advice).toContain('roast missing');
    expect(fired('Tile 2').advice).toContain('roast missing');
    expect(fired('Tile 6').advice).not.toContain('roast missing');
    expect(fired('Tile 9').advice).not.toContain('roast missing');
  });
});
