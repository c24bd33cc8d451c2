import { describe, expect, it } from 'vitest';
import { type Cell, workbook } from '../intake/support/workbook.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
type Content = string | Uint8Array<ArrayBuffer>;
const PNG = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]);
const sheet = (rows: readonly (readonly Cell[])[], more: Record<string, string> = {}): Content =>
  new Uint8Array(workbook({ sheets: [{ name: 'S', rows }], more }));
const HEAD = 'Specimen,Measured,SiO2 (wt%),PbO (wt%)';
const good = 'A0,paint,41,57';
const row = (line: string) => `${HEAD}\n${good}\n${line}\n`;

/** Files that are opened, understood, and refused for what their rows say. */
const rows: [string, string, Content, string][] = [
  [
    'a wrong unit',
    'a.csv',
    row('A1,paint,400000,580000'),
    'Row 3, column C (SiO2 (wt%)): wt% goes up to 100',
  ],
  ['words in a number cell', 'a.csv', row('A1,paint,about 40,58'), 'Row 3, column C (SiO2 (wt%))'],
  [
    'a negative amount',
    'a.csv',
    row('A1,paint,-4,58'),
    'Row 3, column C (SiO2 (wt%)): an amount must be zero or more',
  ],
  ['a total of 140', 'a.csv', row('A1,paint,80,60'), 'Row 3: an analysis may sum to 110 wt% at most'],
  [
    'Fe and Fe2O3 both',
    'a.csv',
    'Specimen,Measured,SiO2,Fe,Fe2O3\nA1,paint,60,5,7\n',
    'Row 2: an element may be given once, as itself or as its oxide; Fe and Fe2O3 are both given',
  ],
  [
    'two headers the same',
    'a.csv',
    'Specimen,Measured,SiO2,PbO,SiO2\nA1,paint,40,50,41\n',
    'Column E (SiO2): each analyte may have one column',
  ],
  ['no usable row', 'a.csv', `${HEAD}\n`, 'needs at least one row with a specimen and a figure'],
  [
    'a formula cell',
    'a.xlsx',
    sheet([
      ['Specimen', 'Measured', 'SiO2'],
      ['A1', 'paint', { formula: 'B1*2', result: 40 }],
    ]),
    'C2',
  ],
];
/** Files that are not opened at all. */
const files: [string, string, Content, string][] = [
  ['a renamed picture', 'sherds.xlsx', PNG, 'PNG'],
  ['an empty file', 'a.csv', '', 'this file is empty'],
  [
    'a macro workbook',
    'a.xlsm',
    sheet([['Specimen', 'SiO2']], { 'xl/vbaProject.bin': 'x' }),
    'carries a program',
  ],
  [
    'a workbook that unpacks far beyond its size',
    'a.xlsx',
    sheet([['Specimen', 'SiO2']], { 'xl/media/a.xml': ' '.repeat(20 * 1024 * 1024) }),
    'at most 200 times',
  ],
  [
    '5,000 columns',
    'a.csv',
    `Specimen,${Array.from({ length: 4_999 }, (_, i) => `c${i}`).join(',')}\nA1,1\n`,
    'at most 1,000 columns',
  ],
];

describe('a file that cannot be taken', () => {
  it.each(rows)(
    '%s: the preview names place and requirement, the import fails, the study is as it was',
    async (_, name, content, words) => {
      const { api } = used;
      const study = await api.newStudy();
      const before = (await api.get(`/api/studies/${study}`)).body;
      const seen = await api.preview(study, { file: { name, content } });
      expect(seen.status).toBe(200);
      expect(seen.body.importable).toBe(false);
      const errors = seen.body.problems.filter((one: { severity: string }) => one.severity === 'error');
      expect(errors[0].message).toContain(words);
      const failed = await api.bringIn(study, { file: { name, content } });
      expect(failed.status).toBe('failed');
      expect(failed.outcome?.message).toContain(words);
      expect((await api.get(`/api/studies/${study}`)).body).toEqual(before);
    },
  );

  it.each(files)(
    '%s: the preview is refused with the requirement, the import fails with the same',
    async (_, name, content, words) => {
      const { api } = used;
      const study = await api.newStudy();
      const refused = await api.preview(study, { file: { name, content } });
      expect(refused.status).toBe(422);
      expect(refused.headers.get('content-type')).toContain('application/problem+json');
      expect(refused.body.detail).toContain(words);
      const failed = await api.bringIn(study, { file: { name, content } });
      expect(failed).toMatchObject({ status: 'failed', analyses: 0 });
      expect(failed.outcome?.message).toContain(words);
      expect((await api.get(`/api/studies/${study}`)).body.counts).toMatchObject({
        specimens: 0,
        analyses: 0,
      });
    },
  );

  it('a file of 60 MB is refused with the limit and its size', async () => {
    const study = await used.api.newStudy();
    const file = { name: 'big.csv', content: new Uint8Array(60 * 1024 * 1024).fill(0x41) };
    for (const send of [used.api.preview, used.api.startImport]) {
      const refused = await send(study, { file });
      expect(refused.status).toBe(413);
      expect(refused.body.detail).toMatch(/a file must have at most 50 MB/);
    }
  });

  it('a total of 30 is taken with a warning that names the row', async () => {
    const study = await used.api.newStudy();
    const done = await used.api.bringIn(study, { file: { name: 'a.csv', content: row('A1,paint,20,10') } });
    expect(done.status).toBe('done');
    expect(done.outcome?.problems).toContainEqual(
      expect.objectContaining({ severity: 'warning', row: 3, message: expect.stringContaining('30') }),
    );
  });
});

describe('names that are HTML or formulas', () => {
  it('are kept as text, and leave as CSV that no spreadsheet runs', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const names = ['<script>alert(1)</script>', '=HYPERLINK("http://x","y")', '@SUM(A1)'];
    const lines = names.map((name, i) => `"${name.replaceAll('"', '""')}",paint,4${i},57`);
    const done = await api.bringIn(study, {
      file: { name: 'a.csv', content: `${HEAD}\n${lines.join('\n')}\n` },
    });
    expect(done.status).toBe('done');
    const { rows: kept } = (await api.get(`/api/studies/${study}/specimens`)).body;
    expect(kept.map((one: { label: string }) => one.label).toSorted()).toEqual(names.toSorted());
    const { text } = await api.get(`/api/studies/${study}/analyses.csv`);
    expect(text).toContain(`"'=HYPERLINK(""http://x"",""y"")"`);
    expect(text).toContain(`"'@SUM(A1)"`);
    expect(text).not.toMatch(/(^|[,\n])"?[=@]/);
  });
});
