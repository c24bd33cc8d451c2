import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { eq, sql } from 'drizzle-orm';
import { beforeEach, describe, expect, it } from 'vitest';
import { firing as table } from '../../db/schema/schema.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
let firing: string;
let id: string;
beforeEach(async () => {
  study = `/api/studies/${await used.api.newStudy(`Marl ${randomUUID()}`)}`;
  id = (await used.api.post(`${study}/firings`, { name: 'F1' })).body.id;
  firing = `${study}/firings/${id}`;
});

const START = Date.parse('2026-03-01T10:00:00Z');
const clock = (minutes: number) => new Date(START + 60_000 * minutes).toISOString();
const note = (minutes: number, rest: object) => ({
  ...{ id: randomUUID(), noted: clock(minutes), at: clock(minutes) },
  ...rest,
});
const send = (...notes: object[]) => used.api.post(`${firing}/sheet/notes`, notes);
const reading = (celsius: number) => ({ kind: 'thermocouple', celsius, sensor: { kind: 'unknown' } });
const byHand = (...celsius: number[]) =>
  used.api.post(
    `${firing}/readings`,
    celsius.map((one) => ({ at: 600, reading: reading(one) })),
  );
const now = async () => (await used.api.get(firing)).body;
const shown = (body: { readings: { reading: { celsius: number } }[] }) =>
  body.readings.map((one) => one.reading.celsius);

describe('a reading by hand is taken off', () => {
  it('alone, though others are exactly alike', async () => {
    const { body } = await byHand(640, 640, 700);
    const ids = body.readings.map((one: { id: string }) => one.id);
    expect(new Set(ids).size).toBe(3);
    const left = await used.api.delete(`${firing}/readings/${ids[1]}`);
    expect(left.status).toBe(200);
    expect(left.body.readings.map((one: { id: string }) => one.id)).toEqual([ids[0], ids[2]]);
    expect(left.body.peak).toMatchObject({ value: 700, from: 'reading' });
  });

  it('once: who comes second is told, and takes off no other', async () => {
    const { body } = await byHand(640, 640);
    const at = `${firing}/readings/${body.readings[0].id}`;
    const both = await Promise.all([used.api.delete(at), used.api.delete(at)]);
    expect(both.map((one) => one.status).sort()).toEqual([200, 409]);
    const refused = both.find((one) => one.status === 409)!;
    expect(refused.headers.get('content-type')).toContain('application/problem+json');
    expect(refused.body.detail).toContain('must still be there; this one is not');
    expect(shown(await now())).toEqual([640]);
  });

  it('for good: the note it came by, sent again, does not bring it back', async () => {
    const noted = note(30, { kind: 'reading', where: 'pot', reading: reading(640) });
    await send(note(0, { kind: 'lit' }), noted);
    expect((await now()).readings[0].id).toBe(noted.id);
    await used.api.delete(`${firing}/readings/${noted.id}`);
    const again = await send(noted, note(31, { kind: 'reading', reading: reading(700) }));
    expect(again.body.readings.map((one: { celsius: number }) => one.celsius)).toEqual([700]);
    expect(again.body.arrived).toContain(noted.id);
    expect((await now()).lit).toBe(clock(0));
  });

  it('while phones send others, which all stay, and with the minute that a moved lighting gave it', async () => {
    const noted = note(30, { kind: 'reading', reading: reading(640) });
    await send(note(0, { kind: 'lit' }), noted);
    await send({ ...note(-10, { kind: 'lit' }), noted: clock(40) });
    const [off] = await Promise.all([
      used.api.delete(`${firing}/readings/${noted.id}`),
      ...[701, 702, 703].map((celsius) => send(note(50, { kind: 'reading', reading: reading(celsius) }))),
    ]);
    expect(off.status).toBe(200);
    expect(shown(await now()).sort()).toEqual([701, 702, 703]);
  });

  it('only of its own firing and study', async () => {
    const { body } = await byHand(640);
    const other = (await used.api.post(`${study}/firings`, { name: 'F2' })).body.id;
    const path = `readings/${body.readings[0].id}`;
    expect((await used.api.delete(`${study}/firings/${other}/${path}`)).status).toBe(409);
    const stranger = `/api/studies/${await used.api.newStudy('Other')}`;
    expect((await used.api.delete(`${stranger}/firings/${id}/${path}`)).status).toBe(404);
    expect((await used.api.delete(`${firing}/readings/first`)).status).toBe(422);
    expect(shown(await now())).toEqual([640]);
  });

  it('also where it was kept before readings had ids, which the migration gives them', async () => {
    await send(note(0, { kind: 'lit' }));
    await byHand(640, 640);
    const { db } = used.database;
    const bare = sql`(SELECT jsonb_agg(one - 'id') FROM jsonb_array_elements(${table.readings}) AS kept(one))`;
    await db.update(table).set({ readings: bare }).where(eq(table.id, id));
    expect((await now()).readings[0].id).toBeUndefined();
    await db.execute(sql.raw(readFileSync('db/migrations/0006_reading_ids.sql', 'utf8')));
    const { readings, lit } = await now();
    expect(lit).toBe(clock(0));
    expect(new Set(readings.map((one: { id: string }) => one.id)).size).toBe(2);
    expect((await used.api.delete(`${firing}/readings/${readings[1].id}`)).body.readings).toEqual([
      readings[0],
    ]);
  });
});

describe('what stands about a firing is changed', () => {
  it('without the readings that a phone sent meanwhile, which it can neither drop nor replace', async () => {
    await send(note(0, { kind: 'lit' }), note(30, { kind: 'reading', reading: reading(640) }));
    const refused = await used.api.patch(firing, { weather: 'Wet', readings: [] });
    expect(refused.status).toBe(422);
    expect((await now()).weather).toBe('');
    expect((await used.api.patch(firing, { weather: 'Wet' })).body).toMatchObject({
      weather: 'Wet',
      lit: clock(0),
    });
    expect(shown(await now())).toEqual([640]);
  });

  it('without the stages that a phone noted meanwhile, unless they are sent', async () => {
    const before = await now();
    await send(
      note(0, { kind: 'lit' }),
      note(5, { kind: 'air', air: 'reducing' }),
      note(50, { kind: 'out' }),
    );
    const changed = await used.api.patch(firing, { name: before.name, note: 'Windy' });
    expect(changed.body.stages).toMatchObject([{ air: 'reducing', from: 300, to: 3000 }]);
  });

  it('with stages refused where others than those seen are there, and nothing changes', async () => {
    const { stages: seen } = await now();
    await send(
      note(0, { kind: 'lit' }),
      note(5, { kind: 'air', air: 'reducing' }),
      note(50, { kind: 'out' }),
    );
    const mine = [{ air: 'oxidising', from: 0, to: 7200, note: null }];
    const refused = await used.api.patch(firing, { weather: 'Wet', stages: mine, stagesWere: seen });
    expect(refused.status).toBe(409);
    expect(refused.headers.get('content-type')).toContain('application/problem+json');
    expect(refused.body.detail).toContain('They are now: reducing from 0:05 to 0:50 h.');
    const kept = await now();
    expect(kept).toMatchObject({ weather: '', stages: [{ air: 'reducing' }] });
    const settled = await used.api.patch(firing, { stages: mine, stagesWere: kept.stages });
    expect(settled.body.stages).toEqual(mine);
  });

  it('with a tapped stage back that one written by hand hid, and one taken out left out for good', async () => {
    const stage = (air: string, from: number, to: number) => ({ air, from, to, note: null });
    await used.api.patch(firing, { stages: [stage('oxidising', 2000, 4000)] });
    await send(
      note(0, { kind: 'lit' }),
      note(5, { kind: 'air', air: 'reducing' }),
      note(50, { kind: 'out' }),
    );
    const tapped = stage('reducing', 300, 3000);
    const later = stage('oxidising', 3000, 4000);
    expect((await used.api.patch(firing, { stages: [later] })).body.stages).toEqual([tapped, later]);
    expect((await used.api.patch(firing, { stages: [later] })).body).toMatchObject({
      ...{ stages: [later], lit: clock(0) },
    });
    await send(note(3, { kind: 'air', air: 'reducing' }));
    expect((await now()).stages).toEqual([later]);
  });
});

describe('the last air tapped without its end', () => {
  it('is told with its beginning, in words below the curve, and is a stage once its end is noted', async () => {
    await send(note(0, { kind: 'lit' }), note(310, { kind: 'air', air: 'smothered' }));
    await byHand(640);
    expect(await now()).toMatchObject({ stages: [], open: { air: 'smothered', from: 18_600 } });
    const words = await used.api.get(`${firing}/text`);
    expect(JSON.stringify(words.body)).toContain('Not drawn: smothered from 5:10 h, its end not noted.');
    await send({ ...note(540, { kind: 'out' }), noted: clock(3000) });
    expect(await now()).toMatchObject({
      open: null,
      stages: [{ air: 'smothered', from: 18_600, to: 32_400 }],
    });
  });
});
