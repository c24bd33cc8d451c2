import { beforeAll, describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
let path: string;
let red: string;
const labels = async (query: string) =>
  (await used.api.get(`${path}?${query}`)).body.rows.map((row: { label: string }) => row.label);

beforeAll(async () => {
  study = await used.api.newStudy();
  path = `/api/studies/${study}/specimens`;
  red = (await used.api.post(`/api/studies/${study}/groups`, { name: 'Red slip' })).body.id;
  for (const [label, kind, group, catalogueNumber] of [
    ['T10', 'replica', null, 'K 3'],
    ['T2', 'replica', null, 'K 20'],
    ['t1', 'replica', null, ''],
    ['Sherd 100%', 'sherd', red, 'P_1'],
    ['Scherbe Ä3', 'sherd', red, 'PX1'],
  ])
    await used.api.post(path, { label, kind, group, catalogueNumber });
});

describe('specimens', () => {
  it('sort as a reader expects: T2 before T10, case and accents aside', async () => {
    expect(await labels('sort=label')).toEqual(['Scherbe Ä3', 'Sherd 100%', 't1', 'T2', 'T10']);
    expect(await labels('sort=label&direction=desc')).toEqual([
      'T10',
      'T2',
      't1',
      'Sherd 100%',
      'Scherbe Ä3',
    ]);
    expect((await labels('sort=catalogueNumber&kind=replica')).slice(1)).toEqual(['T10', 'T2']);
  });

  it('are searched by every word, in label, catalogue number and ware group', async () => {
    expect(await labels('search=red')).toEqual(['Scherbe Ä3', 'Sherd 100%']);
    expect(await labels('search=k+t1')).toEqual(['T10']);
    expect(await labels('search=RED+sherd')).toEqual(['Sherd 100%']);
  });

  it('are searched for % and _ as themselves', async () => {
    expect(await labels('search=%25')).toEqual(['Sherd 100%']);
    expect(await labels('search=p_1')).toEqual(['Sherd 100%']);
  });

  it('come in pages with the number of all', async () => {
    const page = await used.api.get(`${path}?offset=2&limit=2`);
    expect(page.body).toMatchObject({ total: 5, offset: 2 });
    expect(page.body.rows).toHaveLength(2);
  });

  it('are filtered by kind and ware group', async () => {
    expect(await labels(`group=${red}`)).toHaveLength(2);
    expect(await labels('group=none&kind=replica')).toHaveLength(3);
  });

  it('have labels unique in their study', async () => {
    const refused = await used.api.post(path, { label: 'T2' });
    expect(refused).toMatchObject({ status: 409 });
    expect(refused.body.detail).toContain('“T2” is taken');
  });

  it('refuse a ware group of another study', async () => {
    const other = await used.api.newStudy();
    const foreign = (await used.api.post(`/api/studies/${other}/groups`, { name: 'X' })).body.id;
    const refused = await used.api.post(path, { label: 'New', group: foreign });
    expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'group' }] } });
  });

  it('are changed and deleted many at once, all or none', async () => {
    const own = await used.api.newStudy();
    const at = `/api/studies/${own}/specimens`;
    const ids: string[] = [];
    for (const label of ['A', 'B', 'C']) ids.push((await used.api.post(at, { label })).body.id);
    const changed = await used.api.post(`${at}/change`, { specimens: ids, change: { kind: 'replica' } });
    expect(changed.body).toEqual({ count: 3 });
    const stranger = '00000000-0000-4000-8000-000000000000';
    const refused = await used.api.post(`${at}/delete`, { specimens: [ids[0], stranger] });
    expect(refused.status).toBe(404);
    expect((await used.api.get(at)).body.total).toBe(3);
    expect((await used.api.post(`${at}/delete`, { specimens: ids.slice(1) })).body).toEqual({ count: 2 });
    expect((await used.api.get(at)).body.rows[0]).toMatchObject({ label: 'A', kind: 'replica' });
  });
});
