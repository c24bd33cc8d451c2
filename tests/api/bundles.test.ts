import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Package } from 'datapackage';
import { unzipSync, zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../api/app.ts';
import type { Comparison } from '../../api/contract/placement.ts';
import { hashOf } from '../../api/export/bundle/descriptor.ts';
import { study as studies } from '../../db/schema/schema.ts';
import { startApi } from '../support/start-api.ts';

/** Two installations, each with a database of its own: what one packs, the other takes. */
const here = startApi();
const there = startApi();
let at: string;
let result: Comparison;
let files: Record<string, Uint8Array>;
let packed: Uint8Array<ArrayBuffer>;

async function bundleOf(placement: string): Promise<Uint8Array<ArrayBuffer>> {
  const app = createApp({ db: here.database.db });
  const answer = await app.request(`http://localhost${at}/placements/${placement}/bundle.zip`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('application/zip');
  return new Uint8Array(await answer.arrayBuffer());
}
function take(bytes: Uint8Array<ArrayBuffer>) {
  const form = new FormData();
  form.set('file', new File([bytes], 'placement.zip'));
  return there.api.post('/api/bundles', form);
}
async function keep(request: object) {
  const made = await here.api.post(`${at}/placements`, {
    name: 'Nine tiles, =1+1',
    note: 'A note',
    comparison: request,
  });
  expect(made.status).toBe(201);
  return made.body as { id: string; result: Comparison };
}

beforeAll(async () => {
  at = `/api/studies/${(await here.api.post('/api/demo')).body.id}`;
  const groups = (await here.api.get(`${at}/groups`)).body.map(({ id }: { id: string }) => id);
  // Two spots entered by hand have no row of a file to be ordered by.
  const { rows } = (await here.api.get(`${at}/specimens?kind=replica`)).body;
  for (const silica of [40.1, 47.7, 44.3]) {
    const reported = [
      ['SiO2', silica],
      ['PbO', 41.7],
      ['Al2O3', 3.3],
    ].map(([analyte, value]) => ({ analyte, value }));
    const made = await here.api.post(`${at}/analyses`, { specimen: rows[0].id, measured: 'paint', reported });
    expect(made.status).toBe(201);
  }
  const kept = await keep({ settings: { groups, parts: ['SiO2', 'PbO', 'Al2O3'] } });
  result = kept.result;
  packed = await bundleOf(kept.id);
  files = unzipSync(packed);
});

const text = (name: string) => new TextDecoder().decode(files[name]);
const NUMBERS_ONLY = (value: unknown): unknown =>
  JSON.parse(JSON.stringify(value).replace(/"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}"/g, '"id"'));

describe('a bundle', () => {
  it('is a Data Package by the standard’s own library: descriptor, tables, types, keys', async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'nearsherd-bundle-'));
    for (const [name, bytes] of Object.entries(files)) {
      await mkdir(path.dirname(path.join(folder, name)), { recursive: true });
      await writeFile(path.join(folder, name), bytes);
    }
    const read = await Package.load(path.join(folder, 'datapackage.json'), { basePath: folder });
    expect(read.errors).toEqual([]);
    expect(read.valid).toBe(true);
    const tabular = read.resources.filter((one) => one.tabular);
    expect(tabular.map(({ name }) => name)).toEqual(['groups', 'specimens', 'analyses', 'values']);
    const counts = new Map<string, number>();
    for (const table of tabular) {
      const rows = await table.read({ keyed: true, relations: true });
      counts.set(table.name, rows.length);
    }
    expect(counts.get('groups')).toBe(result.groups.length);
    expect(counts.get('values')).toBeGreaterThan(counts.get('analyses')!);
    await rm(folder, { recursive: true });
  }, 120_000);

  it('holds data, settings, result, figures, methods and citations, each listed with its hash', () => {
    const { resources } = JSON.parse(text('datapackage.json'));
    const listed = resources.map((one: { path: string }) => one.path);
    expect(listed.sort()).toEqual(
      Object.keys(files)
        .filter((name) => name !== 'datapackage.json')
        .sort(),
    );
    expect(listed).toEqual(
      expect.arrayContaining([
        'placement.json',
        'methods.txt',
        'citations.json',
        'figures/scores.pdf',
        'figures/profile.svg',
      ]),
    );
    for (const one of resources) expect(hashOf(files[one.path]!)).toBe(one.hash);
    expect(text('methods.txt')).toContain('Aitchison 1986');
    expect(JSON.parse(text('placement.json')).result).toEqual(result);
  });

  it('gives another installation the same numbers, bit for bit, and that one can compare again', async () => {
    const taken = await take(packed);
    expect(taken.status).toBe(201);
    const { study, placement } = taken.body;
    const kept = (await there.api.get(`/api/studies/${study}/placements/${placement}`)).body;
    expect(NUMBERS_ONLY(kept.result)).toEqual(NUMBERS_ONLY(result));
    const again = await there.api.post(`/api/studies/${study}/comparison`, kept.result.request);
    expect(again.body).toEqual(kept.result);
    expect(again.body.model.groups[0].mean).toEqual(result.model.groups[0]!.mean);
    expect([kept.name, kept.note]).toEqual(['Nine tiles, =1+1', 'A note']);
  });

  it('made of what was brought in is the same data again', async () => {
    const { study, placement } = (await take(packed)).body;
    const app = createApp({ db: there.database.db });
    const answer = await app.request(
      `http://localhost/api/studies/${study}/placements/${placement}/bundle.zip`,
    );
    const again = unzipSync(new Uint8Array(await answer.arrayBuffer()));
    const without = (bytes: Uint8Array) =>
      new TextDecoder().decode(bytes).replace(/[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, 'id');
    for (const name of ['groups', 'specimens', 'analyses', 'values'])
      expect(without(again[`data/${name}.csv`]!)).toBe(without(files[`data/${name}.csv`]!));
  });

  it('carries the slip that was drawn off', async () => {
    const { placements, request } = result;
    const [first, second] = placements.map(({ id }) => id);
    const reported = [
      { analyte: 'SiO2', value: 61 },
      { analyte: 'PbO', value: 0.2 },
      { analyte: 'Al2O3', value: 21 },
    ];
    const slipOf = { specimen: first, measured: 'slip', reported };
    expect((await here.api.post(`${at}/analyses`, slipOf)).status).toBe(201);
    const slip = [
      { specimen: first, source: { kind: 'own' }, f: 0.1 },
      { specimen: second, source: { kind: 'specimen', specimen: first }, f: 0.05 },
    ];
    const kept = await keep({ ...request, slip });
    expect(kept.result.slip).toHaveLength(2);
    const taken = await take(await bundleOf(kept.id));
    expect(taken.status).toBe(201);
    const { study, placement } = taken.body;
    const read = (await there.api.get(`/api/studies/${study}/placements/${placement}`)).body;
    expect(NUMBERS_ONLY(read.result)).toEqual(NUMBERS_ONLY(kept.result));
  });

  it('holds the data as it was when it was kept, whatever changed since', async () => {
    const { id } = await keep(result.request);
    const member = result.model.members[0]!.id;
    const removed = await here.api.delete(`${at}/specimens/${member}`);
    expect(removed.status).toBe(204);
    expect((await take(await bundleOf(id))).status).toBe(201);
  });
});

describe('a bundle that is refused', () => {
  const packAgain = (change: (all: Record<string, Uint8Array>) => void) => {
    const all = { ...files };
    change(all);
    return zipSync(all) as Uint8Array<ArrayBuffer>;
  };
  const utf8 = (words: string) => new TextEncoder().encode(words);
  /** Writes a file and puts its new size and hash into the descriptor, as somebody who knows how would. */
  const forge = (name: string, change: (before: string) => string) =>
    packAgain((all) => {
      const after = change(text(name));
      expect(after).not.toBe(text(name));
      const bytes = utf8(after);
      all[name] = bytes;
      const listed = JSON.parse(text('datapackage.json'));
      for (const one of listed.resources)
        if (one.path === name) Object.assign(one, { bytes: bytes.length, hash: hashOf(bytes) });
      all['datapackage.json'] = utf8(JSON.stringify(listed));
    });
  const climbing = (name: string) =>
    packAgain((all) => {
      all[name] = utf8('x');
    });
  const cases: [string, () => Uint8Array<ArrayBuffer>, string][] = [
    [
      'a changed file',
      () =>
        packAgain((all) => {
          all['data/values.csv'] = utf8(text('data/values.csv').replace('wt%', 'ppm'));
        }),
      'has been changed',
    ],
    [
      'a missing file',
      () =>
        packAgain((all) => {
          delete all['methods.txt'];
        }),
      'is missing',
    ],
    ['a file too many', () => climbing('notes.txt'), 'is not listed'],
    ['a path that climbs out', () => climbing('../../etc/x'), 'invalid relative path'],
    ['an absolute path', () => climbing('/etc/x'), 'absolute path'],
    ['a backslash', () => climbing('..\\x'), 'invalid'],
    [
      'no descriptor',
      () =>
        packAgain((all) => {
          delete all['datapackage.json'];
        }),
      'needs datapackage.json',
    ],
    [
      'figures that were changed and hashed anew',
      () => forge('data/values.csv', (all) => all.replace(/,(\d+\.\d+),wt%/, ',1$1,wt%')),
      'number by number',
    ],
    [
      'a result that was changed and hashed anew',
      () => forge('placement.json', (all) => all.replace(/"distance": \d/, '"distance": 9')),
      'number by number',
    ],
    [
      'a sentence that was changed and hashed anew',
      () => forge('placement.json', (all) => all.replace('"sentence": "Tile', '"sentence": "Every')),
      'sentence',
    ],
    [
      'a technique not known here',
      () => forge('data/analyses.csv', (all) => all.replaceAll(',SEM-EDS,', ',X-RAY,')),
      'X-RAY is not',
    ],
    [
      'a bomb',
      () =>
        packAgain((all) => {
          all['bomb.txt'] = new Uint8Array(201 * 1024 * 1024);
        }),
      'unpacks to at most 200 MB',
    ],
    [
      'more files than any bundle has',
      () =>
        packAgain((all) => {
          for (let i = 0; i < 101; i++) all[`f${i}`] = utf8('x');
        }),
      'at most 100 files',
    ],
    ['no zip at all', () => utf8('hello') as Uint8Array<ArrayBuffer>, 'intact zip'],
  ];
  it.each(cases)('for %s says so and changes nothing', async (_, make, words) => {
    const before = await there.database.db.select({ id: studies.id }).from(studies);
    const { status, body } = await take(make());
    expect(status).toBe(422);
    expect(body.detail).toContain(words);
    expect(await there.database.db.select({ id: studies.id }).from(studies)).toEqual(before);
  });
  it('for nothing but its version is computed again here, and says so', async () => {
    const older = forge('placement.json', (all) =>
      all.replace(/"version": "[^"]*"/, '"version": "0.0.9"').replace(/"distance": \d/, '"distance": 9'),
    );
    const { status, body } = await take(older);
    expect(status).toBe(201);
    expect(body.differs).toMatch(/by version 0\.0\.9, which gave other numbers \(the first is placements\./);
    const { body: kept } = await there.api.get(`/api/studies/${body.study}/placements/${body.placement}`);
    expect(kept.note).toBe(`${body.differs}\n\nA note`);
    expect(kept.version).not.toBe('0.0.9');
    expect(NUMBERS_ONLY(kept.result)).toEqual(NUMBERS_ONLY(result));
  });
  it('for being too large is refused before it is read', async () => {
    const { status, body } = await take(new Uint8Array(56 * 1024 * 1024));
    expect(status).toBe(413);
    expect(body.detail).toContain('MB');
  });
});
