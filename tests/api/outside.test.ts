import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gunzipSync } from 'node:zlib';
import { createAdaptorServer } from '@hono/node-server';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../api/app.ts';
import { readEnvironment } from '../../api/env.ts';
import { startApi } from '../support/start-api.ts';

const NAME = 'shares.example.org';
const used = startApi();
let app: ReturnType<typeof createApp>;
let study: string;
let token: string;
const outside = (path: string, init: RequestInit & { host?: string } = {}) =>
  app.request(`http://localhost:8470${path}`, { ...init, headers: { host: NAME, ...init.headers } });
const json = { 'content-type': 'application/json' };

beforeAll(async () => {
  app = createApp({ db: used.database.db, outside: `https://${NAME}` });
  study = (await used.api.post('/api/demo')).body.id;
  const groups = (await used.api.get(`/api/studies/${study}/groups`)).body.map(
    (one: { id: string }) => one.id,
  );
  const wish = { name: 'For the museum', comparison: { settings: { groups } } };
  const { id } = (await used.api.post(`/api/studies/${study}/placements`, wish)).body;
  const made = await app.request(`http://localhost/api/studies/${study}/shares`, {
    method: 'POST',
    headers: { ...json, host: 'localhost' },
    body: JSON.stringify({ placement: id, comments: true }),
  });
  const body = await made.json();
  expect(body.address).toBe(`https://${NAME}${body.path}`);
  token = body.token;
});

describe('by the name outside', () => {
  it('what is shared is reached, and asked not to be listed', async () => {
    const answer = await outside(`/api/shared/${token}`);
    expect(answer.status).toBe(200);
    expect(answer.headers.get('x-robots-tag')).toContain('noindex');
    expect((await outside(`/api/shared/${token}/figures/scores.svg`)).status).toBe(200);
    expect((await outside(`/shared/${token}`)).headers.get('content-type')).not.toContain('csv');
  });
  it('what is shared comes packed to who can unpack it, and is the same', async () => {
    const plain = await outside(`/api/shared/${token}`);
    expect(plain.headers.get('content-encoding')).toBeNull();
    const packed = await outside(`/api/shared/${token}`, { headers: { 'accept-encoding': 'gzip' } });
    expect(packed.headers.get('content-encoding')).toBe('gzip');
    const bytes = Buffer.from(await packed.arrayBuffer());
    const text = await plain.text();
    expect(bytes.length).toBeLessThan(text.length / 2);
    expect(gunzipSync(bytes).toString()).toBe(text);
  });
  it.each(['/', '/api', '/api/', '/api/docs', '/api/openapi.json', '/api/health', '/api/studies'])(
    '%s is not there',
    async (path) => {
      const answer = await outside(path);
      expect(answer.status).toBe(404);
      expect(answer.headers.get('content-type')).toContain('application/problem+json');
      expect((await answer.json()).detail).toBe('nothing is here.');
    },
  );
  it('a study there is and a study there is not are answered alike, whatever is asked', async () => {
    const strange = study.replace(/^./, study.startsWith('0') ? '1' : '0');
    for (const rest of ['', '/specimens', '/shares', '/placements'])
      for (const method of ['GET', 'POST', 'PATCH', 'DELETE', 'OPTIONS']) {
        const [there, not] = await Promise.all(
          [study, strange].map((id) => outside(`/api/studies/${id}${rest}`, { method })),
        );
        expect(there!.status).toBe(404);
        expect(await there!.text()).toBe(await not!.text());
      }
    expect((await used.api.get(`/api/studies/${study}`)).status).toBe(200);
  });
  it.each([
    '/shared/../api/studies',
    '/shared/%2e%2e/api/studies',
    '/api/shared/../studies',
    '/api/shared/%2e%2e/studies',
    '/api/shared/..%2fstudies',
    '/API/shared/../studies',
    '//api/studies',
    '/studies/x/share',
    '/assets/../api/studies',
  ])('no way round leads to a study: %s', async (path) => {
    const answer = await outside(path);
    expect(answer.status).toBe(404);
    expect(await answer.text()).not.toContain(study);
  });
  it('a comment is taken from its own page only', async () => {
    const say = (headers: Record<string, string>) =>
      outside(`/api/shared/${token}/comments`, {
        method: 'POST',
        headers: { ...json, ...headers },
        body: '{"name":"A","text":"B"}',
      });
    expect((await say({ origin: `https://${NAME}`, 'x-forwarded-for': '192.0.2.9' })).status).toBe(201);
    expect((await say({ origin: 'https://evil.example' })).status).toBe(403);
  });
});

describe('the name in Host', () => {
  it.each([`${NAME}:443`, `${NAME}:8470`, NAME.toUpperCase(), `${NAME}.`, `${NAME}.:80`])(
    '%s comes by the same door',
    async (host) => {
      expect((await outside('/api/studies', { headers: { host } })).status).toBe(404);
      expect((await outside(`/api/shared/${token}`, { headers: { host } })).status).toBe(200);
    },
  );
  it.each([
    `x.${NAME}`,
    `${NAME}.evil.example`,
    `localhost.${NAME}`,
    `${NAME}@localhost`,
    'localhost, x',
    '',
  ])('%s is refused', async (host) => {
    expect((await outside('/api/studies', { headers: { host } })).status).toBe(403);
    expect((await outside(`/api/shared/${token}`, { headers: { host } })).status).toBe(403);
  });
  it('is what counts: what other headers say the host is opens nothing', async () => {
    const headers = { 'x-forwarded-host': 'localhost', forwarded: 'host=localhost', 'x-host': 'localhost' };
    expect((await outside('/api/studies', { headers })).status).toBe(404);
  });
  it('must have been passed on: a proxy that says localhost instead is turned away', async () => {
    for (const header of ['x-forwarded-for', 'x-forwarded-host', 'forwarded', 'x-real-ip', 'via']) {
      const answer = await outside('/api/studies', { headers: { host: 'localhost', [header]: 'x' } });
      expect(answer.status).toBe(403);
      expect((await answer.json()).detail).toContain('must pass on the Host');
    }
    expect((await outside('/api/studies', { headers: { host: 'localhost' } })).status).toBe(200);
  });
  it('means nothing where no name is set', async () => {
    const plain = createApp({ db: used.database.db });
    const ask = (headers: Record<string, string>) =>
      plain.request('http://localhost/api/studies', { headers });
    expect((await ask({ host: NAME })).status).toBe(403);
    expect((await ask({ host: 'localhost', 'x-forwarded-for': '192.0.2.1' })).status).toBe(200);
  });
});

describe('guesses from outside', () => {
  let server: ReturnType<typeof createAdaptorServer>;
  let port: number;
  beforeAll(async () => {
    server = createAdaptorServer({ fetch: app.fetch });
    await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
    port = (server.address() as AddressInfo).port;
  });
  afterAll(() => new Promise((done) => server.close(done)));
  // Not by fetch, which lets nobody set Host.
  const guess = (host: string, forwarded: string) =>
    new Promise<number>((resolve, reject) => {
      const headers = { host, 'x-forwarded-for': forwarded };
      request({ port, host: '127.0.0.1', path: '/api/shared/guess', headers }, (answer) => {
        answer.resume();
        resolve(answer.statusCode!);
      })
        .on('error', reject)
        .end();
    });
  const burst = async (from: (i: number) => string) => {
    let status = 404;
    for (let i = 0; i < 25; i++) status = await guess(NAME, from(i));
    return status;
  };

  it('count for the address the proxy saw, which is the last one told', async () => {
    expect(await burst((i) => `198.51.100.${i}, 192.0.2.1`)).toBe(429);
    expect(await guess(NAME, '192.0.2.1')).toBe(429);
    expect(await guess(NAME, '192.0.2.1, 192.0.2.2')).toBe(404);
  });
});

describe('NEARSHERD_OUTSIDE', () => {
  const read = (NEARSHERD_OUTSIDE: string) => readEnvironment({ NEARSHERD_OUTSIDE }).NEARSHERD_OUTSIDE;
  it('is an https origin', () => {
    expect(read('https://Shares.Example.org')).toBe(`https://${NAME}`);
    expect(read('https://shares.example.org:8443/')).toBe('https://shares.example.org:8443');
    expect(read('')).toBeUndefined();
  });
  it.each([
    'shares.example.org',
    'http://shares.example.org',
    'https://shares.example.org/here',
    'https://me@shares.example.org',
    'https://localhost',
    'https://a.localhost.',
    'https://127.0.0.1:8470',
    'https://[::1]',
  ])('is not %s', (address) => {
    expect(() => read(address)).toThrow('NEARSHERD_OUTSIDE must be https://');
  });
});
