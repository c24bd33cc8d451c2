import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { previewOf } from '../../api/intake/preview.ts';
import { readTable } from '../../api/intake/read-table.ts';
import type { ReadOptions } from '../../api/intake/types.ts';
import { formatOf, numberText, plainDecimal } from '../../api/intake/workbook/cell-text.ts';
import { told } from './support/tables.ts';
import { type Cell, workbook, zip } from './support/workbook.ts';

vi.setConfig({ testTimeout: 60_000 });

const open = (bytes: Uint8Array, options: Partial<ReadOptions> = {}) =>
  readTable(bytes, { fileName: 'a.xlsx', ...options });
const sheet = (rows: Cell[][]) => workbook({ sheets: [{ name: 'S', rows }] });

describe('a workbook written by another program', () => {
  // tests/fixtures/intake/independent.xlsx: openpyxl 3.0.9, made by scripts/reference/intake-workbook.py; invented data.
  const bytes = new Uint8Array(
    readFileSync(path.resolve(import.meta.dirname, '../fixtures/intake/independent.xlsx')),
  );

  it('is read cell by cell: shared strings, formats, dates, percentages, formulas', async () => {
    const table = await open(bytes);
    expect(table).toMatchObject({
      kind: 'xlsx',
      sheets: ['Paint', 'Hidden', 'Body'],
      sheet: 'Paint',
      rowCount: 6,
    });
    expect(table.head[3]!.cells).toEqual([
      'T-1 “ä”',
      'paint',
      '2024-05-31',
      '36.70',
      '55.30',
      '<0.05',
      '1200',
      '50.0%',
      '',
    ]);
    expect(table.head[3]!.formulas).toEqual([8]);
    expect(table.head[4]!.cells.slice(2, 8)).toEqual([
      '2024-06-01',
      '30.00',
      '60.25',
      '1.50',
      'n.d.',
      '25.0%',
    ]);
    expect(table.head[5]!.cells.slice(0, 5)).toEqual([
      'T-3 & <b>',
      'paint',
      '2024-06-02',
      '33.123456',
      '58.50',
    ]);
  });

  it('becomes analyses: a row of units, a total by formula, and a column of no use', async () => {
    const p = await previewOf(await open(bytes));
    expect(p.importable).toBe(true);
    expect(p.analyses.map((a) => [a.specimen, a.measured, a.date, ...told(a)])).toEqual([
      ['T-1 “ä”', 'paint', '2024-05-31', 'SiO2 36.7 wt%', 'PbO 55.3 wt%', 'Fe2O3 <0.05 wt%', 'Cu 1200 ppm'],
      ['T-2', 'paint', '2024-06-01', 'SiO2 30 wt%', 'PbO 60.25 wt%', 'Fe2O3 1.5 wt%'],
      [
        'T-3 & <b>',
        'paint',
        '2024-06-02',
        'SiO2 33.123456 wt%',
        'PbO 58.5 wt%',
        'Fe2O3 0.7 wt%',
        'Cu 900 ppm',
      ],
    ]);
  });

  it('opens the sheet that is asked for, and names them all when it is not there', async () => {
    expect((await open(bytes, { sheet: 'Body' })).head[1]!.cells).toEqual(['R-1', '60.1', '18.2']);
    await expect(open(bytes, { sheet: 'Soil' })).rejects.toThrow(
      "one of the workbook's (Paint, Hidden, Body); found Soil",
    );
  });
});

describe('cells of a workbook', () => {
  it('an empty sheet is refused, and the others are named', async () => {
    const bytes = workbook({
      sheets: [
        { name: 'A', rows: [] },
        { name: 'B', rows: [['x']] },
      ],
    });
    await expect(open(bytes)).rejects.toThrow('every cell of sheet A is empty; the workbook also has B');
  });

  it('the noise of binary fractions goes, no stored digit does, and zeros that the format shows return', () => {
    const two = formatOf(2, undefined);
    expect(numberText('36.700000000000003', two, false)).toBe('36.70');
    expect(numberText('36.704999', two, false)).toBe('36.704999');
    expect(numberText('36.700000000000003', formatOf(0, undefined), false)).toBe('36.7');
    expect(numberText('1.2E-5', formatOf(0, undefined), false)).toBe('0.000012');
    expect(numberText('0.12340000000000001', formatOf(10, undefined), false)).toBe('12.34%');
    expect(numberText('12', formatOf(200, '#,##0.000 "wt"'), false)).toBe('12.000');
    expect(numberText('12', formatOf(200, '[Red]0.0;-0.0'), false)).toBe('12.0');
    expect(numberText('5', formatOf(200, '@'), false)).toBe('5');
  });

  it('dates count from 1900 with its missing leap day, or from 1904', () => {
    const date = formatOf(14, undefined);
    expect([
      numberText('45443', date, false),
      numberText('59', date, false),
      numberText('61', date, false),
    ]).toEqual([...['2024-05-31', '1900-02-28', '1900-03-01']]);
    expect(numberText('43981', date, true)).toBe('2024-05-31');
    expect(numberText('45443.5', formatOf(200, 'dd.mm.yyyy hh:mm'), false)).toBe('2024-05-31');
  });

  it('numbers are written without exponent', () => {
    expect([1e21, 1.5e-7, -2.5e-8, 123, 0.1].map(plainDecimal)).toEqual([
      '1000000000000000000000',
      '0.00000015',
      '-0.000000025',
      '123',
      '0.1',
    ]);
  });

  it('rows keep their own numbers, gaps stay gaps, and rich text is joined', async () => {
    const more = {
      'xl/worksheets/sheet1.xml':
        '<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData>' +
        '<x:row r="3"><x:c r="B3" t="inlineStr"><x:is><x:r><x:t>Si</x:t></x:r><x:r><x:t>O2</x:t></x:r><x:rPh><x:t>no</x:t></x:rPh></x:is></x:c></x:row>' +
        '<x:row r="9"><x:c r="A9" t="b"><x:v>1</x:v></x:c><x:c r="C9" t="e"><x:v>#DIV/0!</x:v></x:c><x:c r="AA9"><x:v>7</x:v></x:c></x:row>' +
        '</x:sheetData></x:worksheet>',
    };
    const table = await open(workbook({ sheets: [{ name: 'S', rows: [] }], more }));
    expect(table.head.map((r) => [r.number, r.cells.slice(0, 3)])).toEqual([
      [3, ['', 'SiO2']],
      [9, ['TRUE', '', '#DIV/0!']],
    ]);
    expect(table.columnCount).toBe(27);
  });

  it('formula cells are marked and keep their saved result', async () => {
    const table = await open(
      sheet([
        ['Sample', 'Si'],
        ['R-1', { formula: 'A1*2', result: 4.5 }],
        [{ formula: 'A9' }, 1],
      ]),
    );
    expect(table.head[1]).toEqual({ number: 2, cells: ['R-1', '4.5'], formulas: [1] });
    expect(table.head[2]).toEqual({ number: 3, cells: ['', '1'], formulas: [0] });
  });

  it('hidden sheets are passed over, hidden rows and columns are mentioned', async () => {
    const bytes = workbook({
      sheets: [
        { name: 'H', rows: [['hidden']], state: 'veryHidden' },
        { name: 'V', rows: [['Sample'], ['R-1']], head: '<cols><col min="1" max="1" hidden="1"/></cols>' },
      ],
    });
    const table = await open(bytes);
    expect(table.sheet).toBe('V');
    expect(table.warnings.map((w) => w.message)).toEqual([
      'Sheet V hides rows or columns; they are read like the others.',
    ]);
  });

  it('control characters in names cannot split a cell or a row', async () => {
    const table = await open(
      sheet([
        ['a&#x1f;b', 'c'],
        ['d', 'e'],
      ]),
    );
    expect(table.head).toHaveLength(2);
    expect(table.head[1]!.cells).toEqual(['d', 'e']);
  });
});

describe('workbooks that are refused', () => {
  const good = { sheets: [{ name: 'S', rows: [['Sample', 'SiO2'] as Cell[]] }] };
  it.each([
    ['a program', workbook({ ...good, more: { 'xl/vbaProject.bin': 'x' } }), 'this one carries a program'],
    [
      'a macro sheet',
      workbook({ ...good, more: { 'xl/macrosheets/sheet1.xml': '<a/>' } }),
      'this one carries a program',
    ],
    ['a binary workbook', zip({ 'xl/workbook.bin': 'x' }), 'of the binary kind (.xlsb)'],
    [
      'an OpenDocument file',
      zip({ mimetype: 'application/vnd', 'content.xml': '<a/>' }),
      'an OpenDocument file (.ods',
    ],
    ['a text document', zip({ 'word/document.xml': '<a/>' }), 'a text document (.docx)'],
    ['a presentation', zip({ 'ppt/presentation.xml': '<a/>' }), 'a presentation (.pptx)'],
    [
      'any other archive',
      zip({ 'a.csv': 'Sample,SiO2' }),
      'a ZIP archive without a workbook: unpack it first',
    ],
    ['no sheets', workbook({ sheets: [] }), 'at least one sheet'],
    [
      'too many parts',
      zip(Object.fromEntries(Array.from({ length: 1_001 }, (_, i) => [`${i}`, 'x']))),
      'at most 1000 parts',
    ],
    [
      'broken XML',
      workbook({ ...good, more: { 'xl/worksheets/sheet1.xml': '<worksheet><row>' } }),
      'well-formed XML',
    ],
    [
      'entities of its own',
      workbook({
        ...good,
        more: { 'xl/worksheets/sheet1.xml': '<!DOCTYPE a [<!ENTITY b "c">]><worksheet>&b;</worksheet>' },
      }),
      'it brings a document type of its own',
    ],
    [
      'rows out of order',
      workbook({
        ...good,
        more: { 'xl/worksheets/sheet1.xml': '<worksheet><row r="2"/><row r="1"/></worksheet>' },
      }),
      'numbered upwards',
    ],
    [
      '5,000 columns',
      sheet([['Sample', ...Array.from({ length: 4_999 }, () => 'SiO2')]]),
      'at most 1,000 columns',
    ],
  ])('%s', async (_, bytes, words) => {
    await expect(open(bytes)).rejects.toThrow(words);
  });

  it('a workbook that unpacks to gigabytes is refused by its listing, before anything is unpacked', async () => {
    const bytes = workbook(good);
    const grown = tamper(bytes, 'xl/worksheets/sheet1.xml', (view, at) =>
      view.setUint32(at + 24, 3_000_000_000, true),
    );
    await expect(open(grown)).rejects.toThrow(/unpack to at most 200 MB; this one unpacks to 2,861 MB/);
  });

  it('a part that shrinks more than 200 times is refused', async () => {
    const bytes = workbook({ ...good, more: { 'xl/media/a.xml': ' '.repeat(20 * 1024 * 1024) } });
    await expect(open(bytes)).rejects.toThrow(
      /at most 200 times when unpacked; xl\/media\/a.xml grows \d+ times/,
    );
  });

  it('a listing that lies about a size is caught while unpacking', async () => {
    const rows = Array.from({ length: 2_000 }, (_, i) => [`R-${i}`, i] as Cell[]);
    const bytes = sheet([['Sample', 'SiO2'], ...rows]);
    const lying = tamper(bytes, 'xl/worksheets/sheet1.xml', (view, at) => view.setUint32(at + 24, 500, true));
    await expect(open(lying)).rejects.toThrow('must be an intact ZIP archive');
  });

  it('an encrypted part and a truncated archive are refused', async () => {
    const bytes = workbook(good);
    const locked = tamper(bytes, 'xl/workbook.xml', (view, at) => view.setUint16(at + 8, 1, true));
    await expect(open(locked)).rejects.toThrow('without a password');
    await expect(open(bytes.slice(0, bytes.length - 30))).rejects.toThrow('must be an intact ZIP archive');
  });
});

/** Changes the central directory's record of one entry (PKWARE APPNOTE 4.3.12: sizes at 24, flags at 8, name at 46). */
function tamper(bytes: Uint8Array, name: string, change: (view: DataView, at: number) => void): Uint8Array {
  const copy = Uint8Array.from(bytes);
  const view = new DataView(copy.buffer);
  for (let at = 0; at < copy.length - 46; at++) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    const length = view.getUint16(at + 28, true);
    if (Buffer.from(copy.subarray(at + 46, at + 46 + length)).toString() === name) change(view, at);
  }
  return copy;
}
