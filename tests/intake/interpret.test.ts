import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { previewOf } from '../../api/intake/preview.ts';
import { readTable } from '../../api/intake/read-table.ts';
import { NO_DEFAULTS, understand } from '../../api/intake/understand.ts';
import {
  BODY,
  codes,
  csv,
  errors,
  previewCsv,
  previewPasted,
  readAll,
  told,
  warnings,
} from './support/tables.ts';
import { type Cell, workbook } from './support/workbook.ts';

const xlsx = async (rows: Cell[][], formats: string[] = []) =>
  readTable(workbook({ sheets: [{ name: 'S', rows }], formats }), { fileName: 'a.xlsx' });

describe('an analysis keeps what its row says', () => {
  it('names, parts, laboratory, date, citation and note', async () => {
    const p = await previewCsv(
      'Sample,Ware,Spectrum,Measured,Method,Lab,Date,Source,DOI,Notes,Remark,SiO2,PbO\n' +
        'T-1,Black,3,paint,SEM-EDS,Invented,2024-05-31,Nobody 2024,https://doi.org/10.1515/pac-2019-0603,a,b,30.2,60.10\n',
    );
    expect(p.analyses).toEqual([
      {
        rows: [2],
        specimen: 'T-1',
        group: 'Black',
        kind: null,
        spot: '3',
        measured: 'paint',
        technique: 'SEM-EDS',
        laboratory: 'Invented',
        date: '2024-05-31',
        source: 'Nobody 2024',
        doi: '10.1515/pac-2019-0603',
        note: 'a; b',
        values: [
          {
            analyte: 'SiO2',
            value: 30.2,
            unit: 'wt%',
            uncertainty: null,
            basis: null,
            belowDetection: false,
            limit: null,
            resolution: 0.1,
          },
          {
            analyte: 'PbO',
            value: 60.1,
            unit: 'wt%',
            uncertainty: null,
            basis: null,
            belowDetection: false,
            limit: null,
            resolution: 0.01,
          },
        ],
      },
    ]);
  });

  it('what the file does not say comes from the defaults; what it says overrules them', async () => {
    const defaults = {
      ...NO_DEFAULTS,
      specimen: 'T-9',
      measured: 'paint' as const,
      laboratory: 'L',
      kind: 'replica' as const,
      date: '2024-01-02',
    };
    const p = await previewCsv('Spectrum,Lab,SiO2,PbO\n1,,30,60\n2,M,31,60\n', { defaults });
    expect(p.analyses.map((a) => [a.specimen, a.spot, a.laboratory, a.kind, a.measured, a.date])).toEqual([
      ['T-9', '1', 'L', 'replica', 'paint', '2024-01-02'],
      ['T-9', '2', 'M', 'replica', 'paint', '2024-01-02'],
    ]);
  });

  it('below detection, not measured and zero are kept apart', async () => {
    const p = await previewCsv(
      'Sample,SiO2,PbO,Cu ppm,Zn ppm,Sn ppm,Sr ppm,Rb ppm\nR-1,60,35,<10,bdl,,n.a.,0\n',
    );
    expect(told(p.analyses[0])).toEqual(['SiO2 60 wt%', 'PbO 35 wt%', 'Cu <10 ppm', 'Zn <? ppm', 'Rb 0 ppm']);
    expect(warnings(p)).toContain(
      'Row 2, column E (Zn ppm): a value below detection needs a detection limit to be used in log-ratios; none is given.',
    );
  });

  it.each([
    ['nd', 'n.d.', 'belowDetection', 'Cu <? ppm'],
    ['nd', 'n.d.', 'notMeasured', undefined],
    ['dash', '-', 'belowDetection', 'Cu <? ppm'],
    ['dash', '-', 'notMeasured', undefined],
  ] as const)('%s: %j may be settled as %s', async (choice, cell, meaning, value) => {
    const p = await previewCsv(`Sample,SiO2,PbO,Cu ppm\nR-1,60,35,${cell}\n`, { [choice]: meaning });
    expect(told(p.analyses[0])[2]).toBe(value);
  });

  it('a negative figure may be settled as a limit', async () => {
    const p = await previewCsv('Sample,SiO2,PbO,Cu ppm\nR-1,60,35,-10\n', { negative: 'limit' });
    expect(told(p.analyses[0])[2]).toBe('Cu <10 ppm');
  });

  it('a gain on ignition is a negative LOI and no error', async () => {
    const p = await previewCsv('Sample,SiO2,PbO,LOI\nR-1,60,40,-0.5\n');
    expect(p.importable).toBe(true);
    expect(told(p.analyses[0])).toContain('LOI -0.5 wt%');
  });

  it('inline uncertainties and units are read', async () => {
    const p = await previewCsv('Sample,SiO2,PbO,Cu ppm\nR-1,60.1 ± 0.4,35.20(15),0.12 %\n');
    expect(told(p.analyses[0])).toEqual([
      'SiO2 60.1 ± 0.4 (unstated) wt%',
      'PbO 35.2 ± 0.15 (1σ) wt%',
      'Cu 0.12 wt%',
    ]);
  });

  it.each([
    ['S2 err', 'unstated'],
    ['S2 ±', 'unstated'],
    ['S2 (1σ)', '1σ'],
    ['S2 2 sd', '2σ'],
    ['S2_err', 'unstated'],
  ])('a row “%s” below its specimen holds its uncertainties', async (name, basis) => {
    const p = await previewCsv(`Sample,SiO2,PbO\nS2,60,35\n${name},0.5,0.4\nS3,61,34\n`);
    expect(p.counts).toMatchObject({ analyses: 2, specimens: 2 });
    expect(told(p.analyses[0])).toEqual([`SiO2 60 ± 0.5 (${basis}) wt%`, `PbO 35 ± 0.4 (${basis}) wt%`]);
    expect(told(p.analyses[1])).toEqual(['SiO2 61 wt%', 'PbO 34 wt%']);
  });
  it('a sideways table with uncertainties beside each specimen gives no specimens of them', async () => {
    const p = await previewCsv(
      'Oxide,S1,S1 err,S2,S2 err\nSiO2,60,0.5,61,0.6\nPbO,35,0.4,34,0.3\nCaO,4,0.1,5,0.2\n',
    );
    expect(p.counts).toMatchObject({ analyses: 2, specimens: 2 });
    expect(told(p.analyses[1])[0]).toBe('SiO2 61 ± 0.6 (unstated) wt%');
  });
  it('uncertainties that stand apart from their specimen are left out, and said', async () => {
    const p = await previewCsv('Sample,SiO2,PbO\nS1,60,35\nS2,61,34\nS1 err,0.5,0.4\n');
    expect(p.counts.specimens).toBe(2);
    expect(p.problems.map(({ message }) => message).join(' ')).toContain(
      '“S1 err” names uncertainties of “S1”, which must stand in the next row after its analysis',
    );
  });
  it('names that only end like one are specimens', async () => {
    const p = await previewCsv('Sample,SiO2,PbO\nKerr,60,35\nASD,61,34\nM1s,60,35\n');
    expect(p.counts.specimens).toBe(3);
  });

  it('FeO beside Fe2O3 are two parts of the iron, and both are kept', async () => {
    const p = await previewCsv('Sample,SiO2,Fe2O3,FeO\nR-1,90,5,3.1\n');
    expect(p.importable).toBe(true);
    expect(p.analyses[0]!.values).toHaveLength(3);
  });

  it('in a workbook zeros at the end count as written where most of the column shows them', async () => {
    const table = await xlsx([
      ['Sample', 'SiO2'],
      ['R-1', 60.12],
      ['R-2', 61.35],
      ['R-3', 62],
      ['R-4', 60.5],
    ]);
    const p = await previewOf(table, { choices: BODY });
    expect(p.analyses.map((a) => a.values[0]!.resolution)).toEqual([0.01, 0.01, 0.01, 0.01]);
  });
});

describe('spots', () => {
  it('stay separate analyses of one specimen', async () => {
    const p = await previewCsv('Sample,Spot,SiO2,PbO\nR-1,a,60,38\nR-1,b,61,37\n');
    expect(p.counts).toMatchObject({ analyses: 2, specimens: 1, errors: 0 });
  });

  it('without a column of spots are numbered, with a warning', async () => {
    const p = await previewCsv('Sample,SiO2,PbO,CuO\nR-1,60,38,1\nR-1,61,37,1\nR-1,61,36,1\n');
    expect(p.analyses.map((a) => a.spot)).toEqual([null, '2', '3']);
    expect(warnings(p)).toContain(
      'Row 3: R-1, body is also in row 2; kept as spot 2, and averaged where compared.',
    );
  });

  it('given twice are an error, and so is a row that repeats another', async () => {
    expect(errors(await previewCsv('Sample,Spot,SiO2,PbO\nR-1,a,60,38\nR-1,a,61,37\n'))).toEqual([
      'Row 3: each spot of a specimen may be given once; R-1, body, spot a is also in row 2.',
    ]);
    expect(errors(await previewCsv('Sample,SiO2,PbO,CuO\nR-1,60,38,1\nR-2,60,38,1\nR-1,60,38,1\n'))).toEqual([
      'Row 4: each analysis may be given once; R-1, body has the same figures in row 2.',
    ]);
  });

  it('of paint and body, or by two laboratories, are different analyses', async () => {
    const p = await previewCsv(
      'Sample,Measured,Lab,SiO2,PbO\nR-1,paint,A,30,60\nR-1,body,A,60,38\nR-1,body,B,60,38\n',
    );
    expect(p.counts.analyses).toBe(3);
  });
});

describe('what is wrong is named by row, column and requirement', () => {
  it.each([
    [
      'text in a number cell',
      'R-1,about 60,38',
      'Row 2, column B (SiO2): a column of figures takes a figure, <0.01, <LOD, n.d., or nothing; found “about 60”.',
    ],
    [
      'a decimal comma among points',
      'R-1,"60,1",38.5',
      "Row 2, column B (SiO2): a column of figures takes a figure, <0.01, <LOD, n.d., or nothing; found “60,1”: the table's decimal mark is the point.",
    ],
    [
      'a negative',
      'R-1,60,-3.2',
      'Row 2, column C (PbO): an amount must be zero or more; found -3.2. If it means “below 3.2”, choose so for negative figures.',
    ],
    [
      'ppm under wt%',
      'R-1,60,3500',
      'Row 2, column C (PbO): wt% goes up to 100; found 3500: is the unit right, or is the column in ppm?',
    ],
    [
      'a total of 140',
      'R-1,80,60',
      'Row 2: an analysis may sum to 110 wt% at most (98–102 is usual); this one sums to 140.0: is a unit wrong, or an element counted twice?',
    ],
    [
      'no name',
      ',60,38',
      'Row 2, column A (Sample): every analysis needs the name of its specimen; this row has figures but no name. Name it, leave it out, or choose to fill down.',
    ],
    [
      'a cell too many',
      'R-1,60,38,5',
      'Row 2: a row must not reach past its headings; this one fills 4 cells under 3 headings: is a comma in a figure or name read as the end of a cell?',
    ],
    [
      'a limit beyond the unit',
      'R-1,60,<350',
      'Row 2, column C (PbO): wt% goes up to 100; the limit is 350: is the unit right?',
    ],
  ])('%s', async (_, row, message) => {
    const p = await previewCsv(`Sample,SiO2,PbO\n${row}\nR-2,60.5,38.25\n`);
    expect(errors(p)).toEqual([message]);
    expect(p).toMatchObject({ importable: false, counts: { errors: 1, analyses: 1 } });
  });

  it.each([
    [
      'Fe and Fe2O3 both given',
      'Sample,SiO2,Fe,Fe2O3\nR-1,60,5,7\n',
      'Row 2: an element may be given once, as itself or as its oxide; Fe and Fe2O3 are both given: leave one column out.',
    ],
    [
      'two headings the same',
      'Sample,SiO2,PbO,SiO2 (wt%)\nR-1,60,30,61\n',
      'Column D (SiO2 (wt%)): each analyte may have one column; SiO2 is also in column B: leave one of them out.',
    ],
    [
      'one iron written twice',
      'Sample,SiO2,FeO,Fe2O3\nR-1,60,8.998,10.00\n',
      'Row 2: FeO and Fe2O3 given together are two parts of the iron; FeO 8.998 and Fe2O3 10 are one iron written twice.',
    ],
    [
      'wt% and at% in one row',
      'Sample,SiO2 wt%,Pb at%\nR-1,60,30\n',
      'Row 2: an analysis needs one scale; Pb is in atom % and SiO2 in wt%.',
    ],
    [
      'atoms that sum to 140',
      'Sample,Si at%,Pb at%\nR-1,80,60\n',
      'Row 2: atom % sums to 100; this row sums to 140.0.',
    ],
    [
      'no analyte',
      'Sample,Colour\nR-1,red\n',
      'At least one column must hold an analyte, such as SiO2 or Pb; the headings are Sample, Colour.',
    ],
    [
      'headings only',
      'Sample,SiO2\n',
      'An import needs at least one row with a specimen and a figure below the headings; there is none to use.',
    ],
    [
      'rows without figures',
      'Sample,SiO2\nR-1,\nR-2,n.a.\n',
      'An import needs at least one row with a specimen and a figure below the headings; there is none to use.',
    ],
    [
      'an unknown part',
      'Sample,Measured,SiO2\nR-1,handle,60\n',
      'Row 2, column B (Measured): what was measured must be paint, slip, body, whole; found “handle”.',
    ],
    [
      'a bad uncertainty',
      'Sample,SiO2,± SiO2\nR-1,60,x\nR-2,60,-1\n',
      'Row 2, column C (± SiO2): an uncertainty or limit must be a figure or nothing; found “x”.',
    ],
  ])('%s', async (_, text, message) => {
    expect(errors(await previewCsv(text))[0]).toBe(message);
  });

  it('nothing is read before somebody says what was measured and which specimen it was', async () => {
    const p = await previewOf(await csv('SiO2,PbO\n60,38\n'));
    expect(errors(p)).toEqual([
      'One column must name the specimens, or one name must be given for all rows; there is neither.',
      'What was measured must be said: paint, slip, body or whole; neither a column nor a choice says it.',
    ]);
  });

  it('formula cells are refused by address; a total’s is only mentioned; saved results may be taken knowingly', async () => {
    const rows: Cell[][] = [
      ['Sample', 'SiO2', 'PbO', 'Total', 'Ratio'],
      [
        'R-1',
        { formula: 'X1*2', result: 60 },
        38,
        { formula: 'B2+C2', result: 98 },
        { formula: 'B2/C2', result: 1.6 },
      ],
    ];
    const refused = await previewOf(await xlsx(rows), { choices: BODY });
    expect(errors(refused)).toEqual([
      'Row 2, column B (SiO2): a cell must hold its value, not a formula; cell B2 holds a formula with the saved result “60”. ' +
        'Export values (copy, then paste values only), or choose to take saved results.',
    ]);
    const taken = await previewOf(await xlsx(rows), { choices: { ...BODY, formulas: 'takeResult' } });
    expect(taken.importable).toBe(true);
    expect(warnings(taken)).toContain(
      'Row 2, column D (Total): cell D2 holds a formula with the saved result “98”, which is taken as it is.',
    );
  });

  it('a formula without a saved result leaves nothing to take', async () => {
    const p = await previewOf(
      await xlsx([
        ['Sample', 'SiO2'],
        ['R-1', { formula: 'X1' }],
      ]),
      { choices: { ...BODY, formulas: 'takeResult' } },
    );
    expect(p.importable).toBe(false);
  });

  it('HTML and formulas in names are kept as text, invisible characters are not', async () => {
    const p = await previewCsv(
      'Sample,Ware,SiO2\n<img src=x onerror=alert(1)>,=1+2,60\nR\u200b-2,A\u202eB,61\n',
    );
    expect(p.analyses.map((a) => [a.specimen, a.group])).toEqual([
      ['<img src=x onerror=alert(1)>', '=1+2'],
      ['R-2', 'AB'],
    ]);
    expect(codes(p)).toEqual(expect.arrayContaining(['markup', 'formula', 'invisible']));
    expect(p.importable).toBe(true);
  });

  it('a low total is a warning that names the row: SRM 679 as oxides sums to 91.8', async () => {
    // NIST SRM 679 brick clay as oxides (Hein et al. 2002, doi 10.1039/b109603f, converted): ../shared/sources.md section 2.
    const p = await previewCsv(
      'Sample,Al2O3,Fe2O3,SiO2,K2O,MgO,CaO,TiO2,Na2O,MnO\nSRM 679,20.80,12.94,52.07,2.931,1.252,0.2278,0.963,0.176,0.223\n',
    );
    expect(p.importable).toBe(true);
    expect(warnings(p).join()).toContain('Row 2: The oxides sum to 91.58 wt% before closure: low');
  });

  it('NIST SRM 1412 sums to 99.49 and passes without a word', async () => {
    const p = await previewCsv(
      'Sample,SiO2,PbO,CdO,BaO,SrO,ZnO,CaO,K2O,Na2O,MgO,Al2O3,B2O3,Li2O,Fe2O3\n' +
        'SRM 1412,42.38,4.40,4.38,4.67,4.55,4.48,4.53,4.14,4.69,4.69,7.52,4.53,4.50,0.031\n',
    );
    expect(p.problems).toEqual([]);
  });

  it('a total of 30 is a warning; a printed total that disagrees is another', async () => {
    const p = await previewCsv('Sample,SiO2,PbO,Total\nR-1,20,10,98.2\n');
    expect(p.importable).toBe(true);
    expect(codes(p)).toEqual(['total-low', 'total-disagrees']);
  });

  it('an uncertainty that looks like a percentage is a warning at its place', async () => {
    const p = await previewCsv('Sample,SiO2,Al2O3,± Al2O3\nR-1,80,11.01,3.74\n');
    expect(warnings(p)).toContain(
      'Row 2, column C (Al2O3): an uncertainty is usually a small part of the value; 3.74 is 34 % of 11.01.',
    );
  });

  it('rows that are no analyses are left out and named', async () => {
    const p = await previewCsv(
      'Sample,SiO2,PbO\nR-1,60,38\nSample,SiO2,PbO\nR-2,61,37\nMean,60.5,37.5\n* total iron,,\n',
    );
    expect(p.counts.analyses).toBe(2);
    expect(warnings(p)).toEqual([
      'Row 3: this row repeats the headings and is left out.',
      'Row 5: “Mean” names a summary, no analysis; the row is left out unless you keep it.',
      'Row 6: a row needs a figure to be an analysis; “* total iron” has none and is left out.',
    ]);
    const kept = await previewCsv('Sample,SiO2,PbO\nMean,60.5,37.5\n', { keepRows: [2] });
    expect(kept.analyses[0]!.specimen).toBe('Mean');
  });

  it('short rows are a warning, a cell that spills over an error', async () => {
    const p = await previewCsv('Sample,SiO2,PbO\nR-1,98\n');
    expect(warnings(p)[0]).toContain('Row 2: a row has as many cells as the headings, 3; this one has 2');
    expect(errors(await previewCsv('Sample,SiO2,PbO\nR-1,60,1,38,2\n'))[0]).toContain(
      'fills 5 cells under 3 headings',
    );
  });

  it('vague dates and odd DOIs go into the note', async () => {
    const p = await previewCsv('Sample,Date,DOI,SiO2\nR-1,spring 2019,not a doi,60\n');
    expect(p.analyses[0]).toMatchObject({
      date: null,
      doi: null,
      note: 'Date as given: spring 2019; DOI as given: not a doi',
    });
    expect(codes(p)).toEqual(expect.arrayContaining(['date', 'doi']));
  });

  it('leaving out a row takes its errors away', async () => {
    const text = 'Sample,SiO2,PbO\nR-1,x,38\nR-2,60,38\n';
    expect((await previewCsv(text)).importable).toBe(false);
    const p = await previewCsv(text, { leaveOutRows: [2] });
    expect(p).toMatchObject({ importable: true, counts: { analyses: 1 } });
  });

  it('an empty name may be filled down', async () => {
    const p = await previewCsv('Sample,Spot,SiO2,PbO\nR-1,1,60,38\n,2,61,38\nR-2,1,62,36\n', {
      fillDown: true,
    });
    expect(p.analyses.map((a) => a.specimen)).toEqual(['R-1', 'R-1', 'R-2']);
  });

  it('the same fault on thousands of rows is listed twenty times and then counted', async () => {
    const p = await previewCsv(
      `Sample,SiO2\n${Array.from({ length: 3_000 }, (_, i) => `R-${i},x\n`).join('')}`,
    );
    expect(p.problems).toHaveLength(21);
    expect(p.problems.at(-1)!.message).toMatch(
      /^2980 more like “Row 2, column B \(SiO2\).*the last: Row 3001/,
    );
  });

  it('choices about columns that do not exist or do not fit are refused, not obeyed', async () => {
    const table = await csv('Sample,SiO2,±\nR-1,60,1\n');
    const { choices } = understand(table, null, BODY);
    const [sample, silica, spread] = choices.columns;
    const said = (columns: typeof choices.columns) =>
      readAll(table, { ...choices, columns }).problems.map((p) => p.code);
    expect(said([sample!, { ...silica!, analyte: 'Xx' }])).toContain('unknown-analyte');
    expect(said([sample!, { ...silica!, unit: null }])).toContain('no-unit');
    expect(said([sample!, silica!, { ...spread!, of: 0 }])).toContain('stray-statistic');
    expect(said([sample!, silica!, { ...silica!, index: 99 }])).toContain('no-column');
    expect(said([sample!, silica!, spread!, { ...spread!, index: 0 }])).toContain('same-statistic');
  });
});

describe('a published set of analyses', () => {
  // Tubb, Parker & Nickless 1980, Archaeometry 22:153–171: tests/fixtures/hsaur3/README.
  it('45 Romano-British sherds from five kilns are read figure by figure, without a hand laid on the file', async () => {
    const bytes = readFileSync(path.resolve(import.meta.dirname, '../fixtures/hsaur3/hsaur3_pottery.csv'));
    const p = await previewOf(await readTable(new Uint8Array(bytes), { fileName: 'p.csv' }), {
      choices: BODY,
      show: 45,
    });
    expect(p).toMatchObject({
      importable: true,
      counts: { analyses: 45, specimens: 45, values: 405, errors: 0 },
    });
    expect([...new Set(p.analyses.map((a) => a.group))]).toEqual(['1', '2', '3', '4', '5']);
    const lines = bytes.toString().trim().split(/\r?\n/).slice(1);
    expect(p.analyses.map((a) => a.values.map((v) => v.value))).toEqual(
      lines.map((l) => l.split(',').slice(1, 10).map(Number)),
    );
  });
});

describe('hostile text', () => {
  it.each([
    ['a cell', `Sample,SiO2\nR-1,${' '.repeat(300_000)}x${' '.repeat(300_000)}1\n`],
    ['a name', `Sample,SiO2\n"${'<a'.repeat(300_000)}",60\n`],
    ['a heading', `Sample,${'wt SiO2 '.repeat(60_000)},SiO2\nR-1,1,60\n`],
    ['a title', `${'mg/ '.repeat(100_000)},x\nSample,SiO2\nR-1,60\n`],
  ])('%s of half a megabyte neither stalls nor breaks the reader', async (_, text) => {
    const p = await previewCsv(text);
    expect(Math.max(...p.rows.flatMap((r) => r.cells.map((c) => c.length)))).toBeLessThanOrEqual(301);
    expect(p.problems.every((q) => q.message.length < 1_000)).toBe(true);
  });
});

describe('long tables', () => {
  const long = 'Specimen;Part;Oxide;Value;Unit;Error;LOD\n';

  it('bring the values of one specimen and part together, in whatever order', async () => {
    const p = await previewCsv(
      `${long}R-1;paint;SiO2;30.2;wt%;0.3;\nR-2;body;SiO2;62;wt%;;\nR-1;paint;PbO;60,1;wt%;;\nR-1;paint;Zn;bdl;mg/kg;;5\nR-1;body;SiO2;61;%;;\n`.replaceAll(
        ',',
        '.',
      ),
      { defaults: NO_DEFAULTS },
    );
    expect(p.understanding.choices.layout).toBe('long');
    expect(p.analyses.map((a) => [a.specimen, a.measured, ...told(a)])).toEqual([
      ['R-1', 'paint', 'SiO2 30.2 ± 0.3 (unstated) wt%', 'PbO 60.1 wt%', 'Zn <5 ppm'],
      ['R-2', 'body', 'SiO2 62 wt%'],
      ['R-1', 'body', 'SiO2 61 wt%'],
    ]);
    expect(p.analyses[0]!.rows).toEqual([2, 4, 5]);
  });

  it('as microanalysis exports them: element, weight %, sigma, atomic %; the specimen comes from the choices', async () => {
    const p = await previewPasted(
      'Element\tWeight%\tWeight% Sigma\tAtomic%\nSi\t14.1\t0.2\t25\nPb\t55.8\t0.5\t12\nTotal\t100\t\t\n',
      {
        defaults: { ...NO_DEFAULTS, specimen: 'T-1', measured: 'paint' },
      },
    );
    expect(told(p.analyses[0])).toEqual([
      'Si 14.1 ± 0.2 (1σ) wt%',
      'Pb 55.8 ± 0.5 (1σ) wt%',
      'Total 100 wt%',
    ]);
  });

  it.each([
    [
      'an unknown analyte',
      'R-1;paint;Quartz;30;wt%;;\n',
      'Row 2, column C (Oxide): an analyte must be an element, an oxide, LOI or Total; found “Quartz”.',
    ],
    [
      'an unknown unit',
      'R-1;paint;SiO2;30;mol%;;\n',
      'Row 2, column E (Unit): a unit must be wt%, ppm, ppb or at%; found “mol%”.',
    ],
    [
      'an analyte twice',
      'R-1;paint;SiO2;30;wt%;;\nR-1;paint;SiO2;31;wt%;;\n',
      'Row 3: each analyte may be given once for a spot; SiO2 of R-1 is given again: a column must tell its spots apart, or one row be left out.',
    ],
  ])('%s is refused', async (_, rows, message) => {
    expect(errors(await previewCsv(long + rows, { defaults: NO_DEFAULTS }))[0]).toBe(message);
  });
});

describe('tables with their analytes down the side', () => {
  const text =
    'Invented\t\t\t\nOxide\tUnit\tR-1\tR-2\nWare\t\tA\tB\nSiO2\twt%\t60.2\t61\nPbO\twt%\t35\t<0.05\nCu\tppm\t120\tx\n';

  it('are turned, units and groups included', async () => {
    const p = await previewPasted(text.replace('\tx\n', '\t90\n'));
    expect(p.understanding.choices.layout).toBe('sideways');
    expect(p.analyses.map((a) => [a.specimen, a.group, ...told(a)])).toEqual([
      ['R-1', 'A', 'SiO2 60.2 wt%', 'PbO 35 wt%', 'Cu 120 ppm'],
      ['R-2', 'B', 'SiO2 61 wt%', 'PbO <0.05 wt%', 'Cu 90 ppm'],
    ]);
  });

  it('name row and column as the file has them', async () => {
    const p = await previewPasted(text);
    expect(errors(p)).toEqual([
      'Row 6, column D (Cu ppm): a column of figures takes a figure, <0.01, <LOD, n.d., or nothing; found “x”.',
    ]);
    expect(p.problems.find((q) => q.severity === 'error')).toMatchObject({
      row: 6,
      column: { index: 3, letter: 'D' },
    });
    expect(p.understanding.columns[3]).toMatchObject({ letter: '4', analyte: 'SiO2' });
  });
});

describe('parts', () => {
  it('come a chunk at a time, count rows, and hold nothing back', async () => {
    const table = await csv(
      `Sample,SiO2\n${Array.from({ length: 2_345 }, (_, i) => `R-${i},60.${i}\n`).join('')}`,
    );
    const { interpret } = await import('../../api/intake/interpret.ts');
    const parts = [...interpret(table, understand(table, null, BODY).choices)];
    expect(Math.max(...parts.map((p) => p.analyses.length))).toBeLessThanOrEqual(501);
    expect(parts.flatMap((p) => p.analyses).map((a) => a.rows[0])).toEqual(
      Array.from({ length: 2_345 }, (_, i) => i + 2),
    );
    expect(parts.at(-1)).toMatchObject({ rowsRead: 2_346, rowCount: 2_346 });
  });
});
