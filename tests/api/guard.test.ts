import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { createApp } from '../../api/app.ts';
import type { Database } from '../../db/connect.ts';
import { type TestDatabase, testDatabase } from '../support/test-database.ts';

let database: TestDatabase;
let app: ReturnType<typeof createApp>;
beforeAll(async () => {
  database = await testDatabase();
  app = createApp({ db: database.db });
});
afterAll(() => database.close());

const json = { 'content-type': 'application/json' };
const post = (headers: Record<string, string>, body = '{"name":"x"}') =>
  app.request('http://localhost:8470/api/studies', {
    method: 'POST',
    headers: { ...json, ...headers },
    body,
  });

describe('who may ask', () => {
  it.each(['localhost:8470', '127.0.0.1:8470', '127.1.2.3', '[::1]:8470', 'LOCALHOST'])(
    '%s is answered',
    async (host) => {
      const answer = await app.request('http://localhost/api/studies', { headers: { host } });
      expect(answer.status).toBe(200);
    },
  );

  it.each([
    'evil.example',
    'localhost.evil.example',
    '127.0.0.1.evil.example:8470',
    '192.168.1.5:8470',
    '0.0.0.0',
  ])('the host %s is refused: a name elsewhere may be made to point here', async (host) => {
    const answer = await app.request('http://localhost/api/studies', { headers: { host } });
    expect(answer.status).toBe(403);
    expect((await answer.json()).detail).toContain('loopback addresses only');
  });

  it('changes come from our own pages or from programs, never from a page elsewhere', async () => {
    const host = 'localhost:8470';
    expect((await post({ host })).status).toBe(201);
    expect((await post({ host, origin: 'http://localhost:8470' })).status).toBe(201);
    for (const origin of ['https://evil.example', 'http://localhost:3000', 'null'])
      expect((await post({ host, origin })).status).toBe(403);
    expect((await post({ host, 'sec-fetch-site': 'cross-site' })).status).toBe(403);
  });

  it('a body that is not JSON by its type is not read as JSON', async () => {
    const answer = await post({ 'content-type': 'text/plain' });
    expect(answer.status).toBe(415);
  });
});

describe('every answer', () => {
  it('tells browsers what our pages never do', async () => {
    const { headers } = await app.request('http://localhost/api/health');
    const policy = headers.get('content-security-policy');
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe-eval');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('x-frame-options')).toBe('DENY');
    expect(headers.get('cache-control')).toBe('no-store');
  });
});

describe('problems', () => {
  const problem = async (answer: Response, status: number) => {
    expect(answer.status).toBe(status);
    expect(answer.headers.get('content-type')).toBe('application/problem+json; charset=utf-8');
    const body = await answer.json();
    expect(body).toMatchObject({ type: 'about:blank', status, title: expect.any(String) });
    return body;
  };

  it('an address that does not exist is 404, and says so', async () => {
    const body = await problem(await app.request('http://localhost/api/nothing'), 404);
    expect(body.detail).toContain('/api/nothing');
  });

  it('broken JSON is 400', async () => {
    await problem(await post({}, '{"name":'), 400);
  });

  it('a body of 6 MB is 413, whether its length is announced or not', async () => {
    const long = JSON.stringify({ name: 'x'.repeat(6 * 1024 * 1024) });
    const announced = await problem(await post({ 'content-length': String(long.length) }, long), 413);
    expect(announced.detail).toMatch(/at most 5 MB; this one has 6\.0 MB/);
    const request = new Request('http://localhost/api/studies', {
      ...{ method: 'POST', headers: json, duplex: 'half' },
      body: new Blob([long]).stream(),
    });
    await problem(await app.request(request), 413);
  });

  it('a request that does not fit names every field', async () => {
    const answer = await app.request('http://localhost/api/studies', {
      ...{ method: 'POST', headers: json },
      body: JSON.stringify({ name: '', place: 3 }),
    });
    const { faults } = await problem(answer, 422);
    expect(faults.map((fault: { at: string }) => fault.at)).toEqual(['name', 'place']);
  });

  it('what nobody foresaw is logged and told to nobody', async () => {
    const logged = vi.spyOn(console, 'error').mockImplementation(() => {});
    const broken = createApp({
      db: {
        select: () => {
          throw new Error('secret table xyz');
        },
      } as unknown as Database,
    });
    const answer = await broken.request('http://localhost/api/studies');
    const text = JSON.stringify(await problem(answer, 500));
    expect(text).not.toMatch(/secret|xyz|at .*:\d+/);
    expect(logged).toHaveBeenCalledOnce();
    logged.mockRestore();
  });
});
