import { beforeAll, describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
let group: string;
const ask = (request: object) => used.api.post(`/api/studies/${study}/comparison`, request);
const request = (more: object = {}) => ({ settings: { groups: [group] }, measured: 'paint', ...more });

const sherd = (i: number) => `R-${i},Red,sherd,paint,1,${40 + (i % 5)},${55 - (i % 4)},${3 + (i % 3) / 2}`;
const TABLE = [
  'Specimen,Ware group,Kind,Measured,Spot,SiO2 (wt%),PbO (wt%),Fe2O3 (wt%)',
  ...Array.from({ length: 12 }, (_, i) => sherd(i + 1)),
  'Tile 1,,replica,paint,1,50,46,2.1',
  'Tile 1,,replica,paint,2,54,42,2.3',
  'Tile 2,,replica,paint,1,41,54,3.2',
  'Tile 3,,replica,slip,1,60,10,8',
].join('\n');

beforeAll(async () => {
  study = await used.api.newStudy();
  const done = await used.api.bringIn(study, { file: { name: 't.csv', content: TABLE } });
  expect(done.outcome?.problems.filter((one) => one.severity === 'error')).toEqual([]);
  expect(done.status).toBe('done');
  group = (await used.api.get(`/api/studies/${study}/groups`)).body[0].id;
});

describe('a comparison', () => {
  it('places every replica so measured, its spots averaged, with a sentence', async () => {
    const { status, body } = await ask(request());
    expect(status).toBe(200);
    expect(body.placements.map((placed: { label: string }) => placed.label)).toEqual(['Tile 1', 'Tile 2']);
    expect(body.placements[0].spots).toBe(2);
    // The mean of two spots closed to 100: lead oxide (46/98.1 + 42/98.3)/2 of the whole.
    const lead = body.replicas[0].amounts.PbO.value;
    expect(lead).toBeCloseTo((100 * (46 / 98.1 + 42 / 98.3)) / 2, 2);
    expect(body.placements[0].sentence).toMatch(/^Tile 1 /);
    expect(body.groups).toEqual([{ id: group, name: 'Red', position: 0, specimens: 12, used: 12 }]);
  });

  it('places only those asked for, and a sherd of the group against the others of it', async () => {
    const { rows } = (await used.api.get(`/api/studies/${study}/specimens?search=R-3`)).body;
    const { body } = await ask(request({ replicas: [rows[0].id] }));
    expect(body.placements).toHaveLength(1);
    expect(body.placements[0].groups[0]).toMatchObject({ leaveOneOut: true, n: 11 });
  });

  it('leaves out by hand what it is told to, with the reason', async () => {
    const { rows } = (await used.api.get(`/api/studies/${study}/specimens?search=R-3`)).body;
    const { body } = await ask(request({ leaveOut: [{ specimen: rows[0].id, reason: 'burnt' }] }));
    expect(body.model.members).toHaveLength(11);
    expect(body.excluded).toContainEqual(
      expect.objectContaining({ label: 'R-3', reason: 'left out by hand: burnt' }),
    );
  });

  it('excludes an analysis that cannot be normalised and says why, and goes on', async () => {
    const { api } = used;
    const added = await api.post(`/api/studies/${study}/specimens`, { label: 'R-bad', group });
    const values = [
      { analyte: 'SiO2', belowDetection: true },
      { analyte: 'PbO', belowDetection: true },
    ];
    await api.post(`/api/studies/${study}/analyses`, {
      specimen: added.body.id,
      measured: 'paint',
      reported: values,
    });
    const { status, body } = await ask(request());
    await api.delete(`/api/studies/${study}/specimens/${added.body.id}`);
    expect(status).toBe(200);
    expect(body.excluded).toEqual([
      expect.objectContaining({ label: 'R-bad', reason: expect.stringContaining('above detection') }),
    ]);
    expect(body.model.members).toHaveLength(12);
  });

  it('names the specimens of a group on which this was never measured', async () => {
    const { api } = used;
    const added = await api.post(`/api/studies/${study}/specimens`, { label: 'R-unmeasured', group });
    const { body } = await ask(request());
    await api.delete(`/api/studies/${study}/specimens/${added.body.id}`);
    expect(body.excluded).toEqual([
      expect.objectContaining({
        label: 'R-unmeasured',
        reason: 'a comparison of paint needs an analysis of it; R-unmeasured has none',
      }),
    ]);
    expect(body.groups[0]).toMatchObject({ specimens: 13, used: 12 });
  });

  it('refuses what the data cannot carry, with the requirement', async () => {
    const none = await ask(request({ measured: 'body' }));
    expect(none.status).toBe(422);
    expect(none.body.detail).toContain('needs at least two sherds');
    const unknown = await ask(request({ settings: { groups: [group], parts: ['SiO2', 'PbO', 'SnO2'] } }));
    expect(unknown.status).toBe(422);
    expect(unknown.body.detail).toContain('SnO2');
  });

  it('refuses a ware group of another study', async () => {
    const other = await used.api.newStudy();
    const foreign = (await used.api.post(`/api/studies/${other}/groups`, { name: 'X' })).body.id;
    const refused = await ask({ settings: { groups: [foreign] } });
    expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'settings.groups' }] } });
  });
});

describe('a placement that is kept', () => {
  it('stays as it was answered when the study changes', async () => {
    const { api } = used;
    const path = `/api/studies/${study}/placements`;
    const wish = { name: 'Before the second firing', comparison: request() };
    const kept = await api.post(path, wish);
    expect(kept.status).toBe(201);
    const [tile] = (await api.get(`/api/studies/${study}/specimens?search=Tile+1`)).body.rows;
    await api.patch(`/api/studies/${study}/specimens/${tile.id}`, { label: 'Tile one' });
    const read = await api.get(`${path}/${kept.body.id}`);
    await api.patch(`/api/studies/${study}/specimens/${tile.id}`, { label: 'Tile 1' });
    expect(read.body).toEqual(kept.body);
    expect(read.body.result.placements[0].label).toBe('Tile 1');
    expect(read.body.version).toMatch(/^\d+\.\d+\.\d+/);
    const [listed] = (await api.get(path)).body;
    expect(listed).toEqual(
      expect.objectContaining({ id: kept.body.id, sentences: [expect.any(String), expect.any(String)] }),
    );
    expect(listed).not.toHaveProperty('result');
    const renamed = await api.patch(`${path}/${kept.body.id}`, { note: 'dull' });
    expect(renamed.body).toMatchObject({ name: wish.name, note: 'dull' });
    expect((await api.delete(`${path}/${kept.body.id}`)).status).toBe(204);
    expect((await api.get(path)).body).toEqual([]);
  });
});

describe('tables of a comparison', () => {
  it.each(['placements', 'contributions', 'scores', 'loadings', 'members', 'excluded'])(
    '%s come as CSV',
    async (table) => {
      const answer = await used.api.post(`/api/studies/${study}/comparison.csv?table=${table}`, request());
      expect(answer.status).toBe(200);
      expect(answer.headers.get('content-type')).toBe('text/csv; charset=utf-8');
      expect(answer.headers.get('content-disposition')).toContain(`${table}.csv`);
      const lines = answer.text.trim().split('\r\n');
      const rows = { placements: 2, contributions: 6, scores: 14, loadings: 5, members: 12, excluded: 0 };
      expect(lines).toHaveLength(1 + rows[table as keyof typeof rows]);
    },
  );

  it('carry every digit of the answer', async () => {
    const { body } = await ask(request());
    const { text } = await used.api.post(`/api/studies/${study}/comparison.csv?table=placements`, request());
    expect(text).toContain(`,${body.placements[0].groups[0].d2},`);
  });
});
