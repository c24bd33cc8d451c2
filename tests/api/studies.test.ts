import { describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();

describe('studies', () => {
  it('are made, changed, listed newest first and deleted', async () => {
    const { api } = used;
    const made = await api.post('/api/studies', { name: '  Black paint ', place: 'Invented vale' });
    expect(made).toMatchObject({
      status: 201,
      body: { name: 'Black paint', place: 'Invented vale', demo: false },
    });
    const { id } = made.body;
    const later = await api.newStudy('Later');
    const listed = await api.get('/api/studies');
    expect(listed.body.map((one: { id: string }) => one.id)).toEqual([later, id]);
    const changed = await api.patch(`/api/studies/${id}`, { notes: 'line one\nline two' });
    expect(changed.body).toMatchObject({ name: 'Black paint', notes: 'line one\nline two' });
    expect((await api.delete(`/api/studies/${id}`)).status).toBe(204);
    expect((await api.get(`/api/studies/${id}`)).status).toBe(404);
  });

  it('need a name', async () => {
    const refused = await used.api.post('/api/studies', { name: '   ' });
    expect(refused.status).toBe(422);
    expect(refused.body.faults).toEqual([{ at: 'name', message: 'needs at least one character' }]);
  });

  it('refuse a text with a NUL in it, which no PostgreSQL could hold', async () => {
    const refused = await used.api.post('/api/studies', { name: 'a\u0000b' });
    expect(refused).toMatchObject({ status: 422, body: { faults: [{ at: 'name' }] } });
  });

  it('take groups, specimens, analyses, imports and placements with them', async () => {
    const { api } = used;
    const study = await api.newStudy();
    await api.bringIn(study, {
      text: 'Specimen\tWare\tMeasured\tSiO2 (wt%)\tPbO (wt%)\nA1\tRed\tpaint\t40\t60\nA2\tRed\tpaint\t41\t59',
    });
    expect((await api.get(`/api/studies/${study}`)).body.counts).toEqual({
      groups: 1,
      specimens: 2,
      replicas: 0,
      analyses: 2,
      placements: 0,
      ...{ batches: 0, tiles: 0, judged: 0, firings: 0, shares: 0 },
    });
    expect((await api.delete(`/api/studies/${study}`)).status).toBe(204);
    for (const part of ['groups', 'specimens', 'analyses', 'imports', 'placements'])
      expect((await api.get(`/api/studies/${study}/${part}`)).status).toBe(404);
  });
});

describe('the demo study', () => {
  it('is made by one call, says that it is invented, and can be removed', async () => {
    const { api } = used;
    const demo = await api.post('/api/demo');
    expect(demo.status).toBe(201);
    expect(demo.body.demo).toBe(true);
    expect(`${demo.body.place} ${demo.body.notes}`).toMatch(/invented/i);
    const groups = await api.get(`/api/studies/${demo.body.id}/groups`);
    const sizes = groups.body.map((group: { specimens: number }) => group.specimens);
    expect(sizes.length).toBeGreaterThanOrEqual(4);
    expect(new Set(sizes).size).toBeGreaterThan(1);
    expect(sizes).toContain(6);
    // Nine tiles of six zones, each judged; seven batches; two firings.
    const fire = { replicas: 9, tiles: 9, judged: 54, batches: 7, firings: 2, shares: 0 };
    expect(demo.body.counts).toMatchObject(fire);
    expect((await api.delete(`/api/studies/${demo.body.id}`)).status).toBe(204);
  });
});
