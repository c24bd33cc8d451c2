import { beforeEach, describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let path: string;
beforeEach(async () => {
  path = `/api/studies/${await used.api.newStudy()}/groups`;
});
const names = async () =>
  (await used.api.get(path)).body.map((g: { name: string; position: number }) => `${g.position} ${g.name}`);

describe('ware groups', () => {
  it('keep period, place, source and DOI, whichever way the DOI is written', async () => {
    const made = await used.api.post(path, {
      name: 'Early black',
      period: 'Early',
      doi: 'https://doi.org/10.1515/pac-2019-0603',
    });
    expect(made).toMatchObject({
      status: 201,
      body: { doi: '10.1515/pac-2019-0603', position: 0, specimens: 0 },
    });
    const read = await used.api.get(`${path}/${made.body.id}`);
    expect(read.body).toEqual(made.body);
  });

  it('refuse what is no DOI, and name the field', async () => {
    const refused = await used.api.post(path, { name: 'A', doi: 'see my book' });
    expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'doi' }] } });
  });

  it('have names unique in their study and free in another', async () => {
    await used.api.post(path, { name: 'Red' });
    const refused = await used.api.post(path, { name: 'Red' });
    expect(refused.status).toBe(409);
    expect(refused.body.detail).toContain('“Red” is taken');
    const other = await used.api.newStudy();
    expect((await used.api.post(`/api/studies/${other}/groups`, { name: 'Red' })).status).toBe(201);
  });

  it('move to another place in the order, the others closing up', async () => {
    const ids: string[] = [];
    for (const name of ['A', 'B', 'C', 'D']) ids.push((await used.api.post(path, { name })).body.id);
    await used.api.patch(`${path}/${ids[3]}`, { position: 1 });
    expect(await names()).toEqual(['0 A', '1 D', '2 B', '3 C']);
    await used.api.delete(`${path}/${ids[0]}`);
    expect(await names()).toEqual(['0 D', '1 B', '2 C']);
  });

  it('leave their specimens behind, unassigned, when deleted', async () => {
    const { api } = used;
    const study = path.split('/')[3];
    const group = (await api.post(path, { name: 'Red' })).body.id;
    const sherd = (await api.post(`/api/studies/${study}/specimens`, { label: 'A1', group })).body.id;
    expect((await api.get(`${path}/${group}`)).body.specimens).toBe(1);
    await api.delete(`${path}/${group}`);
    expect((await api.get(`/api/studies/${study}/specimens/${sherd}`)).body.group).toBe(null);
  });

  it('are not found through another study', async () => {
    const group = (await used.api.post(path, { name: 'Red' })).body.id;
    const other = await used.api.newStudy();
    expect((await used.api.get(`/api/studies/${other}/groups/${group}`)).status).toBe(404);
    expect((await used.api.delete(`/api/studies/${other}/groups/${group}`)).status).toBe(404);
    expect((await used.api.get(`${path}/${group}`)).status).toBe(200);
  });
});
