import { describe, expect, it, vi } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
const CSV = [
  'Specimen,Ware group,Measured,Spot,SiO2 (wt%),PbO (wt%),CuO (wt%)',
  'A1,Red,paint,1,40.1,58.2,<0.05',
  'A1,Red,paint,2,41.3,57.0,0.11',
  'A2,Red,paint,1,39.0,59.5,0.20',
  'A3,Black,paint,1,45.0,53.1,1.20',
].join('\n');
const file = { name: 'sherds.csv', content: CSV };

describe('an import', () => {
  it('is previewed without storing anything', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const { status, body } = await api.preview(study, { file });
    expect(status).toBe(200);
    expect(body).toMatchObject({ kind: 'csv', fileName: 'sherds.csv', importable: true });
    expect(body.counts).toMatchObject({ analyses: 4, specimens: 3, belowDetection: 1, errors: 0 });
    expect(body.understanding.columns.map((column: { role: string }) => column.role)).toEqual([
      ...['specimen', 'group', 'measured', 'spot'],
      ...['analyte', 'analyte', 'analyte'],
    ]);
    expect((await api.get(`/api/studies/${study}`)).body.counts).toMatchObject({ specimens: 0, analyses: 0 });
    expect((await api.get(`/api/studies/${study}/imports`)).body).toEqual([]);
  });

  it('brings ware groups, specimens and analyses, each spot an analysis of its own', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const done = await api.bringIn(study, { file });
    expect(done).toMatchObject({ status: 'done', analyses: 4, specimens: 3, groups: 2, rowsRead: 5 });
    expect(done.outcome?.message).toBe('Brought in: 4 analyses, 3 new specimens.');
    const specimens = (await api.get(`/api/studies/${study}/specimens`)).body.rows;
    expect(specimens.map((one: { label: string; analyses: number }) => [one.label, one.analyses])).toEqual([
      ['A1', 2],
      ['A2', 1],
      ['A3', 1],
    ]);
    const spots = (await api.get(`/api/studies/${study}/analyses?specimen=${specimens[0].id}`)).body.rows;
    expect(spots.map((one: { spot: string; row: number }) => [one.spot, one.row])).toEqual([
      ['1', 2],
      ['2', 3],
    ]);
    expect(spots[0].reported).toContainEqual({
      ...{ analyte: 'CuO', value: null, unit: 'wt%', belowDetection: true, limit: 0.05 },
      ...{ uncertainty: null, basis: null, resolution: null },
    });
  });

  it('adds to specimens of the study, and gives a ware group to one that had none', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const made = await api.post(`/api/studies/${study}/specimens`, { label: 'A1' });
    const done = await api.bringIn(study, { file });
    expect(done).toMatchObject({ status: 'done', specimens: 2 });
    const read = await api.get(`/api/studies/${study}/specimens/${made.body.id}`);
    const groups = (await api.get(`/api/studies/${study}/groups`)).body;
    expect(read.body.group).toBe(groups.find((group: { name: string }) => group.name === 'Red').id);
    expect(read.body.analyses).toBe(2);
  });

  it('takes nothing when one row contradicts the study, and names the row', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const group = (await api.post(`/api/studies/${study}/groups`, { name: 'White' })).body.id;
    await api.post(`/api/studies/${study}/specimens`, { label: 'A3', group });
    const failed = await api.bringIn(study, { file });
    expect(failed.status).toBe('failed');
    expect(failed.outcome?.message).toContain(
      'Row 5: a specimen has one ware group; A3 is already in another than Black',
    );
    expect((await api.get(`/api/studies/${study}`)).body.counts).toMatchObject({
      groups: 1,
      specimens: 1,
      analyses: 0,
    });
  });

  it('remembers how columns were understood for the next file with the same headers', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const table = { name: 'a.csv', content: 'Sample,Kiln no,SiO2 (wt%),PbO (wt%)\nB1,x,40,59' };
    const { understanding } = (await api.preview(study, { file: table })).body;
    const columns = understanding.choices.columns.map((column: { index: number }) =>
      column.index === 1 ? { ...column, role: 'note' } : column,
    );
    const choices = {
      ...understanding.choices,
      columns,
      defaults: { ...understanding.choices.defaults, measured: 'slip' },
    };
    expect((await api.bringIn(study, { file: table, choices })).status).toBe('done');
    const next = { name: 'b.csv', content: 'Sample,Kiln no,SiO2 (wt%),PbO (wt%)\nB2,y,41,58' };
    const seen = (await api.preview(study, { file: next })).body;
    expect(seen.understanding.remembered).toBe(true);
    expect(seen.understanding.columns[1].role).toBe('note');
    expect(seen.analyses[0]).toMatchObject({ specimen: 'B2', measured: 'slip', note: 'y' });
    const elsewhere = (await api.preview(await api.newStudy(), { file: next })).body;
    expect(elsewhere.understanding.remembered).toBe(false);
  });

  it('warns when the same file comes a second time', async () => {
    const { api } = used;
    const study = await api.newStudy();
    await api.bringIn(study, { file });
    const codes = async () =>
      (await api.preview(study, { file })).body.problems.map((problem: { code: string }) => problem.code);
    expect(await codes()).toContain('twice');
    const [{ id }] = (await api.get(`/api/studies/${study}/imports`)).body;
    await api.delete(`/api/studies/${study}/imports/${id}`);
    expect(await codes()).not.toContain('twice');
  });

  it('can be taken back; what others built upon stays', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const done = await api.bringIn(study, { file });
    const [a1] = (await api.get(`/api/studies/${study}/specimens?search=A1`)).body.rows;
    const byHand = { specimen: a1.id, measured: 'body', reported: [{ analyte: 'SiO2', value: 60 }] };
    await api.post(`/api/studies/${study}/analyses`, byHand);
    expect((await api.delete(`/api/studies/${study}/imports/${done.id}`)).status).toBe(204);
    const left = (await api.get(`/api/studies/${study}/specimens`)).body.rows;
    expect(left.map((one: { label: string; analyses: number }) => [one.label, one.analyses])).toEqual([
      ['A1', 1],
    ]);
    const groups = (await api.get(`/api/studies/${study}/groups`)).body;
    expect(groups.map((group: { name: string }) => group.name)).toEqual(['Red']);
    const again = await api.bringIn(study, { file });
    expect(again).toMatchObject({ status: 'done', analyses: 4, specimens: 2 });
  });

  it('can be stopped on its way, leaving nothing', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const rows = Array.from({ length: 20_000 }, (_, i) => `S${i},paint,40,${(58 + (i % 7) / 10).toFixed(1)}`);
    const content = ['Specimen,Measured,SiO2 (wt%),PbO (wt%)', ...rows].join('\n');
    const started = await api.startImport(study, { file: { name: 'long.csv', content } });
    const refused = await api.startImport(study, { file });
    expect(refused).toMatchObject({ status: 409 });
    expect(refused.body.detail).toContain('one file at a time');
    const path = `/api/studies/${study}/imports/${started.body.id}`;
    await vi.waitUntil(async () => (await api.get(path)).body.rowsRead >= 500, { timeout: 30_000 });
    expect((await api.get(`/api/studies/${study}/specimens`)).body.total).toBe(0);
    expect((await api.delete(path)).status).toBe(204);
    expect((await api.get(path)).body.status).toBe('stopped');
    expect((await api.get(`/api/studies/${study}`)).body.counts).toMatchObject({ specimens: 0, analyses: 0 });
    expect((await api.bringIn(study, { file })).status).toBe('done');
  });

  it('keeps the name of a technique nobody knows in the laboratory’s words', async () => {
    const { api } = used;
    const study = await api.newStudy();
    const text =
      'Specimen\tMeasured\tTechnique\tPbO (wt%)\tSiO2 (wt%)\nA\tpaint\tSEM/EDX\t50\t49\nB\tpaint\tdivining\t50\t49';
    await api.bringIn(study, { text });
    const { rows } = (await api.get(`/api/studies/${study}/analyses`)).body;
    expect(rows[0].technique).toBe('SEM-EDS');
    expect(rows[1]).toMatchObject({ technique: 'other', instrument: 'Technique as written: divining' });
  });

  it('refuses choices that are not as the preview gave them, and names the place', async () => {
    const study = await used.api.newStudy();
    const refused = await used.api.preview(study, { file, choices: { decimal: ';' } });
    expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'choices.decimal' }] } });
  });

  it('needs a file or a text, not both and not neither', async () => {
    const study = await used.api.newStudy();
    for (const upload of [{}, { file, text: 'a' }]) {
      const refused = await used.api.preview(study, upload);
      expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'file' }] } });
    }
  });
});
