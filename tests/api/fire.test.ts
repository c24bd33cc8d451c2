import { beforeEach, describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
beforeEach(async () => {
  study = `/api/studies/${await used.api.newStudy()}`;
});
const post = (path: string, body: unknown) => used.api.post(`${study}${path}`, body);
const get = (path: string) => used.api.get(`${study}${path}`);
const patch = (path: string, body: unknown) => used.api.patch(`${study}${path}`, body);
const NOBODY = '6f9b1d3e-3c0b-4c53-9a55-0d4f2f6c2f11';

/** A tile of four zones, thicker to the right. */
const ladder = (label: string, over: object = {}) => ({
  label,
  rows: 1,
  columns: 4,
  zones: [1, 2, 3, 4].map((coats) => ({
    ...{ label: `${'ABCD'[coats - 1]}1`, row: 1, column: coats, coats },
    grade: coats > 2 ? 'glossy' : 'matt',
  })),
  ...over,
});

describe('firings', () => {
  const fire = { name: 'F1', date: '2026-02', fuel: 'Ash wood', weather: 'Dry' };

  it('keep date, fuel, weather and stages of air, and change', async () => {
    const stages = [{ air: 'reducing', from: 0, to: 3000 }];
    const made = await post('/firings', { ...fire, stages });
    expect(made).toMatchObject({
      status: 201,
      body: { name: 'F1', date: '2026-02', stages: [{ air: 'reducing', to: 3000, note: null }] },
    });
    const changed = await patch(`/firings/${made.body.id}`, { weather: 'Wet' });
    expect(changed.body).toMatchObject({ fuel: 'Ash wood', weather: 'Wet' });
    const reading = {
      at: 1800,
      where: 'by the pot',
      reading: { kind: 'thermocouple', celsius: 640, sensor: { kind: 'unknown' } },
    };
    await post(`/firings/${made.body.id}/readings`, [reading]);
    const read = await post(`/firings/${made.body.id}/readings`, [{ ...reading, at: 3600 }]);
    expect(read.body.readings).toMatchObject([
      { at: 1800, reading: { celsius: 640, resolution: 1 } },
      { at: 3600 },
    ]);
    // Nothing known of the sensor: half a step of the last digit is all that can be said.
    expect(read.body.readings[0].bounds).toEqual({ value: 640, low: 639.5, high: 640.5 });
    const sensor = { kind: 'class', type: 'K', class: 2 };
    const known = await post(`/firings/${made.body.id}/readings`, [
      { reading: { kind: 'thermocouple', celsius: 800, sensor } },
    ]);
    // IEC 60584-1, type K class 2: 0.0075 of the reading above 333 °C, so 6 °C at 800 °C; half a degree of reading.
    const { low, high } = known.body.readings[2].bounds;
    expect([800 - low, high - 800].every((off) => off >= 6 && off <= 6.6)).toBe(true);
    expect((await get('/firings')).body).toHaveLength(1);
    expect((await post('/firings', fire)).status).toBe(409);
  });

  it.each([
    [{ name: '' }, 'at least one character'],
    [{ date: '2026-2' }, 'YYYY-MM-DD'],
    [{ thresholds: [5000] }, 'at most 1800'],
    [{ stages: [{ air: 'thick', from: 0, to: 1 }] }, 'stages.0.air'],
    [{ stages: [0, 5].map((from) => ({ air: 'reducing', from, to: 60 })) }, 'stage'],
  ])('refuse %j', async (over, words) => {
    const refused = await post('/firings', { ...fire, ...over });
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(words);
  });

  it('leave their tiles when deleted, and are nobody else’s', async () => {
    const { id } = (await post('/firings', fire)).body;
    const tile = (await post('/tiles', ladder('T1', { firing: id }))).body;
    expect(tile).toMatchObject({ firing: id, firingName: 'F1' });
    expect((await get(`/firings/${id}`)).body.tiles).toEqual([tile.id]);
    const other = await used.api.newStudy('Other');
    expect((await used.api.get(`/api/studies/${other}/firings/${id}`)).status).toBe(404);
    expect((await used.api.delete(`${study}/firings/${id}`)).status).toBe(204);
    expect((await get(`/tiles/${tile.id}`)).body.firing).toBeNull();
  });
});

describe('tiles', () => {
  it('are new replicas, or zones on one that is there; a grid is laid out where none is given', async () => {
    const made = await post('/tiles', { label: 'T1', rows: 2, columns: 2 });
    expect(made.status).toBe(201);
    expect(made.body.zones.map((zone: { label: string }) => zone.label)).toEqual(['A1', 'B1', 'A2', 'B2']);
    const replica = (await post('/specimens', { label: 'R', kind: 'replica' })).body.id;
    expect((await post('/tiles', { specimen: replica })).body).toMatchObject({ id: replica, label: 'R' });
    expect((await post('/tiles', { specimen: replica })).status).toBe(409);
    expect((await post('/tiles', { label: 'T1' })).status).toBe(409);
    expect((await get('/tiles')).body).toHaveLength(2);
  });

  it('keep a zone’s id when zones are put anew, and take what was seen zone by zone', async () => {
    const tile = (await post('/tiles', ladder('T1'))).body;
    const [first] = tile.zones;
    const zones = ladder('T1').zones.map((zone) => ({ ...zone, colour: 'black' }));
    const again = (await patch(`/tiles/${tile.id}`, { zones })).body;
    expect(again.zones[0]).toMatchObject({ id: first.id, colour: 'black' });
    const seen = await patch(`/tiles/${tile.id}/zones/${first.id}`, { grade: 'satin', glassyShare: 0.4 });
    expect(seen.body.zones[0]).toMatchObject({ grade: 'satin', glassyShare: 0.4, colour: 'black' });
  });

  it.each([
    [{ zones: [{ label: 'A1', row: 1, column: 9 }] }, 'must lie on the tile'],
    [{ zones: [1, 2].map((column) => ({ label: 'A1', row: 1, column })) }, 'A1 is there twice'],
    [{ zones: [{ label: 'A1', row: 1, column: 1, glassyShare: 30 }] }, 'a share is 0 to 1'],
    [{ zones: [{ label: 'A1', row: 1, column: 1, grade: 'shiny' }] }, 'zones.0.grade'],
    [{ rows: 40 }, 'rows'],
    [{ specimen: NOBODY }, 'either a replica that is there or a label'],
  ])('refuse %j', async (over, words) => {
    const refused = await post('/tiles', ladder('T1', over));
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(words);
    expect((await get('/specimens')).body.total).toBe(0);
  });

  it('refuse a sherd, a stranger’s firing and a zone of another tile', async () => {
    const sherd = (await post('/specimens', { label: 'S', kind: 'sherd' })).body.id;
    expect((await post('/tiles', { specimen: sherd })).body.detail).toContain('this specimen is a sherd');
    expect((await post('/tiles', ladder('T', { firing: NOBODY }))).status).toBe(404);
    const [one, two] = [(await post('/tiles', ladder('T1'))).body, (await post('/tiles', ladder('T2'))).body];
    expect((await patch(`/tiles/${one.id}/zones/${two.zones[0].id}`, { grade: 'matt' })).status).toBe(404);
  });

  it('give up their zones and stay replicas', async () => {
    const tile = (await post('/tiles', ladder('T1'))).body;
    expect((await used.api.delete(`${study}/tiles/${tile.id}`)).status).toBe(204);
    expect((await get(`/specimens/${tile.id}`)).body.kind).toBe('replica');
  });
});

describe('what mattered', () => {
  const coats = { name: 'coats', kind: 'number', unit: 'coats', step: 1 };

  it('names thickness with its interval, and the factor that never varied', async () => {
    for (const label of ['T1', 'T2', 'T3'])
      await post('/tiles', ladder(label, { settings: { air: 'open' } }));
    const found = (await get('/trials/factors')).body;
    expect(found.map((one: { factor: { name: string } }) => one.factor.name)).toEqual(['coats', 'air']);
    const factors = found.map((one: { factor: object }) => one.factor);
    const { status, body } = await post('/trials/analysis', { factors });
    expect(status).toBe(200);
    expect(body).toMatchObject({ zones: 12, tiles: 3, counts: { matt: 6, satin: 0, glossy: 6 } });
    expect(body.effects[0]).toMatchObject({ factor: 'coats', verdict: 'matters', separated: true });
    expect(body.effects[0].low).toBeGreaterThan(0);
    expect(body.sentence).toContain('coats made a difference');
    expect(body.tangles[0].sentence).toContain('air was open in every zone');
  });

  it('predicts the chance against a factor, with the zones it rests on', async () => {
    for (const label of ['T1', 'T2', 'T3']) await post('/tiles', ladder(label));
    const { status, body } = await post('/trials/chance', { factors: [coats], against: 'coats' });
    expect(status).toBe(200);
    const { points } = body;
    expect(points[0].chance).toBeLessThan(0.3);
    expect(points.at(-1).chance).toBeGreaterThan(0.7);
    expect(
      points.every(
        (p: { low: number; chance: number; high: number }) => p.low <= p.chance && p.chance <= p.high,
      ),
    ).toBe(true);
    expect(body.data).toHaveLength(12);
  });

  it('says what it needs where nothing can be analysed', async () => {
    const refused = await post('/trials/analysis', { factors: [coats] });
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain('needs zones with an outcome');
    expect((await post('/trials/analysis', { factors: [] })).body.detail).toContain('at least one factor');
    const { id } = (await post('/tiles', ladder('T1'))).body;
    expect((await post('/trials/analysis', { factors: [coats], tiles: [id, NOBODY] })).status).toBe(422);
  });
});

describe('plans', () => {
  const request = {
    kind: 'ladder',
    factors: [{ name: 'coats', unit: 'coats', at: 'zone', levels: [1, 2, 3, 4] }],
    ...{ tiles: 2, rows: 2, columns: 2, seed: 7 },
  };

  it('are drawn up at random by their seed and become tiles', async () => {
    const made = await post('/plans', { name: 'Ladder', request });
    expect(made.status).toBe(201);
    const { tiles } = made.body.plan;
    const again = (await post('/plans', { name: 'Again', request })).body.plan.tiles;
    expect(again).toEqual(tiles);
    for (const tile of tiles)
      expect(tile.zones.map((z: { settings: { coats: number } }) => z.settings.coats).sort()).toEqual([
        1, 2, 3, 4,
      ]);
    const { status, body } = await post(`/plans/${made.body.id}/tiles`, { prefix: 'L' });
    expect(status).toBe(201);
    expect(body.map((tile: { label: string }) => tile.label)).toEqual(
      tiles.map((t: { label: string }) => `L${t.label}`),
    );
    expect(body[0].zones[0]).toMatchObject({
      coats: tiles[0].zones[0].settings.coats,
      settings: {},
      grade: null,
    });
    expect((await post(`/plans/${made.body.id}/tiles`, { prefix: 'L' })).status).toBe(409);
    expect((await get('/tiles')).body).toHaveLength(2);
  });

  it('keep the place drawn by lot as the tile’s position: only a place that somebody named is a factor', async () => {
    const name = (one: { factor: { name: string } }) => one.factor.name;
    const made = await post('/plans', { name: 'Ladder', request });
    const { body } = await post(`/plans/${made.body.id}/tiles`, { prefix: 'L' });
    const drawn = made.body.plan.tiles.map((tile: { place: string }) => Number(tile.place));
    expect([...drawn].sort()).toEqual([1, 2]);
    expect(body.map((tile: { position: number }) => tile.position)).toEqual(drawn);
    expect((await get('/trials/factors')).body.map(name)).toEqual(['coats']);
    const said = (await patch(`/tiles/${body[0].id}`, { place: 'front' })).body;
    expect(said).toMatchObject({ place: 'front', position: drawn[0] });
    expect((await get('/trials/factors')).body.map(name)).toEqual(['coats', 'place in the fire']);
    const named = { ...request, places: ['front', 'back'] };
    const shelf = await post('/plans', { name: 'Shelf', request: named });
    const tiles = (await post(`/plans/${shelf.body.id}/tiles`, { prefix: 'S' })).body;
    expect(tiles.map((tile: { place: string }) => tile.place).sort()).toEqual(['back', 'front']);
    expect(tiles.map((tile: { position: null }) => tile.position)).toEqual([null, null]);
  });

  it('refuse more than the tiles hold, and neither one nor the other', async () => {
    const crowded = await post('/plans', { name: 'P', request: { ...request, rows: 1, columns: 2 } });
    expect(crowded.status).toBe(422);
    expect((await post('/plans', { name: 'P' })).body.detail).toContain(
      'either a request or an accepted tile',
    );
  });
});

describe('the next tile', () => {
  const wish = {
    factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }],
    options: [{ name: 'coats', at: 'zone', values: [1, 2, 3, 4] }],
    zonesOnTile: 4,
  };

  it('is suggested with its reason and what it would narrow, and becomes a plan and a tile', async () => {
    for (const label of ['T1', 'T2']) await post('/tiles', ladder(label));
    const { status, body } = await post('/trials/next', wish);
    expect(status).toBe(200);
    expect(body.zones).toHaveLength(4);
    expect(body.shrinkage[0].expected).toBeLessThan(body.shrinkage[0].now);
    expect(body.gain).toBeGreaterThan(0);
    const plan = await post('/plans', { name: 'Next', accepted: { tile: body, seed: 3 } });
    expect(plan).toMatchObject({ status: 201, body: { reason: body.reason, plan: { kind: 'next-tile' } } });
    const made = (await post(`/plans/${plan.body.id}/tiles`, { prefix: 'N-' })).body;
    const coats = (zones: { coats: number }[]) => zones.map((zone) => zone.coats).sort();
    expect(coats(made[0].zones)).toEqual(coats(body.zones));
  });

  it('says what it needs', async () => {
    await post('/tiles', ladder('T1'));
    expect((await post('/trials/next', { ...wish, options: [] })).body.detail).toContain(
      'at least one factor',
    );
    const share = await post('/trials/next', { ...wish, outcome: 'share' });
    expect(share.status).toBe(422);
    expect(share.body.detail).toContain('needs gloss grades');
  });
});

describe('the notebook', () => {
  it('puts everything on one line of time, found by its words and saved as a table', async () => {
    const { id } = (await post('/firings', { name: 'F1', date: '2026-02-21', fuel: 'Ash wood' })).body;
    await post('/tiles', ladder('T1', { firing: id }));
    await post('/batches', { name: 'Mix', lines: [{ material: 'quartz', amount: 1 }] });
    const entries = (await get('/notebook')).body;
    expect(entries.map((one: { kind: string }) => one.kind).sort()).toEqual(['batch', 'firing', 'tile']);
    const dates = entries.map((one: { date: string }) => one.date);
    expect(dates).toEqual([...dates].sort().reverse());
    const found = (await get('/notebook?search=ash%20fuel')).body;
    expect(found).toMatchObject([{ title: 'F1', dated: true, date: '2026-02-21' }]);
    expect((await get('/notebook?kind=tile')).body[0].text).toContain('2 matt, 2 glossy');
    const table = await get('/notebook.csv');
    expect(table.headers.get('content-disposition')).toContain('notebook.csv');
    expect(table.text).toContain('2026-02-21,noted');
  });
});

describe('the demo study', () => {
  it('leads from its question to what mattered: thickness', async () => {
    const { id } = (await used.api.post('/api/demo')).body;
    study = `/api/studies/${id}`;
    const tiles = (await get('/tiles')).body;
    expect(tiles).toHaveLength(9);
    expect(tiles.every((tile: { firingName: string }) => /invented/.test(tile.firingName))).toBe(true);
    const found = (await get('/trials/factors')).body;
    const factors = found
      .map((one: { factor: { name: string } }) => one.factor)
      .filter((one: { name: string }) => ['coats', 'lead roast'].includes(one.name));
    const { status, body } = await post('/trials/analysis', { factors });
    expect(status).toBe(200);
    expect(body.zones).toBe(54);
    const thick = body.effects.find((one: { factor: string }) => one.factor === 'coats');
    expect(thick).toMatchObject({ verdict: 'matters', unitOfChange: 'zone' });
    expect(thick.low).toBeGreaterThan(0);
  });
});
