import { once } from 'node:events';
import { createServer, type IncomingMessage, request } from 'node:http';
import { connect } from 'node:net';
import { Readable } from 'node:stream';
import { json as jsonOf } from 'node:stream/consumers';
import { pipeline } from 'node:stream/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { getRequestListener } from '@hono/node-server';
import { beforeEach, describe, expect, it } from 'vitest';
import { createApp } from '../../api/app.ts';
import { IncomingLog } from '../../api/services/log-upload.ts';
import { readPdf, readPng, readSvg } from '../support/read-files.ts';
import { startApi } from '../support/start-api.ts';

const used = startApi();
let study: string;
let firing: string;
beforeEach(async () => {
  study = `/api/studies/${await used.api.newStudy()}`;
  firing = await newFiring('F1');
});
async function newFiring(name: string, over: object = {}): Promise<string> {
  const made = await used.api.post(`${study}/firings`, { name, thresholds: [600, 800], ...over });
  expect(made.status).toBe(201);
  return `${study}/firings/${made.body.id}`;
}
const idOf = (path: string) => path.split('/').at(-1)!;

// biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every shape
type Body = any;
async function send(
  method: 'PUT' | 'POST',
  path: string,
  {
    log,
    ...query
  }: { log: string | Uint8Array<ArrayBuffer>; name?: string; choices?: object; begins?: number },
): Promise<{ status: number; body: Body }> {
  const words = new URLSearchParams();
  for (const [key, value] of Object.entries(query))
    words.set(key, typeof value === 'object' ? JSON.stringify(value) : String(value));
  const answer = await createApp({ db: used.database.db }).request(`http://localhost${path}?${words}`, {
    method,
    body: log,
    headers: { 'content-type': 'text/csv' },
  });
  return { status: answer.status, body: await answer.json() };
}
const put = (log: string | Uint8Array<ArrayBuffer>, more: object = {}, at = firing) =>
  send('PUT', `${at}/log`, { log, ...more });
const preview = (log: string | Uint8Array<ArrayBuffer>, more: object = {}) =>
  send('POST', `${firing}/log/preview`, { log, ...more });

/** 20 °C to 850 °C and back in two hours, a row a minute. */
const shape = (i: number, top = 850) => Math.round(20 + (top - 20) * Math.sin((Math.PI * i) / 120));
const csv = (line: (i: number) => string, heading = 'Time (min),Kiln °C', n = 121) =>
  [heading, ...Array.from({ length: n }, (_, i) => line(i))].join('\n');
const plain = (top = 850) => csv((i) => `${i},${shape(i, top)}`);
const K2 = { kind: 'class', type: 'K', class: 2 };
const KIND = (body: Body) => body.summary.flags.map((flag: { kind: string }) => flag.kind);

describe('a log is looked at before it is read', () => {
  it('with how each column was understood, its first rows and what is in doubt', async () => {
    const { status, body } = await preview(
      csv((i) => `${i},${shape(i)},${shape(i) - 15},88`, 'Time,Top °C,Bottom,Battery (%)'),
    );
    expect(status).toBe(200);
    expect(body).toMatchObject({
      delimiter: ',',
      firstRow: 2,
      rows: 121,
      sample: [['0', '20', '5', '88'], {}, {}, {}, {}],
      time: { kind: 'seconds', columns: [0] },
      channels: [
        { name: 'Top', unit: '°C', sure: true },
        { name: 'Bottom', unit: '°C', sure: false },
      ],
      ignored: [{ heading: 'Battery (%)' }],
      peaks: [{ channel: 'Top', celsius: 850 }, {}],
    });
    expect(body.doubts.join(' ')).toMatch(/taken as seconds.*No unit stands beside Bottom/);
    expect((await used.api.get(firing)).body).toMatchObject({ log: null, summary: null, peak: null });
  });

  it('and flags Fahrenheit marked Celsius until the unit is chosen', async () => {
    const log = csv((i) => `${i},${Math.round(1.8 * shape(i) + 32)}`);
    const { body } = await preview(log);
    expect(body.flags[0]).toMatchObject({ kind: 'fahrenheit', channel: 'Kiln' });
    expect(body.flags[0].message).toContain('read as °F they are 20 °C and 850 °C');
    const channels = [{ column: 1, name: 'Kiln', unit: '°F', sensor: K2 }];
    const chosen = await put(log, { choices: { channels } });
    expect(KIND(chosen.body)).toEqual([]);
    expect(chosen.body.summary.channels[0].peak.value).toBeCloseTo(850, 0);
  });
});

describe('a log whose minutes were written as seconds', () => {
  it('is remarked on before it is read, and no longer once its times are put right', async () => {
    const seconds = csv((i) => `${i},${shape(i)}`, 'Time (s),Kiln °C');
    const { body } = await preview(seconds);
    expect(body.flags.map((one: Body) => one.kind)).toEqual(['too-fast']);
    expect(body.flags[0].message).toMatch(/faster than fires usually heat\. .*so do minutes read as seconds/);
    expect((await used.api.get(firing)).body.log).toBeNull();
    const time = { kind: 'minutes', columns: [0], dateOrder: 'dayFirst' };
    expect((await preview(seconds, { choices: { time } })).body.flags).toEqual([]);
    const kept = await put(seconds);
    expect(kept.body.summary.sentence).toMatch(
      /A sensor put into a hot fire reads so; so do minutes read as seconds/,
    );
  });
});

describe('a log that is read', () => {
  it('gives peak, times above and rates with what the class of its sensor leaves (IEC 60584-1)', async () => {
    const { status, body } = await put(plain(), { name: 'kiln.csv', choices: { sensor: K2 } });
    expect(status).toBe(200);
    expect(body.log).toMatchObject({ fileName: 'kiln.csv', rows: 121, begins: 0, problems: [] });
    expect(body.log.sha256).toMatch(/^[0-9a-f]{64}$/);
    const [kiln] = body.summary.channels;
    // Class 2, type K: ± 0.75 % above 333 °C, so 6.375 °C at 850 °C, and half a degree of reading.
    expect(kiln.peak).toMatchObject({ value: 850, low: 843.125, high: 856.875, seconds: 3540 });
    expect(kiln.tolerance).toContain('IEC 60584-1');
    expect(body.peak).toEqual({ value: 850, low: 843.125, high: 856.875, from: 'log' });
    const [above600, above800] = kiln.timeAbove;
    expect(above600.threshold).toBe(600);
    // By hand: sin x = 580/830 and 780/830 on both sides of the top, 120 minutes for half a turn.
    const minutes = (t: number) => 120 - (240 / Math.PI) * Math.asin((t - 20) / 830);
    expect(above600.seconds.value / 60).toBeCloseTo(minutes(600), 0);
    expect(above800.seconds.value / 60).toBeCloseTo(minutes(800), 0);
    expect(above800.seconds.low).toBeLessThan(above800.seconds.value);
    expect(body.summary.sentence).toMatch(/^Peak 850 ± 7 °C at 0:59 h \(Kiln\)\./);
    expect(body.log.curves[0].points.length).toBeGreaterThan(100);
    const [listed] = (await used.api.get(`${study}/firings`)).body;
    expect(listed.log.curves).toEqual([]);
    expect(listed.peak.value).toBe(850);
  });

  it.each([
    [{ kind: 'class', type: 'N', class: 1 }, 850 * 0.004],
    [{ kind: 'stated', celsius: 10 }, 10],
    [{ kind: 'unknown' }, 0],
  ])('takes the error of its sensor as chosen: %j', async (sensor, off) => {
    const { body } = await put(plain(), { choices: { sensor } });
    expect(body.peak.high - body.peak.value).toBeCloseTo(off + 0.5, 6);
    expect(body.summary.sentence.includes('Nothing is known of the sensor')).toBe(sensor.kind === 'unknown');
  });

  it('answers for temperatures chosen after it was read', async () => {
    await put(plain(), { choices: { sensor: K2 } });
    const { status, body } = await used.api.patch(firing, { thresholds: [840, 700] });
    expect(status).toBe(200);
    const above = body.summary.channels[0].timeAbove;
    expect(above.map((one: Body) => one.threshold)).toEqual([700, 840]);
    expect(above[1].seconds.value).toBeGreaterThan(0);
    expect(above[1].seconds.value).toBeLessThan(above[0].seconds.value);
  });

  it('lies on the fire’s clock where the logger was switched on before', async () => {
    const stages = [{ air: 'reducing', from: 0, to: 1800 }];
    const early = await newFiring('Early', { stages });
    const { body } = await put(plain(), { begins: -1200 }, early);
    expect(body.summary.channels[0].peak.seconds).toBe(2340);
    expect(body.summary.channels[0].stages[0].start.value).toBeCloseTo(shape(20), 0);
    const moved = await used.api.patch(`${early}/log`, { begins: 600 });
    expect(moved.body.summary.channels[0].peak.seconds).toBe(4140);
    expect(moved.body.summary.channels[0].stages[0].start).toBeNull();
  });

  it('replaces the one before, and can be taken off', async () => {
    await put(plain(850), { name: 'a.csv' });
    const second = await put(plain(700), { name: 'b.csv' });
    expect(second.body).toMatchObject({ log: { fileName: 'b.csv' }, peak: { value: 700 } });
    const bare = await used.api.delete(`${firing}/log`);
    expect(bare.body).toMatchObject({ log: null, summary: null, peak: null });
    expect((await used.api.patch(`${firing}/log`, { begins: 0 })).status).toBe(404);
  });

  it('leaves the hottest reading by hand as the peak only where there is no log', async () => {
    const reading = { kind: 'thermocouple', celsius: 900, sensor: K2 };
    const read = await used.api.post(`${firing}/readings`, [{ at: 3600, reading }]);
    expect(read.body.peak).toMatchObject({ value: 900, from: 'reading' });
    expect((await put(plain())).body.peak).toMatchObject({ value: 850, from: 'log' });
  });
});

describe('a log with faults is read, and its faults are said with their rows', () => {
  it('times that repeat, and a clock that changes', async () => {
    const twice = await put(csv((i) => `${i === 10 ? 9 : i},${shape(i)}`));
    expect(twice.body.summary.flags[0]).toMatchObject({ kind: 'duplicate-time', row: 12, count: 1 });
    const back = await put(csv((i) => `${i < 70 ? i : i - 60},${shape(i)}`));
    expect(back.body.summary.flags[0]).toMatchObject({ kind: 'clock-back', row: 72 });
    expect(back.body.summary.flags[0].message).toContain('summer time');
    expect(back.body.summary.duration).toBe(7200);
  });

  it('spikes and gaps, which the curve keeps as marks', async () => {
    const rows = csv((i) => `${i},${i === 30 ? 1500 : shape(i)}`).split('\n');
    const { body } = await put(rows.filter((_, i) => i < 80 || i > 90).join('\n'));
    expect(KIND(body).sort()).toEqual(['gap', 'spike']);
    expect(body.log.curves[0].spikes).toEqual([{ seconds: 1800, celsius: 1500 }]);
    expect(body.log.gaps).toEqual([{ from: 78 * 60, to: 90 * 60 }]);
    expect(body.peak.value).toBe(850);
  });
});

describe('a log that cannot be read is refused, and nothing changes', () => {
  const picture = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]);
  const zip = new Uint8Array([0x50, 0x4b, 3, 4, 20, 0, 0, 0]);
  it.each([
    ['an empty file', '', {}, 'this file is empty'],
    ['a picture', picture, {}, 'this file is a PNG picture'],
    ['a workbook', zip, {}, 'save the log as CSV'],
    ['a letter', 'dear diary\nit was hot\n', {}, 'rows with a time and a temperature'],
    ['choices that are none', plain(), { choices: { sensor: { kind: 'class' } } }, 'choices.sensor'],
    [
      'a channel without a name',
      plain(),
      { choices: { channels: [{ column: 1, name: '', unit: '°C', sensor: K2 }] } },
      'needs a name',
    ],
    [
      'a column that is not there',
      plain(),
      { choices: { time: { kind: 'minutes', columns: [7], dateOrder: 'dayFirst' } } },
      'readable time in most rows',
    ],
  ])('%s', async (_, log, more, words) => {
    const kept = (await put(plain(), { name: 'kept.csv' })).body;
    const refused = await put(log, more);
    expect(refused.status).toBe(422);
    expect(refused.body.detail).toContain(words);
    expect((await preview(log, more)).status).toBe(422);
    expect((await used.api.get(firing)).body).toEqual(kept);
  });

  it('is nobody else’s', async () => {
    const other = await used.api.newStudy('Other');
    const at = `/api/studies/${other}/firings/${idOf(firing)}`;
    expect((await put(plain(), {}, at)).status).toBe(404);
    expect((await used.api.delete(`${at}/log`)).status).toBe(404);
  });
});

describe('firings are compared', () => {
  const compare = (...paths: string[]) =>
    used.api.post(`${study}/firings/comparison`, { firings: paths.map(idOf) });

  it('with rows marked where their bounds lie apart, and curves to lay over one another', async () => {
    const [hot, bare] = [await newFiring('Hot'), await newFiring('Bare')];
    await put(plain(850), { choices: { sensor: K2 } });
    await put(plain(900), { choices: { sensor: K2 } }, hot);
    const { status, body } = await compare(firing, hot, bare);
    expect(status).toBe(200);
    expect(body).toMatchObject({ firings: ['F1', 'Hot'], without: ['Bare'] });
    const row = (quantity: string) => body.rows.find((one: Body) => one.quantity === quantity);
    expect(row('peak')).toMatchObject({ differ: true, values: [{ value: 850 }, { value: 900 }] });
    expect(row('length of the log')).toMatchObject({ differ: null, notJudged: expect.any(String) });
    expect(body.curves.map((one: Body) => one.name)).toEqual(['F1', 'Hot']);
    const near = await newFiring('Near');
    await put(plain(855), { choices: { sensor: K2 } }, near);
    expect((await compare(firing, near)).body.rows[0]).toMatchObject({ quantity: 'peak', differ: false });
  });

  it('as a figure in every form, of those with a log', async () => {
    const hot = await newFiring('Hot <b>');
    await put(plain(850), { choices: { sensor: K2 } });
    await put(plain(900), { choices: { sensor: K2 } }, hot);
    const asked = (...paths: string[]) => `firings=${paths.map(idOf).join(',')}&width=800`;
    const file = async (form: string) => {
      const answer = await used.api.raw(
        `${study}/firings/comparison/figures/compared.${form}?${asked(firing, hot)}`,
      );
      expect(answer.status).toBe(200);
      return Buffer.from(await answer.arrayBuffer());
    };
    const svg = (await file('svg')).toString();
    expect(readSvg(svg).get('svg')).toBe(1);
    expect(svg).toContain('Hot &lt;b&gt;');
    expect((await readPdf(await file('pdf'))).text).toContain('Hot <b>');
    expect(readPng(await file('png')).width).toBe(800);
    const alone = await used.api.get(
      `${study}/firings/comparison/figures/compared.svg?${asked(firing, await newFiring('Bare'))}`,
    );
    expect(alone.body.detail).toContain('two firings with a log; found 1');
  });

  it('needs two with a log, and at most twenty', async () => {
    const bare = await newFiring('Bare');
    await put(plain());
    expect((await compare(firing, bare)).body.detail).toContain('two firings with a log; found 1');
    expect((await compare(firing, firing)).status).toBe(422);
    expect((await compare(firing)).body.detail).toContain('at least two firings');
    expect((await compare(...Array.from({ length: 21 }, () => firing))).status).toBe(422);
  });
});

describe('the demo study', () => {
  it('has an invented log of each firing, with what a newcomer should see', async () => {
    const { id } = (await used.api.post('/api/demo')).body;
    const listed = (await used.api.get(`/api/studies/${id}/firings`)).body as Body[];
    expect(listed.map((one) => one.log.fileName)).toEqual(['firing-1-invented.csv', 'firing-2-invented.csv']);
    for (const one of listed) {
      expect(one.log.channels.map((c: Body) => c.name)).toEqual(['Beside the pot', 'Edge of the pit']);
      expect(one.log.problems).toEqual([]);
      expect(one.peak.value).toBeGreaterThan(800);
      expect(one.peak.value).toBeLessThan(870);
      // The log and the readings by hand tell of the same fire.
      const hottest = Math.max(...one.readings.map((r: Body) => r.reading.celsius));
      expect(Math.abs(one.peak.value - hottest)).toBeLessThan(20);
    }
    expect(KIND(listed[0]).sort()).toEqual(['gap', 'spike']);
    const found = (await used.api.get(`/api/studies/${id}/trials/factors`)).body as Body[];
    expect(found.find((one) => one.factor.name === 'peak temperature')?.values).toHaveLength(2);
  });
});

describe('the heat of firings as a factor of the trial', () => {
  const tile = (label: string, at: string) =>
    used.api.post(`${study}/tiles`, {
      ...{ label, rows: 1, columns: 4, firing: idOf(at) },
      zones: [1, 2, 3, 4].map((coats) => ({
        ...{ label: `${'ABCD'[coats - 1]}1`, row: 1, column: coats, coats },
        grade: coats > 2 ? 'glossy' : 'matt',
      })),
    });
  const factors = async () => (await used.api.get(`${study}/trials/factors`)).body as Body[];
  const named = (all: Body[], name: string) => all.find((one) => one.factor.name === name);

  it('is there once two firings have it, with its unit, compared between firings and never within them', async () => {
    const [second, bare] = [await newFiring('F2'), await newFiring('F3')];
    await put(plain(850));
    for (const [i, at] of [firing, second, bare].entries()) await tile(`T${i + 1}`, at);
    expect(named(await factors(), 'peak temperature')).toBeUndefined();
    const sensor = { kind: 'unknown' };
    const reading = { at: 60, reading: { kind: 'thermocouple', celsius: 900, sensor } };
    await used.api.post(`${second}/readings`, [reading]);
    const byHand = named(await factors(), 'peak temperature');
    expect(byHand).toMatchObject({ factor: { kind: 'number', unit: '°C', step: 10 }, values: [850, 900] });
    expect(byHand).toMatchObject({ zones: 8, from: 'firing' });
    expect(byHand.notes.join(' ')).toMatch(
      /cannot be told apart from everything else.*F3: no log or reading.*F2: the hottest reading by hand/,
    );
    expect(named(await factors(), 'time above 800 °C')).toBeUndefined();
    await put(plain(900), {}, second);
    const found = await factors();
    expect(named(found, 'time above 800 °C')).toMatchObject({ factor: { unit: 'min' }, from: 'firing' });
    const chosen = ['coats', 'peak temperature'].map((name) => named(found, name).factor);
    const { body } = await used.api.post(`${study}/trials/analysis`, { factors: chosen });
    expect(body.zones).toBe(8);
    expect(body.leftOut).toHaveLength(4);
    expect(JSON.stringify(body.leftOut[0])).toContain('peak temperature not noted');
    const units = body.effects.map((one: Body) => [one.factor, one.unitOfChange]);
    expect(units).toEqual([
      ['coats', 'zone'],
      ['peak temperature', 'firing'],
    ]);
    expect(body.effects[1].verdict).toBe('cannot tell');
    expect(body.effects[1].cautions.join(' ')).toContain('everything else that differed between them');
  });

  it('is a time above the same temperature: what only one firing was asked for is left out', async () => {
    const second = await newFiring('F2', { thresholds: [700, 800] });
    for (const [i, at] of [firing, second].entries()) {
      await put(plain(840 + 20 * i), {}, at);
      await tile(`T${i}`, at);
    }
    const names = (await factors()).map((one) => one.factor.name).filter((name: string) => /time/.test(name));
    expect(names).toEqual(['time above 800 °C']);
  });
});

/** Bytes held beside the heap, once what nobody needs is gone. */
function held(): number {
  setFlagsFromString('--expose-gc');
  runInNewContext('gc')();
  return process.memoryUsage().arrayBuffers;
}

/** A service on a socket, in this process. */
async function listening() {
  const server = createServer(getRequestListener(createApp({ db: used.database.db }).fetch));
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  const close = () => {
    server.closeAllConnections();
    return new Promise((resolve) => server.close(resolve));
  };
  return { port, address: `http://127.0.0.1:${port}`, close };
}

describe('a log comes in over HTTP', () => {
  const ROWS = 2_000_000;
  const PART = 4000;
  /** One peak, two rows wide, that thinning must not lose. */
  const rowOf = (i: number) => {
    const celsius = i === 1_000_123 || i === 1_000_124 ? 871 : 20 + 800 * Math.sin((Math.PI * i) / ROWS);
    return `${i},${celsius.toFixed(1)},some words of the logger\n`;
  };

  it('two million rows are read as they stream, never held, and others are answered meanwhile', async () => {
    const service = await listening();
    let [parts, most, answered, reading] = [0, 0, 0, true];
    const before = held();
    function* log() {
      yield 'Time (s),Kiln °C,Note\n';
      for (; parts * PART < ROWS; parts++) {
        if (parts % 50 === 0) most = Math.max(most, held());
        yield Array.from({ length: PART }, (_, k) => rowOf(parts * PART + k)).join('');
      }
    }
    const others = (async () => {
      while (reading) {
        const { status } = await fetch(`${service.address}/api/health`);
        if (status === 200 && reading) answered++;
      }
    })();
    // Not by fetch, whose own end of a stream keeps what it has sent.
    const asked = request(`${service.address}${firing}/log`, { method: 'PUT' });
    const answering = once(asked, 'response') as Promise<[IncomingMessage]>;
    await pipeline(Readable.from(log()), asked);
    const [answer] = await answering;
    reading = false;
    const told = (await jsonOf(answer)) as Body;
    await others;
    await service.close();
    expect(answer.statusCode).toBe(200);
    expect(told.log.rows).toBe(ROWS);
    expect(told.log.bytes).toBeGreaterThan(60_000_000);
    expect(told.log.curves[0].points.length).toBeLessThan(2100);
    expect(told.peak.value).toBe(871);
    expect(Math.max(...told.log.curves[0].points.map((p: Body) => p.celsius))).toBe(871);
    expect(parts).toBe(500);
    expect(most - before).toBeLessThan(20_000_000);
    expect(answered).toBeGreaterThan(20);
  });

  it('one that is broken off changes nothing', async () => {
    const kept = (await put(plain(), { name: 'kept.csv' })).body;
    const service = await listening();
    const socket = connect(service.port, '127.0.0.1');
    await once(socket, 'connect');
    const head = `PUT ${firing}/log HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: text/csv\r\n`;
    socket.write(`${head}Content-Length: 1000000\r\n\r\n${plain(700)}`);
    await fetch(`${service.address}/api/health`);
    socket.destroy();
    await once(socket, 'close');
    await fetch(`${service.address}/api/health`);
    expect((await used.api.get(firing)).body).toEqual(kept);
    await service.close();
    expect((await used.api.get(firing)).body).toEqual(kept);
  });

  it('one that is too large is refused by its announced length, and by its own where none is announced', async () => {
    const announced = await createApp({ db: used.database.db }).request(`http://localhost${firing}/log`, {
      method: 'PUT',
      body: plain(),
      headers: { 'content-type': 'text/csv', 'content-length': '300000000' },
    });
    expect(announced.status).toBe(413);
    expect(((await announced.json()) as Body).detail).toContain('a log must have at most 200 MB');
    const part = new Uint8Array(1024 * 1024);
    const endless = new ReadableStream<Uint8Array>({ pull: (stream) => stream.enqueue(part) });
    const reading = async () => {
      for await (const _ of new IncomingLog(endless).read());
    };
    await expect(reading()).rejects.toThrow('at most 200 MB; this one has more');
    expect((await used.api.get(firing)).body.log).toBeNull();
  });
});
