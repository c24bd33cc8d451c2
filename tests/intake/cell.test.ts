import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCell } from '../../api/intake/cell.ts';
import { readDate } from '../../api/intake/date.ts';
import { cleanText } from '../../api/intake/text.ts';

const kind = (text: string) => readCell(text, '.').kind;

describe('cells of a number column', () => {
  it.each(['', ' ', '\u00a0'])('%j is empty', (text) => expect(kind(text)).toBe('empty'));

  it.each(['n.a.', 'NA', 'n/a', 'NaN', 'not analysed', 'n.m.', 'null', 'n.b.'])(
    '%j was not measured',
    (text) => expect(kind(text)).toBe('notMeasured'),
  );

  it.each(['n.d.', 'nd', 'N.D.', 'n. d.'])('%j is left open', (text) => expect(kind(text)).toBe('nd'));

  it.each(['-', '–', '—', '\u2212', '--'])('%j is a dash', (text) => expect(kind(text)).toBe('dash'));

  it.each(['tr', 'tr.', 'Trace'])('%j is a trace', (text) => expect(kind(text)).toBe('trace'));

  it.each([
    'bdl',
    'b.d.l.',
    'BDL',
    '<LOD',
    '< LOD',
    '<dl',
    '< MDL',
    'b.d.',
    'below detection limit',
    'not detected',
    '<NWG',
    'n.n.',
  ])('%j is below detection, with the limit left open', (text) =>
    expect(readCell(text, '.')).toEqual({ kind: 'below', limit: null, unit: null }),
  );

  it.each([
    ['<0.01', '.', 0.01, null],
    ['< 0,01', ',', 0.01, null],
    ['≤0.5', '.', 0.5, null],
    ['&lt;5', '.', 5, null],
    ['< 5 ppm', '.', 5, 'ppm'],
    ['<1 000', '.', 1000, null],
  ] as const)('%j is below a limit', (text, decimal, limit, unit) => {
    expect(readCell(text, decimal)).toEqual({ kind: 'below', limit, unit });
  });

  it.each([
    ['12.3 ± 0.4', '.', { value: 12.3, uncertainty: 0.4, basis: 'unstated', resolution: 0.1 }],
    ['12,3±0,4', ',', { value: 12.3, uncertainty: 0.4, basis: 'unstated' }],
    ['12.3 +/- 0.4', '.', { value: 12.3, uncertainty: 0.4 }],
    ['12.3(4)', '.', { value: 12.3, uncertainty: 0.4, basis: '1σ' }],
    ['12.34(12)', '.', { value: 12.34, uncertainty: 0.12, basis: '1σ' }],
    ['350 ppm', '.', { value: 350, unit: 'ppm', uncertainty: null }],
    ['52.3 %', '.', { value: 52.3, unit: 'wt%' }],
  ] as const)('%j is a figure with what it carries', (text, decimal, found) => {
    expect(readCell(text, decimal)).toMatchObject({ kind: 'number', ...found });
  });

  it.each([
    'ca. 12',
    '12.3*',
    '>100',
    '12 ± 3 %',
    '12 ± x',
    '12 ± -1',
    '(0.3)',
    '#DIV/0!',
    '<0',
    '<-1',
    '< x',
    'lots',
    '12,3',
    '5 mol%',
  ])('%j is refused as text', (text) => expect(kind(text)).toBe('text'));

  it('no cell makes the reader throw or yield a figure that is not finite', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme' }),
        fc.constantFrom('.' as const, ',' as const),
        (text, decimal) => {
          const cell = readCell(text, decimal);
          if (cell.kind === 'number') expect(Number.isFinite(cell.value) && cell.resolution > 0).toBe(true);
          if (cell.kind === 'below' && cell.limit !== null) expect(cell.limit).toBeGreaterThan(0);
        },
      ),
      { numRuns: 2_000 },
    );
  });
});

describe('dates', () => {
  it.each([
    ['2024-05-31', 'dayFirst', '2024-05-31'],
    ['2024/5/3', 'dayFirst', '2024-05-03'],
    ['31.05.2024', 'monthFirst', '2024-05-31'],
    ['03/04/2024', 'dayFirst', '2024-04-03'],
    ['03/04/2024', 'monthFirst', '2024-03-04'],
    ['2024-02-30', 'dayFirst', null],
    ['2024', 'dayFirst', null],
    ['May 2024', 'dayFirst', null],
    ['3/4/24', 'dayFirst', null],
  ] as const)('%j, %s, is %j', (text, order, day) => {
    expect(readDate(text, order)).toBe(day);
  });
});

describe('names', () => {
  it('invisible characters go, accents are composed, blanks made one', () => {
    expect(cleanText('R-\u200b17\u202e \u0007a\u0308\n\u00a0b')).toEqual({
      text: 'R-17 ä b',
      stripped: true,
      suspicious: null,
    });
  });
  it.each([
    ['<script>alert(1)</script>', 'markup'],
    ['<b>R-1', 'markup'],
    ['=HYPERLINK("x")', 'formula'],
    ['@SUM(1)', 'formula'],
    ['+cmd|x', 'formula'],
    ['-2+3', null],
    ['R < 5 > 3', null],
    ['+3', null],
  ] as const)('%j is kept as text and marked as %j', (text, suspicious) => {
    expect(cleanText(text)).toEqual({ text, stripped: false, suspicious });
  });
});
