import { JSDOM } from 'jsdom';
import { describe, expect, it } from 'vitest';
import { startApi } from '../support/start-api.ts';

const used = startApi();
const METHODS = ['get', 'post', 'put', 'patch', 'delete'];

describe('the OpenAPI document', () => {
  it('is of version 3.1 and describes every operation with its answers and its problem', async () => {
    const { status, body } = await used.api.get('/api/openapi.json');
    expect(status).toBe(200);
    expect(body.openapi).toBe('3.1.0');
    const operations = Object.entries(body.paths).flatMap(([path, item]) =>
      Object.entries(item as object).map(([method, operation]) => ({ path, method, operation })),
    );
    expect(operations.length).toBeGreaterThan(35);
    for (const { path, method, operation } of operations) {
      expect(METHODS).toContain(method);
      expect(path).toMatch(/^\/api\//);
      expect(operation.summary, `${method} ${path}`).toMatch(/\w/);
      expect(operation.tags).toHaveLength(1);
      expect(Object.keys(operation.responses).length).toBeGreaterThanOrEqual(2);
      expect(operation.responses.default.content).toHaveProperty('application/problem+json');
      const named = [...path.matchAll(/\{(\w+)\}/g)].map((match) => match[1]);
      const described = (operation.parameters ?? []).filter((one: { in: string }) => one.in === 'path');
      expect(described.map((one: { name: string }) => one.name).toSorted()).toEqual(named.toSorted());
    }
  });

  it('refers only to schemas that it holds', async () => {
    const { text, body } = await used.api.get('/api/openapi.json');
    const names = [...text.matchAll(/"#\/components\/schemas\/(\w+)"/g)].map((match) => match[1]!);
    expect(names.length).toBeGreaterThan(30);
    for (const name of names) expect(body.components.schemas).toHaveProperty(name);
  });
});

describe('the page of documentation', () => {
  it('shows every operation and schema, needs no script and nothing from elsewhere', async () => {
    const [page, document] = [
      await used.api.get('/api/docs'),
      (await used.api.get('/api/openapi.json')).body,
    ];
    expect(page.headers.get('content-type')).toContain('text/html');
    const { window } = new JSDOM(page.text);
    const text = window.document.body.textContent ?? '';
    for (const [path, item] of Object.entries(document.paths))
      for (const [method, operation] of Object.entries(item as object)) {
        expect(text).toContain(`${method.toUpperCase()} ${path}`);
        expect(text).toContain(operation.summary);
      }
    const ids = [...window.document.querySelectorAll('[id]')].map((one) => one.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const link of window.document.querySelectorAll<HTMLAnchorElement>('a[href^="#"]'))
      expect(ids).toContain(link.getAttribute('href')!.slice(1));
    expect(window.document.querySelector('script')).toBe(null);
    expect(page.text).not.toMatch(/(src|href)="https?:/);
  });
});
