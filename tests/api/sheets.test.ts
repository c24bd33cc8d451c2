import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, it } from 'vitest';
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
  tile = (await post(`${study}/tiles`, { label: 'T1', firing })).body;
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
    expect(body.tiles[0].zones).toHaveLength(6);
    expect(Object.keys(body).sort()).toEqual(
      ['air', 'answeredAt', 'arrived', 'firing', 'lit', 'readings', 'stages', 'tiles'].sort(),
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

  it('keeps its notes apart when the firing’s readings are edited: a note sent again stays away', async () => {
    const again = note(30, { kind: 'reading', reading });
    await send(note(0, { kind: 'lit' }), again);
    await used.api.patch(`${study}/firings/${firing}`, { readings: [] });
    const { body } = await send(again);
    expect(body.readings).toEqual([]);
    expect(body.lit).toBe(clock(0));
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
