import { createHash } from 'node:crypto';
import { eq, sql } from 'drizzle-orm';
import { unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import type { SharedOutcome } from '../../api/contract/shared.ts';
import { share } from '../../db/schema/schema.ts';
import { readPdf, readPng, readSvg } from '../support/read-files.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
let at: string;
let placement: string;
const get = (path: string) => used.api.get(path);
const make = async (wish: object = {}) => {
  const { status, body } = await used.api.post(`${at}/shares`, { placement, ...wish });
  expect(status).toBe(201);
  return body as { id: string; token: string; path: string };
};

beforeAll(async () => {
  study = (await used.api.post('/api/demo')).body.id;
  at = `/api/studies/${study}`;
  const groups = (await get(`${at}/groups`)).body.map(({ id }: { id: string }) => id);
  const wish = { name: 'For the museum', comparison: { settings: { groups } } };
  placement = (await used.api.post(`${at}/placements`, wish)).body.id;
});

async function inEveryForm(figure: string): Promise<void> {
  const bytes = async (form: string) => {
    const answer = await used.api.raw(`${figure}.${form}?width=800`);
    expect(answer.status, `${figure}.${form}`).toBe(200);
    return Buffer.from(await answer.arrayBuffer());
  };
  expect(readSvg((await bytes('svg')).toString()).get('svg')).toBe(1);
  expect((await readPdf(await bytes('pdf'))).pages).toBe(1);
  expect(readPng(await bytes('png')).width).toBe(800);
}

/** As a batch becomes it in the study, without what each of its materials brings. */
async function becoming(wish: object) {
  const { fired, ...rest } = (await used.api.post(`${at}/batches/fired`, wish)).body;
  const { lines, ...whole } = fired;
  expect(lines.length).toBeGreaterThan(0);
  return { ...rest, fired: whole };
}

const reported = (analyte: string, value: number) => ({
  ...{ analyte, value, unit: 'wt%', uncertainty: null, basis: null },
  ...{ belowDetection: false, limit: null, resolution: 0.1 },
});

describe('a share', () => {
  it('has an address of at least 128 bits, of which only the hash is kept', async () => {
    const tokens = new Set<string>();
    for (let i = 0; i < 20; i++) {
      const { token } = await make();
      expect(Buffer.from(token, 'base64url').length * 8).toBeGreaterThanOrEqual(128);
      tokens.add(token);
    }
    expect(tokens.size).toBe(20);
    const rows = await used.database.db.select().from(share);
    const kept = JSON.stringify(rows);
    for (const token of tokens) {
      expect(kept).not.toContain(token);
      const hash = createHash('sha256').update(token).digest('hex');
      expect(rows.some(({ tokenHash }) => tokenHash === hash)).toBe(true);
    }
    expect((await get(`${at}/shares`)).text).not.toContain([...tokens][0]!);
  });

  it('shows the placement as it was, whatever changes or goes in the study', async () => {
    const { token } = await make();
    const before = (await get(`/api/shared/${token}`)).body;
    const kept = (await get(`${at}/placements/${placement}`)).body;
    expect(before.placement).toEqual(kept);
    await used.api.patch(`${at}/placements/${placement}`, { name: 'Renamed' });
    const again = await used.api.post(`${at}/placements`, { name: 'Two', comparison: kept.result.request });
    const other = await used.api.post(`${at}/shares`, { placement: again.body.id });
    await used.api.delete(`${at}/placements/${again.body.id}`);
    expect((await get(`/api/shared/${other.body.token}`)).body.placement.name).toBe('Two');
    expect((await get(`/api/shared/${token}`)).body).toEqual(before);
    await used.api.patch(`${at}/placements/${placement}`, { name: 'For the museum' });
  });

  it('made before there were kinds of shares opens as a placement', async () => {
    const { id, token } = await make();
    const before = (await get(`/api/shared/${token}`)).body;
    const { db } = used.database;
    await db
      .update(share)
      .set({ payload: sql`${share.payload} - 'kind'` })
      .where(eq(share.id, id));
    expect((await get(`/api/shared/${token}`)).body).toEqual(before);
    expect((await get(`${at}/shares`)).body).toContainEqual(
      expect.objectContaining({ id, kind: 'placement' }),
    );
  });

  it('of a sheet tells the name of the firing, and nothing that only a placement has', async () => {
    const [firing] = (await get(`${at}/firings`)).body;
    const { body } = await used.api.post(`${at}/shares`, { kind: 'sheet', firing: firing.id });
    expect(body).toMatchObject({ kind: 'sheet', name: firing.name });
    const seen = (await get(`/api/shared/${body.token}`)).body;
    expect(seen).toEqual({
      ...{ kind: 'sheet', name: firing.name, comments: false, said: [] },
      expiresAt: expect.any(String),
    });
    expect((await get(`/api/shared/${body.token}/figures/scores.svg`)).status).toBe(404);
    expect((await get(`/api/shared/${body.token}/tables/members`)).status).toBe(404);
  });

  it('gives its figures and its tables', async () => {
    const { token } = await make();
    const svg = await get(`/api/shared/${token}/figures/scores.svg?format=column-double`);
    expect(readSvg(svg.text).get('svg')).toBe(1);
    const table = await get(`/api/shared/${token}/tables/members`);
    expect(table.headers.get('content-type')).toContain('text/csv');
    expect(table.text.split('\r\n').length).toBeGreaterThan(20);
  });

  it('of what mattered holds the answer, its zones and its methods, whatever becomes of the tiles', async () => {
    const [{ factor }] = (await get(`${at}/trials/factors`)).body;
    const trial = { factors: [factor] };
    const name = '</script><b>Why glossy</b>';
    const wish = { kind: 'outcome', name, trial };
    const { status, body } = await used.api.post(`${at}/shares`, wish);
    expect(status).toBe(201);
    const seen = (await get(`/api/shared/${body.token}`)).body;
    expect(seen).toMatchObject({ kind: 'outcome', name, version: expect.any(String) });
    expect(seen.analysis).toEqual((await used.api.post(`${at}/trials/analysis`, trial)).body);
    expect(seen.zones).toHaveLength(seen.analysis.zones);
    expect(seen.words.methods.length).toBeGreaterThan(100);
    for (const zone of seen.zones) expect(Object.keys(zone.factors)).toEqual([factor.name]);
    const [tile] = (await get(`${at}/tiles`)).body;
    await used.api.patch(`${at}/tiles/${tile.id}`, { place: 'elsewhere' });
    const again = await get(`/api/shared/${body.token}`);
    expect(again.body).toEqual(seen);
    expect(again.text).not.toContain(study);
    expect(again.text).not.toContain(tile.id);
    expect((await get(`/api/shared/${body.token}/tables/members`)).status).toBe(404);
    expect((await get(`/api/shared/${body.token}/bundle.zip`)).status).toBe(404);
  });

  it('of what mattered gives every figure in every form and its tables, and no id of the study', async () => {
    const [{ factor }] = (await get(`${at}/trials/factors`)).body;
    const wish = { kind: 'outcome', name: 'Why glossy', trial: { factors: [factor] } };
    const { token } = (await used.api.post(`${at}/shares`, wish)).body;
    const { text, body } = await get(`/api/shared/${token}`);
    for (const tile of (await get(`${at}/tiles`)).body)
      for (const id of [tile.id, tile.firing, ...tile.pictures.map((one: { id: string }) => one.id)])
        if (id) expect(text).not.toContain(id);
    expect(body.tiles.flatMap((tile: { zones: unknown[] }) => tile.zones).length).toBeGreaterThan(5);
    for (const name of ['zones', 'effects', 'chance'])
      await inEveryForm(`/api/shared/${token}/figures/${name}`);
    const zones = (await get(`/api/shared/${token}/tables/zones`)).text.trim().split('\r\n');
    expect(zones).toHaveLength(body.zones.length + 1);
    expect((await get(`/api/shared/${token}/tables/effects`)).text).toContain(factor.name);
    expect((await get(`/api/shared/${token}/figures/scores.svg`)).status).toBe(404);
  });

  it('of what mattered tells no setting, tile or zone that the answer does not rest on', async () => {
    const { body: planned } = await used.api.post(`${at}/tiles`, {
      ...{ label: 'Not fired yet', rows: 1, columns: 2, settings: { 'secret flux': 'borax' } },
    });
    const [judged] = (await get(`${at}/tiles`)).body.filter((one: { id: string }) => one.id !== planned.id);
    const settings = { ...judged.settings, 'secret flux': 'borax' };
    await used.api.patch(`${at}/tiles/${judged.id}`, { settings });
    const factors = (await get(`${at}/trials/factors`)).body;
    const sharedOf = async (name: string) => {
      const { factor } = factors.find((one: { factor: { name: string } }) => one.factor.name === name);
      const wish = { kind: 'outcome', name: 'Why', trial: { factors: [factor] } };
      const path = `/api/shared/${(await used.api.post(`${at}/shares`, wish)).body.token}`;
      const seen = await get(path);
      const files = ['figures/zones.svg', 'figures/effects.svg', 'tables/zones', 'tables/effects'];
      const texts = await Promise.all(files.map(async (file) => (await get(`${path}/${file}`)).text));
      return { seen: seen.body, all: [seen.text, ...texts].join('\n') };
    };
    const { seen, all } = await sharedOf('coats');
    expect(all).toContain('coats');
    for (const word of ['secret flux', 'borax', 'PbO as weighed', 'lead roast', 'fritted', 'Firing 1'])
      expect(all, word).not.toContain(word);
    const { zones, tiles, analysis } = seen as SharedOutcome;
    expect(analysis.leftOut.some(({ tile }) => tile === planned.label)).toBe(true);
    const lying = tiles!.flatMap((tile) => tile.zones.map(({ label }) => `${tile.label} ${label}`));
    expect(lying.sort()).toEqual(zones.map(({ tile, label }) => `${tile} ${label}`).sort());
    expect(lying).toHaveLength(analysis.zones);
    expect(lying.filter((one) => one.startsWith(planned.label))).toEqual([]);
    const roasted = (await sharedOf('lead roast')).seen as SharedOutcome;
    expect(roasted.tiles!.map((tile) => Object.keys(tile.settings))).toContainEqual(['lead roast']);
    for (const zone of roasted.tiles!.flatMap((tile) => tile.zones)) expect(zone.coats).toBeNull();
    await used.api.patch(`${at}/tiles/${judged.id}`, { settings: judged.settings });
    await used.api.delete(`${at}/specimens/${planned.id}`);
  });

  it('of what mattered that was made with more than was chosen opens without it', async () => {
    const { factor } = (await get(`${at}/trials/factors`)).body.find(
      (one: { factor: { name: string } }) => one.factor.name === 'coats',
    );
    const wish = { kind: 'outcome', name: 'Old', trial: { factors: [factor] } };
    const { id, token } = (await used.api.post(`${at}/shares`, wish)).body;
    const before = (await get(`/api/shared/${token}`)).body as SharedOutcome;
    const { db } = used.database;
    const [row] = await db.select().from(share).where(eq(share.id, id));
    const kept = row!.payload as SharedOutcome;
    const tiles = kept.tiles!.map((tile) => ({
      ...tile,
      firingName: 'Kiln',
      settings: { 'lead roast': 'raw' },
    }));
    const zone = { tile: 'Plan', label: 'A1', factors: { coats: 2 }, grade: null, glassyShare: null };
    const analysis = {
      ...kept.analysis,
      leftOut: [...kept.analysis.leftOut, { zone: 'Plan A1', why: 'no gloss grade noted yet' }],
    };
    const words = { ...kept.words, captions: { zones: 'fired in Kiln' } };
    const payload = { ...kept, analysis, words, zones: [...kept.zones, zone], tiles };
    await db.update(share).set({ payload }).where(eq(share.id, id));
    const { body, text } = await get(`/api/shared/${token}`);
    expect(body).toEqual({ ...before, analysis });
    expect(text).not.toContain('Kiln');
  });

  it('of a bench sheet gives its figure in every form and its tables', async () => {
    const batches = (await get(`${at}/batches`)).body as { id: string; target: object | null }[];
    const wish = { kind: 'bench', batch: batches[0]!.id, measured: true };
    const { token } = (await used.api.post(`${at}/shares`, wish)).body;
    const { target, tiles, rows, result } = (await get(`/api/shared/${token}`)).body;
    expect(target !== null || tiles.length > 0).toBe(true);
    await inEveryForm(`/api/shared/${token}/figures/fired`);
    const lines = async (table: string) =>
      (await get(`/api/shared/${token}/tables/${table}`)).text.trim().split('\r\n').length - 1;
    expect(await lines('recipe')).toBe(rows.length);
    expect(await lines('oxides')).toBe(result.fired.oxides.length);
    expect((await get(`/api/shared/${token}/tables/members`)).status).toBe(404);
  });

  it('of a batch found for a target and not kept holds target, batch, how it was found and what it becomes', async () => {
    const [kept] = (await get(`${at}/batches`)).body;
    const { lines, fire } = kept;
    const target = { name: 'the centre of Ware A', parts: { SiO2: 60, Al2O3: 20, PbO: 20 } };
    const batch = { name: 'For Ware A', lines, fire, target, note: 'Found by proportions.' };
    const before = (await get(`${at}/batches`)).body.length;
    const made = await used.api.post(`${at}/shares`, { kind: 'bench', batch });
    expect(made.status).toBe(201);
    expect((await get(`${at}/batches`)).body).toHaveLength(before);
    const seen = (await get(`/api/shared/${made.body.token}`)).body;
    expect(seen).toMatchObject({ name: batch.name, note: batch.note, target, tiles: [] });
    expect(seen.result).toEqual(await becoming({ lines, fire }));
    await inEveryForm(`/api/shared/${made.body.token}/figures/fired`);
    const strange = { ...batch, lines: [{ material: 'nothing-such', amount: 1, water: 0 }] };
    expect((await used.api.post(`${at}/shares`, { kind: 'bench', batch: strange })).status).toBe(422);
  });

  it('of a bench sheet holds what was analysed on its tiles only where that was chosen', async () => {
    const seen = async (batch: string, wish: object) => {
      const { token } = (await used.api.post(`${at}/shares`, { kind: 'bench', batch, ...wish })).body;
      return get(`/api/shared/${token}`);
    };
    const batches = (await get(`${at}/batches`)).body as { id: string; specimens: string[] }[];
    const painted = batches.filter(({ specimens }) => specimens.length > 0);
    const chosen = await Promise.all(painted.map(({ id }) => seen(id, { measured: true })));
    const at0 = chosen.findIndex(({ body }) => body.tiles.length > 0);
    const [{ label }] = chosen[at0]!.body.tiles;
    const without = await seen(painted[at0]!.id, {});
    expect(without.body).toMatchObject({ tiles: [], target: chosen[at0]!.body.target });
    expect(without.text).not.toContain(label);
  });

  it('of another kind, made before its figures could be drawn, still opens and says what is missing', async () => {
    const [{ factor }] = (await get(`${at}/trials/factors`)).body;
    const wish = { kind: 'outcome', name: 'Old', trial: { factors: [factor] } };
    const { id, token } = (await used.api.post(`${at}/shares`, wish)).body;
    await used.database.db
      .update(share)
      .set({ payload: sql`${share.payload} - 'tiles'` })
      .where(eq(share.id, id));
    expect((await get(`/api/shared/${token}`)).body.tiles).toBeNull();
    expect((await get(`/api/shared/${token}/figures/effects.svg`)).status).toBe(200);
    const { status, body } = await get(`/api/shared/${token}/figures/zones.svg`);
    expect(status).toBe(422);
    expect(body.detail).toContain('shared without its tiles');
  });

  it('of a bench sheet holds the recipe, what it becomes and its cautions, and nothing of stock or cost', async () => {
    const [batch] = (await get(`${at}/batches`)).body;
    const { body } = await used.api.post(`${at}/shares`, { kind: 'bench', batch: batch.id });
    const seen = (await get(`/api/shared/${body.token}`)).body;
    const { lines, fire } = batch;
    expect(seen.result).toEqual(await becoming({ lines, fire }));
    expect(seen.rows).toHaveLength(lines.length);
    expect(seen.result.safety.firstRule.length).toBeGreaterThan(10);
    expect(Object.keys(seen.rows[0]).sort()).toEqual(
      ['dryPercent', 'grams', 'handling', 'name', 'running', 'water'].sort(),
    );
    await used.api.patch(`${at}/batches/${batch.id}`, { note: 'changed since' });
    expect((await get(`/api/shared/${body.token}`)).body).toEqual(seen);
  });

  it('gives as one zip what the owner’s own zip holds', async () => {
    const { token } = await make();
    const unzip = async (path: string) =>
      unzipSync(new Uint8Array(await (await used.api.raw(`${path}/bundle.zip`)).arrayBuffer()));
    const shared = await unzip(`/api/shared/${token}`);
    const own = await unzip(`${at}/placements/${placement}`);
    const sorted = (files: Record<string, Uint8Array>) => Object.keys(files).sort();
    expect(sorted(shared)).toEqual(sorted(own));
    const text = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);
    // The descriptor holds hashes of the rest, and a database keeps no order of names in JSON.
    for (const name of sorted(own).filter((one) => one !== 'datapackage.json')) {
      const read = name.endsWith('.json') ? JSON.parse : (words: string) => words;
      expect(read(text(shared[name])), name).toEqual(read(text(own[name])));
    }
    expect((await get(`/api/shared/${token}`)).body).not.toHaveProperty('data');
  });

  it('holds the slips of what is compared, and no other slip of the study', async () => {
    const slip = (specimen: string, label: string) =>
      used.api.post(`${at}/analyses`, {
        ...{ specimen, measured: 'slip', technique: 'SEM-EDS', spot: label },
        reported: ['SiO2', 'Al2O3', 'Fe2O3'].map((analyte, i) => reported(analyte, [60, 30, 10][i]!)),
      });
    const alone = (await used.api.post(`${at}/specimens`, { label: 'Aside', kind: 'material' })).body;
    expect((await slip(alone.id, 'a')).status).toBe(201);
    const { token } = await make();
    const { slips, placement: shown } = (await get(`/api/shared/${token}`)).body;
    expect(slips.samples.length).toBeGreaterThan(0);
    expect(JSON.stringify(slips)).not.toContain('Aside');
    const compared = [...shown.result.replicas, ...shown.result.references].map(({ id }) => id);
    const groups = shown.result.groups.map(({ id }: { id: string }) => id);
    for (const { id, group } of slips.samples)
      expect(compared.includes(id) || groups.includes(group)).toBe(true);
    expect(Object.keys(slips.names).sort()).toEqual(groups.sort());
    await used.api.delete(`${at}/specimens/${alone.id}`);
  });

  it('holds no replica that nothing was measured on', async () => {
    const notes = 'a plan nobody outside may read';
    const planned = { label: 'Planned only', kind: 'replica', notes };
    const added = await used.api.post(`${at}/specimens`, planned);
    const { settings } = (await get(`${at}/placements/${placement}`)).body.result.request;
    const wish = { name: 'With all replicas', comparison: { settings } };
    const kept = await used.api.post(`${at}/placements`, wish);
    const { token } = await make({ placement: kept.body.id });
    const answer = await used.api.raw(`/api/shared/${token}/bundle.zip`);
    const files = unzipSync(new Uint8Array(await answer.arrayBuffer()));
    const texts = Object.values(files).map((bytes) => new TextDecoder().decode(bytes));
    expect(texts.some((text) => text.includes(kept.body.result.placements[0].label))).toBe(true);
    for (const word of [planned.label, notes])
      expect(texts.filter((text) => text.includes(word))).toEqual([]);
    await used.api.delete(`${at}/placements/${kept.body.id}`);
    await used.api.delete(`${at}/specimens/${added.body.id}`);
  });

  it('reaches nothing that is not in it', async () => {
    const { token } = await make();
    const notes = 'a note nobody outside may read';
    await used.api.patch(at, { notes });
    const added = await used.api.post(`${at}/specimens`, { label: 'Not compared', kind: 'material' });
    const { text } = await get(`/api/shared/${token}`);
    expect(text).not.toContain(notes);
    expect(text).not.toContain('Not compared');
    expect(text).not.toContain(study);
    for (const path of ['specimens', `placements/${placement}`, `studies/${study}`, '..%2fstudies'])
      expect((await get(`/api/shared/${token}/${path}`)).status).toBe(404);
    await used.api.delete(`${at}/specimens/${added.body.id}`);
  });

  it.each([
    ['revoked', 'taken it back'],
    ['expired', 'was shared until'],
  ])('that is %s says so and shows nothing', async (state, words) => {
    const soon = new Date(Date.now() + 3_000).toISOString();
    const { id, token } = await make(
      state === 'expired' ? { expiresAt: soon, comments: true } : { comments: true },
    );
    expect((await get(`/api/shared/${token}`)).status).toBe(200);
    if (state === 'revoked') await used.api.post(`${at}/shares/${id}/revocation`);
    else while (Date.now() <= Date.parse(soon)) await new Promise((done) => setTimeout(done, 50));
    for (const path of ['', '/figures/scores.svg', '/tables/members']) {
      const { status, body } = await get(`/api/shared/${token}${path}`);
      expect(status).toBe(410);
      expect(body.detail).toContain(words);
      expect(Object.keys(body).sort()).toEqual(['detail', 'status', 'title', 'type']);
    }
    const said = await used.api.post(`/api/shared/${token}/comments`, { name: 'A', text: 'B' });
    expect(said.status).toBe(410);
    const listed = (await get(`${at}/shares`)).body.find((one: { id: string }) => one.id === id);
    expect(listed.state).toBe(state);
  });

  it('cannot be made to end in the past, of another study’s placement, or revoked from another study', async () => {
    const past = await used.api.post(`${at}/shares`, { placement, expiresAt: '2020-01-01T00:00:00Z' });
    expect(past.status).toBe(422);
    const other = await used.api.newStudy('Other');
    expect((await used.api.post(`/api/studies/${other}/shares`, { placement })).status).toBe(404);
    const { id, token } = await make();
    expect((await used.api.post(`/api/studies/${other}/shares/${id}/revocation`)).status).toBe(404);
    expect((await get(`/api/shared/${token}`)).status).toBe(200);
  });
});

describe('a comment', () => {
  it('is kept as it was typed where comments are taken, and refused where not', async () => {
    const { id, token } = await make({ comments: true });
    const typed = { name: '<b>Ada</b>', text: '<script>alert(1)</script> =1+1' };
    expect((await used.api.post(`/api/shared/${token}/comments`, typed)).status).toBe(201);
    expect((await get(`/api/shared/${token}`)).body.said).toMatchObject([typed]);
    const listed = (await get(`${at}/shares`)).body.find((one: { id: string }) => one.id === id);
    expect(listed.said).toMatchObject([typed]);
    const closed = await make();
    const refused = await used.api.post(`/api/shared/${closed.token}/comments`, typed);
    expect(refused.status).toBe(403);
  });
  it('needs a name and words, not too many', async () => {
    const { token } = await make({ comments: true });
    for (const wrong of [
      { name: '', text: 'x' },
      { name: 'A', text: ' ' },
      { name: 'A', text: 'x'.repeat(2_001) },
    ])
      expect((await used.api.post(`/api/shared/${token}/comments`, wrong)).status).toBe(422);
  });
  it('is taken only so often from one place', async () => {
    const { token } = await make({ comments: true });
    const answers: number[] = [];
    for (let i = 0; i < 8; i++)
      answers.push(
        (await used.api.post(`/api/shared/${token}/comments`, { name: 'A', text: `${i}` })).status,
      );
    expect(answers.at(-1)).toBe(429);
  });
});

describe('guesses at an address', () => {
  it('are all answered alike, then throttled for the true one too', async () => {
    const { token } = await make();
    const near = `${token.slice(0, -1)}${token.endsWith('A') ? 'B' : 'A'}`;
    const first = await get(`/api/shared/${near}`);
    const second = await get('/api/shared/x');
    expect(first.status).toBe(404);
    expect(second.body).toEqual(first.body);
    let status = 404;
    for (let i = 0; i < 25 && status === 404; i++) status = (await get(`/api/shared/guess-${i}`)).status;
    expect(status).toBe(429);
    expect((await get(`/api/shared/${token}`)).status).toBe(429);
  });
});
