import { afterEach, expect, test, vi } from 'vitest';
import { findChromium } from './chromium.ts';

afterEach(() => vi.unstubAllEnvs());

test('the browser named in CHROMIUM_PATH is taken before any other', () => {
  vi.stubEnv('CHROMIUM_PATH', process.execPath);
  expect(findChromium()).toBe(process.execPath);
});

test('a CHROMIUM_PATH that names no file is refused, not passed over', () => {
  vi.stubEnv('CHROMIUM_PATH', '/no/such/browser');
  expect(() => findChromium()).toThrow('CHROMIUM_PATH must name a file; /no/such/browser is none.');
});
