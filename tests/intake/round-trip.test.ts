import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it, vi } from 'vitest';
import { previewOf } from '../../api/intake/preview.ts';
import { readPasted, readTable } from '../../api/intake/read-table.ts';
import type { Table } from '../../api/intake/types.ts';
import { NO_DEFAULTS } from '../../api/intake/understand.ts';
import { type Cell, workbook } from './support/workbook.ts';

vi.setConfig({ testTimeout: 120_000 });

/** One value to write: in steps of its last decimal, or below a limit, or not measured. */
interface Figure {
  readonly steps: number;
  readonly decimals: number;
  readonly state: 'value' | 'below' | 'absent';
  readonly spread: number | null;
}
interface Analysis {
  readonly label: string;
  readonly part: 'paint' | 'slip' | 'body';
  readonly figures: readonly Figure[];
}
interface Format {
  readonly analytes: readonly { readonly name: string; readonly unit: 'wt%' | 'ppm' }[];
  readonly decimal: '.' | ',';
  readonly delimiter: ';' | '\t';
  readonly unitStyle: 'brackets' | 'row' | 'plain';
  readonly spread: 'columns' | 'inline' | 'none';
  readonly below: 'sign' | 'spaced';
  readonly title: boolean;
  readonly layout: 'wide' | 'long' | 'sideways';
  readonly file: 'utf-8' | 'bom' | 'utf-16le' | 'pasted' | 'xlsx';
}

const OXIDES = ['SiO2', 'Al2O3', 'PbO', 'Fe2O3', 'MnO', 'CaO'];
const TRACES = ['Rb', 'Sr', 'Zn', 'Zr'];
const PRESENT = ['SiO2', 'PbO'];

const figure: fc.Arbitrary<Figure> = fc.record({
  steps: fc.integer({ min: 1, max: 1_200 }),
  decimals: fc.constantFrom(2, 3),
  state: fc.constantFrom('value', 'value', 'value', 'below', 'absent'),
  spread: fc.option(fc.integer({ min: 1, max: 40 }), { nil: null }),
});
const label = fc
  .string({ unit: fc.constantFrom(...'ABCxyz019-/.äδ'), minLength: 1, maxLength: 8 })
  .map((text) => `R ${text}`.trim());
const format: fc.Arbitrary<Format> = fc.record({
  analytes: fc
    .tuple(fc.subarray(OXIDES, { minLength: 2 }), fc.subarray(TRACES))
    .map(([oxides, traces]) => [
      ...[...new Set([...PRESENT, ...oxides])].map((name) => ({ name, unit: 'wt%' as const })),
      ...traces.map((name) => ({ name, unit: 'ppm' as const })),
    ]),
  decimal: fc.constantFrom('.', ','),
  delimiter: fc.constantFrom(';', '\t'),
  unitStyle: fc.constantFrom('brackets', 'row', 'plain'),
  spread: fc.constantFrom('columns', 'inline', 'none'),
  below: fc.constantFrom('sign', 'spaced'),
  title: fc.boolean(),
  layout: fc.constantFrom('wide', 'long', 'sideways'),
  file: fc.constantFrom('utf-8', 'bom', 'utf-16le', 'pasted', 'xlsx'),
});
const scenario = format.chain((f) =>
  fc.record({
    format: fc.constant(f),
    analyses: fc.uniqueArray(
      fc.record({
        label,
        part: fc.constantFrom('paint' as const, 'slip' as const, 'body' as const),
        figures: fc.tuple(...f.analytes.map(() => figure)),
      }),
      { minLength: 2, maxLength: 6, selector: (a) => a.label },
    ),
  }),
);

/** PbO and SiO2 are always there, so that no analysis and no column is empty. */
const stateOf = (f: Format, i: number, figures: readonly Figure[]) =>
  PRESENT.includes(f.analytes[i]!.name) ? 'value' : figures[i]!.state;

function write(f: Format, steps: number, decimals: number): string {
  return (steps / 10 ** decimals).toFixed(decimals).replace('.', f.decimal);
}

function cellOf(f: Format, i: number, figures: readonly Figure[]): string {
  const { steps, decimals, spread } = figures[i]!;
  const state = stateOf(f, i, figures);
  if (state === 'absent') return '';
  const text = write(f, steps, decimals);
  if (state === 'below') return f.below === 'sign' ? `<${text}` : `< ${text}`;
  return f.spread === 'inline' && spread !== null ? `${text} ± ${write(f, spread, decimals)}` : text;
}

function spreadOf(f: Format, i: number, figures: readonly Figure[]): string {
  const { spread, decimals } = figures[i]!;
  return spread === null || stateOf(f, i, figures) !== 'value' ? '' : write(f, spread, decimals);
}

function wideRows(f: Format, analyses: readonly Analysis[]): string[][] {
  const columns = f.spread === 'columns';
  const headed = (name: string, unit: string) =>
    f.unitStyle === 'brackets' || (f.unitStyle === 'plain' && unit === 'ppm') ? `${name} (${unit})` : name;
  const header = [
    'Sample',
    'Measured',
    ...f.analytes.flatMap((a) => [headed(a.name, a.unit), ...(columns ? [`± ${a.name}`] : [])]),
  ];
  const units = ['', '', ...f.analytes.flatMap((a) => [a.unit, ...(columns ? [a.unit] : [])])];
  const body = analyses.map((a) => [
    ...[a.label, a.part],
    ...f.analytes.flatMap((_, i) => [
      cellOf(f, i, a.figures),
      ...(columns ? [spreadOf(f, i, a.figures)] : []),
    ]),
  ]);
  return [header, ...(f.unitStyle === 'row' ? [units] : []), ...body];
}

function longRows(f: Format, analyses: readonly Analysis[]): string[][] {
  const header = ['Sample', 'Measured', 'Analyte', 'Value', 'Unit', 'Error'];
  const body = analyses.flatMap((a) =>
    f.analytes.map(({ name, unit }, i) => [
      a.label,
      a.part,
      name,
      cellOf(f, i, a.figures),
      unit,
      f.spread === 'columns' ? spreadOf(f, i, a.figures) : '',
    ]),
  );
  return [header, ...body];
}

function grid(f: Format, analyses: readonly Analysis[]): string[][] {
  const rows = f.layout === 'long' ? longRows(f, analyses) : wideRows(f, analyses);
  const laid = f.layout === 'sideways' ? rows[0]!.map((_, c) => rows.map((r) => r[c]!)) : rows;
  return f.title ? [['Invented analyses'], [''], ...laid] : laid;
}

async function open(f: Format, rows: string[][]): Promise<Table> {
  if (f.file === 'xlsx') {
    const cells: Cell[][] = rows.map((row) => row.map((c) => (/^\d+\.\d+$/.test(c) ? { value: c } : c)));
    return readTable(workbook({ sheets: [{ name: 'S', rows: cells }] }), { fileName: 'a.xlsx' });
  }
  const text = Papa.unparse(rows, { delimiter: f.delimiter, newline: '\r\n' });
  if (f.file === 'pasted') return readPasted(text);
  const bytes =
    f.file === 'utf-16le'
      ? Buffer.from(`\ufeff${text}`, 'utf16le')
      : Buffer.from(f.file === 'bom' ? `\ufeff${text}` : text);
  return readTable(new Uint8Array(bytes), { fileName: 'a.txt' });
}

function expected(f: Format, analyses: readonly Analysis[]) {
  return analyses.map(({ label, part, figures }) => ({
    label,
    part,
    values: f.analytes.flatMap(({ name, unit }, i) => {
      const { steps, decimals, spread } = figures[i]!;
      const state = stateOf(f, i, figures);
      const amount = Number((steps / 10 ** decimals).toFixed(decimals));
      if (state === 'absent') return [];
      const stated = state === 'value' && spread !== null && f.spread !== 'none';
      return [
        {
          ...{ analyte: name, unit, belowDetection: state === 'below' },
          value: state === 'below' ? null : amount,
          limit: state === 'below' ? amount : null,
          uncertainty: stated ? Number((spread / 10 ** decimals).toFixed(decimals)) : null,
          basis: stated ? 'unstated' : null,
        },
      ];
    }),
  }));
}

describe('analyses written in any supported form', () => {
  it('are read back as they were', async () => {
    await fc.assert(
      fc.asyncProperty(scenario, async ({ format: f, analyses }) => {
        const table = await open(f, grid(f, analyses));
        const p = await previewOf(table, { choices: { defaults: NO_DEFAULTS } });
        const errors = p.problems.filter((q) => q.severity === 'error').map((q) => q.message);
        expect(errors).toEqual([]);
        expect(p.understanding.choices.layout).toBe(f.layout);
        const found = p.analyses.map((a) => ({
          label: a.specimen,
          part: a.measured,
          values: a.values.map(({ resolution: _, ...rest }) => rest),
        }));
        expect(found).toEqual(expected(f, analyses));
      }),
      { numRuns: 2000 },
    );
  });

  it('lie sideways even where an analyte is named but measured nowhere', async () => {
    const table = await readPasted(
      'Sample\tT 1\tT 2\nMeasured\tpaint\tpaint\nSiO2\t0.5\t0.6\nPbO\t0.7\t0.8\nAl2O3\t\t',
    );
    const p = await previewOf(table, { choices: { defaults: NO_DEFAULTS } });
    expect(p.understanding.choices.layout).toBe('sideways');
    expect(p.analyses.map((a) => a.values.map((v) => v.analyte))).toEqual([
      ['SiO2', 'PbO'],
      ['SiO2', 'PbO'],
    ]);
  });

  it('in text, keep the step of their last digit', async () => {
    await fc.assert(
      fc.asyncProperty(scenario, async ({ format: f, analyses }) => {
        fc.pre(f.file !== 'xlsx');
        const p = await previewOf(await open(f, grid(f, analyses)), { choices: { defaults: NO_DEFAULTS } });
        p.analyses.forEach((a, k) => {
          const steps = analyses[k]!.figures.flatMap((g, i) => {
            const state = stateOf(f, i, analyses[k]!.figures);
            return state === 'absent' ? [] : [state === 'below' ? null : 10 ** -g.decimals];
          });
          expect(a.values.map((v) => v.resolution)).toEqual(steps);
        });
      }),
      { numRuns: 100 },
    );
  });

  it('any grid of rubbish is either refused as a whole or read without a throw', async () => {
    const cell = fc.oneof(
      fc.constantFrom(
        'SiO2',
        'PbO wt%',
        'Sample',
        '±',
        'LOD',
        '1,5',
        '2.5',
        '<1',
        'n.d.',
        '-',
        '',
        'x',
        '=A1',
        'Total',
        'Fe',
        'Fe2O3',
        '-3',
        '1e9',
        'ppm',
      ),
      fc.string({ unit: 'grapheme', maxLength: 6 }),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 9 }), async (rows) => {
        const text = Papa.unparse(rows, { delimiter: ';', quotes: true });
        const table = await readPasted(text).catch((error: Error) => error);
        if (table instanceof Error) {
          expect(table.name).toBe('RequirementError');
          return;
        }
        const p = await previewOf(table, {
          choices: { defaults: { ...NO_DEFAULTS, measured: 'body', specimen: 'X' } },
        });
        expect(p.importable).toBe(p.counts.errors === 0);
        for (const v of p.analyses.flatMap((a) => a.values)) {
          expect(v.belowDetection).toBe(v.value === null);
          expect(v.value ?? 0).toBeGreaterThanOrEqual(v.analyte === 'LOI' ? -100 : 0);
        }
      }),
      { numRuns: 200 },
    );
  });
});
