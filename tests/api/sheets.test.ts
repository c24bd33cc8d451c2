import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
import { createApp } from '../../api/app.ts';
import { PLACE, phoneJpeg } from '../support/pictures.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
let firing: string;
let tile: { id: string; zones: { id: string; label: string; grade: string | null }[] };
let sheet: string;

const post = (path: string, body: unknown = {}) => used.api.post(path, body);
const get = (path: string) => used.api.get(path);
const START = Date.parse('2026-03-01T10:00:00Z');
const clock = (minutes: number) => new Date(START + 60_000 * minutes).toISOString();
const note = (minutes: number, rest: Record<string, unknown>, noted = minutes) => ({
  ...{ id: randomUUID(), noted: clock(noted), at: clock(minutes) },
  ...rest,
});
const reading = { kind: 'thermocouple', celsius: 640, sensor: { kind: 'class', type: 'K', class: 2 } };
const send = (...notes: object[]) => post(`${sheet}/notes`, notes);

beforeEach(async () => {
  study = `/api/studies/${(await post('/api/studies', { name: `Marl ${randomUUID()}` })).body.id}`;
  firing = (await post(`${study}/firings`, { name: 'F1', fuel: 'Ash' })).body.id;
  tile = (await post(`${study}/tiles`, { label: 'T1', firing, place: 'front', position: 2 })).body;
  sheet = `${study}/firings/${firing}/sheet`;
});

describe('the sheet at the fire', () => {
  it('holds one firing, its tiles and their zones, and nothing else of the study', async () => {
    const other = (await post(`${study}/firings`, { name: 'F2' })).body.id;
    await post(`${study}/tiles`, { label: 'T2', firing: other });
    const { status, body } = await get(sheet);
    expect(status).toBe(200);
    expect(body).toMatchObject({ firing: { name: 'F1', fuel: 'Ash' }, lit: null, air: null, readings: [] });
    expect(body.tiles.map((one: { label: string }) => one.label)).toEqual(['T1']);
    expect(body.tiles[0]).toMatchObject({ place: 'front', position: 2 });
    expect(body.tiles[0].zones).toHaveLength(6);
    expect(Object.keys(body).sort()).toEqual(
      ['air', 'answeredAt', 'arrived', 'firing', 'lit', 'logged', 'readings', 'stages', 'tiles'].sort(),
    );
  });

  it('takes lighting, air, readings and judgements, each once however often it is sent', async () => {
    const notes = [
      note(0, { kind: 'lit' }),
      note(4, { kind: 'air', air: 'reducing' }),
      note(30, { kind: 'reading', where: 'by the pot', reading }),
      note(50, { kind: 'air', air: 'oxidising' }),
      note(120, { kind: 'judgement', tile: tile.id, zone: tile.zones[1]!.id, grade: 'glossy' }),
      note(130, { kind: 'out' }),
    ];
    await send(...notes);
    const { status, body } = await send(...notes);
    expect(status).toBe(200);
    expect(body).toMatchObject({ lit: clock(0), air: null });
    expect(body.readings).toMatchObject([{ at: 1800, where: 'by the pot', celsius: 640 }]);
    expect(body.readings[0].bounds.low).toBeLessThan(640);
    expect(body.tiles[0].zones[1].grade).toBe('glossy');
    const kept = (await get(`${study}/firings/${firing}`)).body;
    expect(kept.lit).toBe(clock(0));
    expect(kept.readings).toHaveLength(1);
    expect(kept.stages).toMatchObject([
      { air: 'reducing', from: 240, to: 3000 },
      { air: 'oxidising', from: 3000, to: 7800 },
    ]);
  });

  it('loses nothing when two phones send at once', async () => {
    await send(note(0, { kind: 'lit' }));
    const answers = await Promise.all(
      Array.from({ length: 12 }, (_, i) => send(note(i, { kind: 'reading', where: `${i}`, reading }))),
    );
    expect(answers.map((one) => one.status)).toEqual(Array(12).fill(200));
    const kept = (await get(`${study}/firings/${firing}`)).body;
    expect(new Set(kept.readings.map((one: { where: string }) => one.where)).size).toBe(12);
  });

  it('lets the later judgement of a zone stand, in whatever order the two arrive', async () => {
    const of = (minutes: number, grade: string) =>
      note(minutes, { kind: 'judgement', tile: tile.id, zone: tile.zones[0]!.id, grade });
    await send(of(20, 'satin'));
    const { body } = await send(of(10, 'matt'));
    expect(body.tiles[0].zones[0].grade).toBe('satin');
  });

  it('moves readings and stages when the time of lighting is put right', async () => {
    await send(
      note(0, { kind: 'lit' }),
      note(10, { kind: 'air', air: 'reducing' }),
      note(20, { kind: 'out' }),
      note(30, { kind: 'reading', reading }),
    );
    const { body } = await send(note(-5, { kind: 'lit' }, 40));
    expect(body.readings[0].at).toBe(2100);
    expect(body.stages).toMatchObject([{ from: 900, to: 1500 }]);
  });

  it('refuses, with the reason and changing nothing, what cannot be of this fire', async () => {
    const early = await send(note(5, { kind: 'air', air: 'reducing' }));
    expect(early.status).toBe(422);
    expect(early.body.detail).toContain('needs the time the fire was lit');
    const elsewhere = (await post(`${study}/tiles`, { label: 'T9' })).body;
    const wrong = await send(
      note(0, { kind: 'lit' }),
      note(1, { kind: 'judgement', tile: elsewhere.id, zone: elsewhere.zones[0].id, grade: 'matt' }),
    );
    expect(wrong.status).toBe(404);
    expect((await get(sheet)).body.lit).toBeNull();
    expect((await send(note(0, { kind: 'reading', reading: { ...reading, celsius: 9000 } }))).status).toBe(
      422,
    );
    expect((await get(`${study}/firings/${randomUUID()}/sheet`)).status).toBe(404);
  });
});

describe('a picture taken at the fire', () => {
  const taken = (rest: Record<string, string> = {}, bytes = phoneJpeg()) => {
    const form = new FormData();
    form.set('file', new File([bytes as Uint8Array<ArrayBuffer>], 'fire.jpg'));
    const told = { id: randomUUID(), noted: clock(3), at: clock(3), ...rest };
    for (const [name, value] of Object.entries(told)) form.set(name, value);
    return form;
  };
  const kept = async (of: string) => (await get(`${study}/pictures?${of}`)).body;

  it('is kept of the fire or of a tile, once, without the place it was taken at', async () => {
    const id = randomUUID();
    for (let i = 0; i < 2; i++) expect((await post(`${sheet}/pictures`, taken({ id }))).status).toBe(200);
    const { body } = await post(`${sheet}/pictures`, taken({ tile: tile.id }));
    expect(body.arrived).toContain(id);
    const [one, ...more] = await kept(`firing=${firing}`);
    expect(one).toMatchObject({ type: 'image/jpeg', taken: '2026-03-01', caption: 'Taken at the fire' });
    expect(more).toEqual([]);
    expect(await kept(`tile=${tile.id}`)).toHaveLength(1);
    const file = await used.api.raw(`${study}/pictures/${one.id}/file`);
    expect(Buffer.from(await file.arrayBuffer()).includes(PLACE)).toBe(false);
  });

  it('that is none, or of a tile of another fire, is refused and changes nothing', async () => {
    const none = await post(`${sheet}/pictures`, taken({}, new TextEncoder().encode('not a picture')));
    expect(none.status).toBe(422);
    const away = (await post(`${study}/tiles`, { label: 'T8' })).body.id;
    expect((await post(`${sheet}/pictures`, taken({ tile: away }))).status).toBe(404);
    expect(await kept(`firing=${firing}`)).toEqual([]);
    expect((await get(sheet)).body.arrived).toEqual([]);
  });

  it('arrives by a link to the sheet too', async () => {
    const { token } = (await post(`${study}/shares`, { kind: 'sheet', firing })).body;
    expect((await post(`/api/shared/${token}/sheet/pictures`, taken())).status).toBe(200);
    expect(await kept(`firing=${firing}`)).toHaveLength(1);
  });
});

describe('a link to the sheet', () => {
  const link = async (more: object = {}) =>
    (await post(`${study}/shares`, { kind: 'sheet', firing, ...more })).body as {
      id: string;
      token: string;
      expiresAt: string;
    };
  const at = (token: string) => `/api/shared/${token}/sheet`;

  it('opens that firing alone, and takes its notes, each once', async () => {
    const { token } = await link();
    const seen = await get(at(token));
    expect(seen.body).toMatchObject({ firing: { id: firing, name: 'F1' } });
    expect(JSON.stringify(seen.body)).not.toContain(study.split('/').at(-1));
    const notes = [
      note(0, { kind: 'lit' }),
      note(5, { kind: 'reading', reading }),
      note(9, { kind: 'judgement', tile: tile.id, zone: tile.zones[0]!.id, grade: 'satin' }),
    ];
    await post(`${at(token)}/notes`, notes);
    const { body } = await post(`${at(token)}/notes`, notes);
    expect(body).toMatchObject({ lit: clock(0), readings: [{ at: 300 }] });
    expect((await get(`${study}/tiles/${tile.id}`)).body.zones[0].grade).toBe('satin');
  });

  it('cannot judge a zone of another firing, nor reach anything else', async () => {
    const { token } = await link();
    const other = (await post(`${study}/firings`, { name: 'F2' })).body.id;
    const away = (await post(`${study}/tiles`, { label: 'T2', firing: other })).body;
    const judged = note(1, { kind: 'judgement', tile: away.id, zone: away.zones[0].id, grade: 'matt' });
    expect((await post(`${at(token)}/notes`, [judged])).status).toBe(404);
    const mixed = { ...judged, tile: tile.id };
    expect((await post(`${at(token)}/notes`, [mixed])).status).toBe(404);
    expect((await get(`${study}/tiles/${away.id}`)).body.zones[0].grade).toBeNull();
    expect((await get(`/api/shared/${token}/bundle.zip`)).status).toBe(404);
  });

  it('ends after three days unless told otherwise, and always', async () => {
    const days = (Date.parse((await link()).expiresAt) - Date.now()) / 86_400_000;
    expect(days).toBeGreaterThan(2.9);
    expect(days).toBeLessThanOrEqual(3);
    const far = await post(`${study}/shares`, {
      ...{ kind: 'sheet', firing },
      expiresAt: new Date(Date.now() + 40 * 86_400_000).toISOString(),
    });
    expect(far.status).toBe(422);
    expect(far.body.detail).toContain('a sheet must end within 31 days');
  });

  it('taken back says so, and takes nothing more', async () => {
    const { id, token } = await link();
    expect((await get(`${study}/shares`)).body).toMatchObject([{ kind: 'sheet', name: 'F1', state: 'open' }]);
    await post(`${study}/shares/${id}/revocation`);
    const refused = await post(`${at(token)}/notes`, [note(0, { kind: 'lit' })]);
    expect(refused.status).toBe(410);
    expect(refused.body.detail).toContain('taken it back');
    expect((await get(at(token))).status).toBe(410);
    expect((await get(sheet)).body.lit).toBeNull();
  });

  it('of a firing that was deleted, and of no share at all, opens nothing', async () => {
    const { token } = await link();
    await used.api.delete(`${study}/firings/${firing}`);
    expect((await get(at(token))).status).toBe(404);
    expect((await get(at('no-such-token'))).status).toBe(404);
  });

  it('is reached by the name outside, where the study is not', async () => {
    const { token } = await link();
    const app = createApp({ db: used.database.db, outside: 'https://fire.example.org' });
    const outside = (path: string, init: RequestInit = {}) =>
      app.request(`http://localhost${path}`, {
        ...init,
        headers: { host: 'fire.example.org', 'content-type': 'application/json' },
      });
    expect((await outside(at(token))).status).toBe(200);
    const body = JSON.stringify([note(0, { kind: 'lit' })]);
    expect((await outside(`${at(token)}/notes`, { method: 'POST', body })).status).toBe(200);
    expect((await outside(sheet)).status).toBe(404);
    const health = await app.request('http://localhost/api/health', { headers: { host: 'localhost' } });
    expect(await health.json()).toMatchObject({ outside: 'https://fire.example.org' });
  });
});
