import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { type ServiceProcess, startProcess } from '../support/process.ts';
import { newStorage, type Storage } from '../support/storage.ts';
import { onServer } from '../support/test-database.ts';

/** Any number of processes may share one PostgreSQL server; the embedded database belongs to one (process.test.ts). */
if (onServer)
  describe('two processes on one server', () => {
    let storage: Storage;
    let one: ServiceProcess;
    let other: ServiceProcess;
    beforeAll(async () => {
      storage = await newStorage();
      [one, other] = await Promise.all([startProcess(storage.env), startProcess(storage.env)]);
    });
    afterAll(async () => {
      await Promise.all([one.end('SIGTERM'), other.end('SIGTERM')]);
      await storage.remove();
    });

    it('start at once on an empty database and see each other’s studies', async () => {
      const study = await one.api.newStudy('Shared');
      expect((await other.api.get(`/api/studies/${study}`)).body.name).toBe('Shared');
    });

    it('give a label to one of two who ask for it at the same moment', async () => {
      const study = await one.api.newStudy();
      const asked = Array.from({ length: 10 }, (_, i) =>
        (i % 2 ? one : other).api.post(`/api/studies/${study}/specimens`, { label: 'Sought' }),
      );
      const statuses = (await Promise.all(asked)).map((answer) => answer.status).toSorted();
      expect(statuses).toEqual([201, ...Array.from({ length: 9 }, () => 409)]);
    });

    it('let one import a study run, whose progress both can tell and either can stop', async () => {
      const study = await one.api.newStudy();
      const rows = Array.from(
        { length: 20_000 },
        (_, i) => `S${i},paint,40,${(57 + (i % 20) / 10).toFixed(1)}`,
      );
      const content = ['Specimen,Measured,SiO2 (wt%),PbO (wt%)', ...rows].join('\n');
      const file = { name: 'long.csv', content };
      const { body } = await one.api.startImport(study, { file });
      expect((await other.api.startImport(study, { file })).status).toBe(409);
      const path = `/api/studies/${study}/imports/${body.id}`;
      await vi.waitUntil(async () => (await other.api.get(path)).body.rowsRead >= 500, { timeout: 30_000 });
      expect((await other.api.get(path)).body.status).toBe('running');
      expect((await other.api.delete(path)).status).toBe(204);
      // The process that runs it learns of the stop within a moment; until then the study may still be taken.
      const few = { text: content.split('\n').slice(0, 20).join('\n').replaceAll(',', '\t') };
      await vi.waitUntil(async () => (await one.api.bringIn(study, few)).status === 'done', {
        timeout: 40_000,
        interval: 500,
      });
      const imports = (await one.api.get(`/api/studies/${study}/imports`)).body;
      const { status } = imports.find((each: { id: string }) => each.id === body.id);
      expect(status).toBe('stopped');
      expect((await other.api.get(`/api/studies/${study}`)).body.counts).toMatchObject({ analyses: 19 });
    });
  });
else
  it('are not for the embedded database, which belongs to one process: see process.test.ts', () => {
    expect(onServer).toBe(false);
  });
