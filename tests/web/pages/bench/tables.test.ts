import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fireBatch } from '../../../../api/domain/batch/batch.ts';
import { buildShelf, fireOfEntry, linesOfEntries } from '../../../../api/domain/batch/bench-shelf.ts';
import { blendSeries } from '../../../../api/domain/batch/blend.ts';
import {
  blendTable,
  type FileTable,
  firedTable,
  materialsTable,
  recipeTable,
} from '../../../../web/pages/bench/tables.ts';
import { toCsv } from '../../../../web/parts/csv.ts';

const shelf = buildShelf([], []);
const batch = (weighed: Readonly<Record<string, number>>, water = 0) =>
  linesOfEntries(
    Object.entries(weighed).map(([material, amount]) => ({ material, amount, water })),
    shelf,
  );
const FIRE = fireOfEntry({ celsius: 850, atmosphere: 'air', sulfurPerLead: null });
const column = ({ header, rows }: FileTable, name: string) => rows.map((row) => row[header.indexOf(name)]);
const sum = (cells: readonly unknown[]) => cells.reduce<number>((total, each) => total + Number(each), 0);

describe('the bench’s tables as files', () => {
  it('have as many cells in each row as their header', () => {
    const lines = batch({ litharge: 60, quartz: 40 });
    const places = blendSeries([lines, batch({ quartz: 1 })], { steps: 3, grams: 20 });
    const tables = [
      materialsTable([...shelf.materials.values()]),
      recipeTable(lines, 'g'),
      firedTable(fireBatch(lines, FIRE).oxides),
      blendTable(
        places.map((one) => ({ ...one, fired: {} })),
        ['A', 'B'],
      ),
    ];
    for (const { header, rows } of tables) {
      expect(rows.length).toBeGreaterThan(0);
      expect(new Set(rows.map((row) => row.length))).toEqual(new Set([header.length]));
      expect(new Set(header).size).toBe(header.length);
    }
  });

  it('give shares of the dry batch that come to a hundred, whatever the water', () => {
    const amounts = fc.array(fc.double({ min: 0.1, max: 1e3, noNaN: true }), { minLength: 2, maxLength: 2 });
    fc.assert(
      fc.property(amounts, fc.double({ min: 0, max: 60, noNaN: true }), ([a, b], water) => {
        const table = recipeTable(batch({ litharge: a!, quartz: b! }, water), 'g');
        expect(sum(column(table, 'share of dry batch (%)'))).toBeCloseTo(100, 9);
        expect(column(table, 'share of dry batch (%)')[0]).toBeCloseTo((100 * a!) / (a! + b!), 9);
      }),
    );
  });

  it('give a fired paint closed to a hundred with the range around each figure', () => {
    const table = firedTable(fireBatch(batch({ litharge: 60, quartz: 28, kaolinite: 12 }), FIRE).oxides);
    expect(sum(column(table, 'wt%'))).toBeCloseTo(100, 9);
    expect(column(table, 'oxide')).toContain('PbO');
  });

  it('give each place of a blend its grams and what it fires to, a line between two ends', () => {
    const places = blendSeries([batch({ litharge: 1 }), batch({ quartz: 1 })], { steps: 2, grams: 20 });
    const table = blendTable(
      places.map((one, i) => ({ ...one, fired: i === 1 ? { PbO: 50 } : {} })),
      ['Lead', 'Silica'],
    );
    expect(column(table, 'Lead (%)')).toEqual([100, 50, 0].map((n) => expect.closeTo(n, 9)));
    expect(column(table, 'PbO fired (wt%)')).toEqual([null, 50, null]);
    const name = places[0]!.lines[0]!.material.name;
    expect(sum(column(table, `${name} (g)`))).toBeCloseTo(30, 9);
  });

  it('say nothing of shares where nothing is weighed, and cannot run as a formula', () => {
    const [line] = batch({ quartz: 0 });
    const hostile = { ...line!, material: { ...line!.material, name: '=cmd()' } };
    const table = recipeTable([hostile], 'parts');
    expect(table.rows[0]!.at(-1)).toBeNull();
    expect(toCsv(table.header, table.rows)).toContain("'=cmd()");
  });
});
