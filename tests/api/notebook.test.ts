import { strFromU8, unzipSync } from 'fflate';
import { JSDOM } from 'jsdom';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { ENTRY_KINDS, type Entry } from '../../api/contract/notebook.ts';
import { invented } from '../support/pictures.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
const EVIL = '<script>alert(1)</script> "fire" & =1+1';
let study: string;
let tile: string;

async function send(of: Record<string, string>, caption: string) {
  const form = new FormData();
  form.set('file', new File([invented('invented.jpg') as Uint8Array<ArrayBuffer>], 'a.jpg'));
  for (const [name, value] of Object.entries({ ...of, caption })) form.set(name, value);
  const sent = await used.api.post(`${study}/pictures`, form);
  expect(sent.status).toBe(201);
}
const entries = async (query = ''): Promise<Entry[]> =>
  (await used.api.get(`${study}/notebook${query}`)).body;
async function unzipped(query = '') {
  const answer = await used.api.raw(`${study}/notebook.zip${query}`);
  expect(answer.headers.get('content-type')).toBe('application/zip');
  return unzipSync(new Uint8Array(await answer.arrayBuffer()));
}

beforeAll(async () => {
  const { id } = (await used.api.post('/api/demo')).body;
  study = `/api/studies/${id}`;
  const replica = (await used.api.get(`${study}/tiles`)).body[0];
  tile = replica.id;
  const groups = (await used.api.get(`${study}/groups`)).body;
  const comparison = { settings: { groups: [groups[0].id] }, replicas: [tile] };
  const asked = await used.api.post(`${study}/placements`, { name: 'Kept once', comparison });
  expect(asked.status, asked.text).toBe(201);
  const planned = await used.api.post(`${study}/plans`, {
    name: 'Ladder',
    request: {
      ...{ kind: 'ladder', tiles: 1, rows: 1, columns: 3, seed: 1 },
      factors: [{ name: 'coats', unit: null, at: 'zone', levels: [1, 2, 3] }],
    },
  });
  expect(planned.status, planned.text).toBe(201);
  const firing = (await used.api.get(`${study}/firings`)).body[0];
  await used.api.patch(`${study}/firings/${firing.id}`, { note: EVIL });
  await send({ firing: firing.id }, EVIL);
  await send({ tile }, 'Front');
  await send({ tile }, 'Back');
});

describe('the notebook', () => {
  it('holds every kind of entry: batches, roasts, firings, tiles, plans, analyses, placements', async () => {
    const kinds = new Set((await entries()).map((one) => one.kind));
    expect([...kinds].sort()).toEqual([...ENTRY_KINDS].sort());
  });
  it('shows pictures with words for who cannot see them, and is searched by those words', async () => {
    const [found] = (await entries('?kind=tile')).filter((one) => one.id === tile);
    expect(found!.pictures.slice(-2).map((one) => one.alt)).toEqual(['Front', 'Back']);
    expect((await entries('?search=front&kind=tile')).map((one) => one.id)).toContain(tile);
  });
  it('folds many analyses into one entry a day, loses none, and finds those asked for', async () => {
    const all = await entries();
    const folded = await entries('?fold=analyses');
    const counted = (of: readonly Entry[]) =>
      of.filter((one) => one.kind === 'analysis').reduce((sum, one) => sum + one.count, 0);
    expect(counted(folded)).toBe(counted(all));
    expect(counted(all)).toBe(all.filter((one) => one.kind === 'analysis').length);
    expect(folded.length).toBeLessThan(all.length / 2);
    const found = await entries('?fold=analyses&kind=analysis&search=Tile%205');
    expect(counted(found)).toBe((await entries('?kind=analysis&search=Tile%205')).length);
    expect(found.every((one) => /Tile 5/.test(`${one.title} ${one.text}`))).toBe(true);
    expect(found.length).toBeGreaterThan(0);
    expect((await used.api.get(`${study}/notebook?fold=roasts`)).status).toBe(422);
  });
});

describe('the notebook to take away', () => {
  it('holds every entry as a row and as an item, and every picture byte for byte', async () => {
    const files = await unzipped();
    const all = await entries();
    const { data } = Papa.parse<Record<string, string>>(
      strFromU8(files['notebook.csv']!).replace(/^\ufeff/, ''),
      {
        header: true,
        skipEmptyLines: true,
      },
    );
    expect(data).toHaveLength(all.length);
    const page = new JSDOM(strFromU8(files['notebook.html']!)).window.document;
    expect(page.querySelectorAll('li')).toHaveLength(all.length);
    const images = [...page.querySelectorAll('img')];
    expect(images).toHaveLength(all.flatMap((one) => one.pictures).length);
    for (const image of images) {
      expect(Object.keys(files)).toContain(image.getAttribute('src'));
      expect(image.getAttribute('alt')).not.toBe('');
    }
    const jpegs = Object.entries(files).filter(([name]) => name.endsWith('.jpeg'));
    expect(jpegs).toHaveLength(3);
    for (const [name, bytes] of jpegs) {
      expect(name).toMatch(/^pictures\/[\p{L}\p{N} ._-]+\.jpeg$/u);
      expect([...bytes]).toEqual([...invented('invented.jpg')]);
    }
  });
  it('runs nothing: texts stay texts in the page, and formulas stay texts in the table', async () => {
    const files = await unzipped();
    const page = new JSDOM(strFromU8(files['notebook.html']!)).window.document;
    expect(page.querySelectorAll('script')).toHaveLength(0);
    expect(page.body.textContent).toContain(EVIL);
    expect([...page.querySelectorAll('img')].map((one) => one.alt)).toContain(EVIL);
    expect(page.documentElement.outerHTML).not.toMatch(/https?:\/\//);
  });
  it('holds what was searched for and no more', async () => {
    const files = await unzipped('?kind=firing');
    expect(Object.keys(files).filter((name) => name.startsWith('pictures/'))).toHaveLength(1);
    expect(strFromU8(files['notebook.csv']!)).not.toContain(',tile,');
  });
});
