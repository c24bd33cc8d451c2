import { sql } from 'drizzle-orm';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { analysis, dataImport, specimen, wareGroup } from '../../db/schema/schema.ts';
import { startProcess } from '../support/process.ts';
import { newStorage, type Storage } from '../support/storage.ts';

let storage: Storage;
beforeEach(async () => {
  storage = await newStorage();
});
afterEach(() => storage.remove());

const ROWS = 20_000;
const content = [
  'Specimen,Ware group,Measured,SiO2 (wt%),PbO (wt%)',
  ...Array.from(
    { length: ROWS },
    (_, i) => `S${i},Group ${i % 10},paint,40,${(57 + (i % 20) / 10).toFixed(1)}`,
  ),
].join('\n');

async function killInMidImport() {
  const service = await startProcess(storage.env);
  const { api } = service;
  const study = await api.newStudy('Killed');
  const { body } = await api.startImport(study, { file: { name: 'long.csv', content } });
  const path = `/api/studies/${study}/imports/${body.id}`;
  await vi.waitUntil(async () => (await api.get(path)).body.rowsRead >= 1_000, { timeout: 50_000 });
  const acknowledged = (await api.post(`/api/studies/${study}/specimens`, { label: 'By hand' })).body.id;
  const before = (await api.get(path)).body;
  expect(before.status).toBe('running');
  await service.end('SIGKILL');
  return { study, path, acknowledged };
}

describe('a service killed in the middle of an import', () => {
  it('has everything that was acknowledged and nothing half-done when it starts again', async () => {
    const { study, path, acknowledged } = await killInMidImport();
    const outside = await storage.open();
    const staged = await outside.db.select({ n: sql<number>`count(*)::int` }).from(analysis);
    expect(staged[0]!.n).toBeGreaterThan(0);
    // On a server an import counts as dead after half a minute of silence: let that time have passed.
    await outside.db.update(dataImport).set({ heartbeatAt: new Date(Date.now() - 60_000) });
    await outside.close();

    const { api, end } = await startProcess(storage.env);
    const { body } = await api.get(path);
    expect(body.status).toBe('failed');
    expect(body.outcome.message).toContain('Nothing of it was kept');
    const { rows, total } = (await api.get(`/api/studies/${study}/specimens`)).body;
    expect([total, rows[0].id]).toEqual([1, acknowledged]);
    expect((await api.get(`/api/studies/${study}`)).body.counts).toMatchObject({ groups: 0, analyses: 0 });
    const again = await api.bringIn(study, { file: { name: 'few.csv', content: content.slice(0, 400) } });
    expect(again.status).toBe('done');
    await end('SIGTERM');
  });

  it('leaves no row of it behind', async () => {
    await killInMidImport();
    const outside = await storage.open();
    await outside.db.update(dataImport).set({ heartbeatAt: new Date(Date.now() - 60_000) });
    await outside.close();
    const service = await startProcess(storage.env);
    await service.end('SIGTERM');
    const after = await storage.open();
    expect(await after.db.select().from(analysis)).toEqual([]);
    expect(await after.db.select().from(wareGroup)).toEqual([]);
    const left = await after.db.select({ label: specimen.label }).from(specimen);
    expect(left).toEqual([{ label: 'By hand' }]);
    await after.close();
  });
});
