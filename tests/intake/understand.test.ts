import { describe, expect, it } from 'vitest';
import { readPasted } from '../../api/intake/read-table.ts';
import type { Understanding } from '../../api/intake/types.ts';
import { fingerprintOf, NO_DEFAULTS, rememberable, understand } from '../../api/intake/understand.ts';
import { csv, previewCsv, previewPasted, told } from './support/tables.ts';

const roles = ({ columns }: Understanding) =>
  columns.map((c) => [c.header, c.role, c.analyte, c.unit].filter((w) => w !== null).join(' '));
const doubts = ({ doubts }: Understanding) => doubts.map((d) => d.message).join('\n');

describe('where a table keeps what', () => {
  it('titles are skipped, and a unit they name holds for all headings without one', async () => {
    const u = understand(
      await csv('Invented analyses in mg/kg\nby nobody,,\n\nSample,Zn,PbO (wt%)\nR-1,120,3.1\nR-2,90,2.8\n'),
    );
    expect(u.choices).toMatchObject({
      headerRow: 4,
      unitsRow: null,
      firstRow: 5,
      layout: 'wide',
      decimal: '.',
    });
    expect(roles(u)).toEqual(['Sample specimen', 'Zn analyte Zn ppm', 'PbO (wt%) analyte PbO wt%']);
  });

  it('a row of units below the headings is used and is no analysis', async () => {
    const p = await previewCsv('Sample,SiO2,Pb,LOI\n,wt%,mg/kg,%\nR-1,62.1,350,4.5\n');
    expect(p.understanding.choices).toMatchObject({ headerRow: 1, unitsRow: 2, firstRow: 3 });
    expect(roles(p.understanding).slice(1)).toEqual([
      'SiO2 wt% analyte SiO2 wt%',
      'Pb mg/kg analyte Pb ppm',
      'LOI % loi wt%',
    ]);
    expect(told(p.analyses[0])).toEqual(['SiO2 62.1 wt%', 'Pb 350 ppm', 'LOI 4.5 wt%']);
  });

  it('a heading over two columns is told apart by the words below it', async () => {
    const p = await previewCsv('Sample,SiO2,,PbO,\n,wt%,2σ,wt%,2σ\nR-1,62.1,0.6,30.2,0.9\n');
    expect(told(p.analyses[0])).toEqual(['SiO2 62.1 ± 0.6 (2σ) wt%', 'PbO 30.2 ± 0.9 (2σ) wt%']);
  });

  it('blocks of weight and atomic per cent: the weights are used, the atoms left out with the reason', async () => {
    const p = await previewPasted(
      '\tWeight %\t\t\tAtomic %\t\t\nSample\tO\tSi\tPb\tO\tSi\tPb\nT-1\t30\t20\t50\t60\t30\t10\n',
    );
    expect(told(p.analyses[0])).toEqual(['O 30 wt%', 'Si 20 wt%', 'Pb 50 wt%']);
    expect(p.understanding.columns[5]!.why).toBe(
      'Si is also given by mass, in column C; atom % is left out.',
    );
  });

  it('atom % alone is kept as atom %', async () => {
    const p = await previewCsv('Sample,Si (at%),Pb (at%),O (at%)\nT-1,25,8,67\n');
    expect(told(p.analyses[0])).toEqual(['Si 25 at%', 'Pb 8 at%', 'O 67 at%']);
    expect(p.importable).toBe(true);
  });

  it.each([
    ['head', 'LOD,0.1,10\nR-1,62,350\nR-2,<LOD,bdl\n'],
    ['foot', 'R-1,62,350\nR-2,<LOD,bdl\nDetection limit,0.1,10\n'],
  ])('a row of detection limits at the %s gives each column its limit', async (_, rows) => {
    const p = await previewCsv(`Sample,SiO2,Pb ppm\n${rows}`);
    expect(p.analyses.map(told)).toEqual([
      ['SiO2 62 wt%', 'Pb 350 ppm'],
      ['SiO2 <0.1 wt%', 'Pb <10 ppm'],
    ]);
    expect(p.analyses[0]!.values.map((v) => v.limit)).toEqual([0.1, 10]);
  });

  it('a limit row far down a long file is found when it is named', async () => {
    const table = await csv(
      `Sample,Si wt%\n${Array.from({ length: 900 }, (_, i) => `R-${i},${i === 5 ? 'bdl' : 20}\n`).join('')}LIM,0.25\n${'Z,1\n'.repeat(50)}`,
    );
    const choices = { ...understand(table).choices, limitRows: [902] };
    const { planOf } = await import('../../api/intake/plan.ts');
    expect(planOf(table, choices).figures[0]!.rowLimit).toBe(0.25);
  });

  it('columns of uncertainty and limit find their analyte by name or by place', async () => {
    const p = await previewCsv(
      'Sample,SiO2,PbO,SD,± SiO2,LOD PbO,Cu ppm,%RSD\nR-1,62.1,30.2,0.9,0.6,0.05,200,5\nR-2,61,<LOD,,0.5,0.05,bdl,\n',
    );
    expect(p.analyses.map(told)).toEqual([
      ['SiO2 62.1 ± 0.6 (unstated) wt%', 'PbO 30.2 ± 0.9 (1σ) wt%', 'Cu 200 ± 10 (1σ) ppm'],
      ['SiO2 61 ± 0.5 (unstated) wt%', 'PbO <0.05 wt%', 'Cu <? ppm'],
    ]);
    expect(p.understanding.columns[4]!.why).toContain('It belongs to SiO2 in column B.');
  });

  it('an uncertainty in another unit than its value is converted', async () => {
    const p = await previewCsv('Sample,PbO wt%,PbO err (ppm),PbO LOD (ppm)\nR-1,1.25,120,50\n');
    expect(p.analyses[0]!.values[0]).toMatchObject({ value: 1.25, uncertainty: 0.012, limit: 0.005 });
  });

  it('rows of uncertainties below each analysis are joined to it', async () => {
    const p = await previewCsv('Sample,SiO2,PbO\nR-1,62.1,30.2\n± 2σ,0.6,0.9\nR-2,61,31\n±,0.5,\n');
    expect(p.analyses.map(told)).toEqual([
      ['SiO2 62.1 ± 0.6 (2σ) wt%', 'PbO 30.2 ± 0.9 (2σ) wt%'],
      ['SiO2 61 ± 0.5 (unstated) wt%', 'PbO 31 wt%'],
    ]);
    expect(p.analyses[0]!.rows).toEqual([2, 3]);
  });
});

describe('columns that are no figures', () => {
  it('each is recognised, in several languages, with a reason in words', async () => {
    const u = understand(
      await csv(
        'Probennummer;Warengruppe;Messpunkt;Schicht;Labor;Datum;Literatur;DOI;Bemerkung;SiO2 Gew.-%\nP-1;A;1;Engobe;L;31.05.2024;x;10.1515/pac-2019-0603;gut;52,1\n',
      ),
    );
    expect(u.columns.map((c) => c.role)).toEqual([
      ...['specimen', 'group', 'spot', 'measured', 'laboratory', 'date', 'source', 'doi', 'note', 'analyte'],
    ]);
    expect(u.choices.decimal).toBe(',');
    for (const c of u.columns) expect(c.why).toMatch(/^[A-Z“].*\.$/);
  });

  it('a better heading for specimens wins over a running number', async () => {
    const u = understand(await csv('No,Sample,Cat. no.,SiO2\n1,R-1,77,60\n'));
    expect(u.columns.map((c) => c.role)).toEqual(['ignore', 'specimen', 'ignore', 'analyte']);
    expect(u.columns[0]!.why).toBe('Column B (Sample) already holds the specimen.');
  });

  it('without a heading the first column of words names the specimens, in doubt', async () => {
    const u = understand(await csv(',SiO2,PbO\nR-1,30,60\nR-2,31,59\n'));
    expect(u.columns[0]).toMatchObject({ role: 'specimen', sure: false });
    expect(doubts(u)).toContain('No heading names the specimens');
  });

  it('“Type” and “Material” count by what stands in them', async () => {
    const u = understand(
      await csv('Sample,Type,Material,Zone,SiO2\nR-1,sherd,body,rim,60\nT-1,tile,paint,foot,30\n'),
    );
    expect(u.columns.map((c) => c.role)).toEqual(['specimen', 'kind', 'measured', 'ignore', 'analyte']);
  });

  it('an unknown column is left out and said to be', async () => {
    const u = understand(await csv('Sample,thickness mm,SiO2\nR-1,4,60\n'));
    expect(u.columns[1]).toMatchObject({ role: 'ignore', sure: false });
    expect(doubts(u)).toContain(
      'Column B (thickness mm): The heading is none of those known; the column is left out.',
    );
  });

  it('words under the heading of an element are no element', async () => {
    const u = understand(await csv('Sample,Co,SiO2\nR-1,Attica,60\nR-2,Boeotia,61\nR-3,Euboea,60\n'));
    expect(u.columns[1]).toMatchObject({ role: 'ignore', sure: false });
  });

  it('an oxide that does not exist is read, in doubt', async () => {
    const u = understand(await csv('Sample,NaO2,SiO2\nR-1,1,60\n'));
    expect(doubts(u)).toContain('NaO2 is not a usual oxide: is it mistyped?');
  });

  it('mole per cent and counts are left out, since no unit of ours holds them', async () => {
    const u = understand(await csv('Sample,SiO2 mol%,Pb cps,Al2O3\nR-1,60,1000,20\n'));
    expect(u.columns.map((c) => c.role)).toEqual(['specimen', 'ignore', 'ignore', 'analyte']);
    expect(u.columns[1]!.why).toContain('given in mol%, which is no mass fraction');
  });
});

describe('units that nobody states', () => {
  it('oxides are wt%; elements beyond 100 are ppm, all of them', async () => {
    const u = understand(await csv('Sample,SiO2,Rb,Sr\nR-1,60,80,310\nR-2,61,75,290\n'));
    expect(u.columns.slice(1).map((c) => c.unit)).toEqual(['wt%', 'ppm', 'ppm']);
    expect(doubts(u)).toContain('the elements reach 310, beyond 100 %');
  });

  it('elements beside oxides that already make up the whole are ppm', async () => {
    const u = understand(await csv('Sample,SiO2,Al2O3,CaO,Cu\nR-1,60,20,10,25\nR-2,61,21,9,31\n'));
    expect(u.columns[4]).toMatchObject({ unit: 'ppm', sure: false });
  });

  it('elements alone are wt%, in doubt', async () => {
    const u = understand(await csv('Sample,Si,Pb\nR-1,14,52\n'));
    expect(u.columns[1]).toMatchObject({ unit: 'wt%', sure: false });
    expect(doubts(u)).toContain('Check that it is not ppm');
  });
});

describe('what is left open', () => {
  it('n.d. means not detected, unless the file writes that otherwise', async () => {
    const alone = understand(await csv('Sample,SiO2,Pb ppm\nR-1,60,n.d.\n'));
    const beside = understand(await csv('Sample,SiO2,Pb ppm\nR-1,60,n.d.\nR-2,61,<10\n'));
    expect([alone.choices.nd, beside.choices.nd]).toEqual(['belowDetection', 'notMeasured']);
    expect(doubts(beside)).toContain('n.d. stands in one cell; it is read as “not determined”');
  });

  it('dashes, zeros, negatives, missing names and parts are asked about', async () => {
    const u = understand(await csv('SiO2,PbO\n-,0\n-0.1,3\n'));
    const said = doubts(u);
    for (const words of [
      'A dash stands',
      '0 stands in one cell',
      'Negative figures',
      'No column names the specimens',
      'what was measured',
    ])
      expect(said).toContain(words);
  });

  it('mixed decimal marks and figures that could be either are asked about', async () => {
    expect(
      doubts(understand(await readPasted('Sample\tSiO2\tPbO\nR-1\t36,7\t55.1\nR-2\t36,1\t55,2\n'))),
    ).toContain('the comma is taken');
    expect(doubts(understand(await readPasted('Sample\tZn ppm\nR-1\t1,234\n')))).toContain(
      'can be read two ways',
    );
  });

  it('dates that could be read two ways are asked about; one above 12 settles it', async () => {
    expect(doubts(understand(await csv('Sample,Date,SiO2\nR-1,03/04/2024,60\n')))).toContain(
      'Dates in column B',
    );
    const settled = understand(await csv('Sample,Date,SiO2\nR-1,03/24/2024,60\n'));
    expect(settled.choices.dateOrder).toBe('monthFirst');
    expect(doubts(settled)).not.toContain('Dates');
  });
});

describe('choices that are remembered', () => {
  it('the fingerprint sees headings, not case, blanks or empty columns at the end', () => {
    expect(fingerprintOf(['Sample', 'SiO2  (wt%)', '', ''])).toBe(fingerprintOf([' sample', 'sio₂ (wt%)']));
    expect(fingerprintOf(['Sample', 'SiO2'])).not.toBe(fingerprintOf(['SiO2', 'Sample']));
  });

  it('the next file with the same headings is read as the first was settled, wherever its headings stand', async () => {
    const first = understand(await csv('Sample,Zone,Pb\nR-1,x,3\n'));
    const columns = first.choices.columns.map((c) =>
      c.index === 1 ? { ...c, role: 'group' as const } : c.index === 2 ? { ...c, unit: 'ppm' as const } : c,
    );
    const kept = rememberable({
      ...first.choices,
      columns,
      nd: 'notMeasured',
      leaveOutRows: [2],
      defaults: { ...NO_DEFAULTS, measured: 'slip' },
    });
    expect(kept).not.toHaveProperty('leaveOutRows');
    const table = await csv('A title of two rows\n\nsample,ZONE,Pb\nR-9,y,4\n');
    const again = understand(table, kept);
    expect(again.fingerprint).toBe(first.fingerprint);
    expect(again).toMatchObject({
      remembered: true,
      choices: { headerRow: 3, firstRow: 4, nd: 'notMeasured', leaveOutRows: [] },
    });
    expect(again.choices.defaults.measured).toBe('slip');
    expect(again.columns[1]).toMatchObject({
      role: 'group',
      why: 'As chosen for an earlier file with the same headings.',
    });
  });

  it('what is chosen by hand overrules all else, a row of headings included', async () => {
    const table = await csv('Sample,SiO2\nSherd,Al2O3\nR-1,20\n');
    const u = understand(table, null, { headerRow: 2 });
    expect(roles(u)).toEqual(['Sherd specimen', 'Al2O3 analyte Al2O3 wt%']);
    const chosen = understand(table, null, {
      columns: [{ ...u.choices.columns[1]!, analyte: 'Al', unit: 'ppm' }],
    });
    expect(chosen.columns[1]).toMatchObject({
      analyte: 'Al',
      unit: 'ppm',
      why: 'As chosen by hand.',
      sure: true,
    });
  });

  it('choices survive JSON', async () => {
    const { choices } = understand(await csv('Sample,SiO2,±\nR-1,20,1\n'));
    expect(JSON.parse(JSON.stringify(choices))).toEqual(choices);
  });
});
