import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { expect, inject } from 'vitest';

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export function openBrowser(): Promise<Browser> {
  return chromium.launch({ executablePath: inject('chromiumPath'), args: QUIET });
}

/** For `expect.poll`: as long as a page may take on a busy machine. */
export const PATIENT = { timeout: 15_000, interval: 100 };

export interface Visit {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page complained of since it was last asked. */
  readonly complaints: () => string[];
}
export interface Look {
  readonly scheme?: 'light' | 'dark';
  readonly width?: number;
  readonly height?: number;
}
export const DESK: Look = { width: 1280, height: 900 };
export const PHONE: Look = { width: 380, height: 800 };

/** A window of its own: nothing kept from another visit, every error of the page written down. */
export async function visit(browser: Browser, address: string, look: Look = DESK): Promise<Visit> {
  const context = await browser.newContext({
    baseURL: address,
    viewport: { width: look.width ?? 1280, height: look.height ?? 900 },
    colorScheme: look.scheme ?? 'light',
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  const heard: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') heard.push(`${message.text()} (${message.location().url})`);
  });
  page.on('pageerror', (error) => heard.push(String(error)));
  return { page, context, complaints: () => heard.splice(0) };
}

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  id: string;
  help: string;
  nodes: { html: string; failureSummary?: string }[];
}

/** What axe finds wrong with the page as it stands, rule by rule. */
export async function axeViolations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const found = await page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(root: Document): Promise<{ violations: Violation[]; passes: unknown[] }> };
    };
    const { violations, passes } = await axe.run(document);
    return { violations, checked: passes.length };
  });
  expect(found.checked, 'axe must have looked at something').toBeGreaterThan(10);
  return found.violations.map(
    ({ id, help, nodes }) =>
      `${id}: ${help}\n${nodes.map((n) => `  ${n.html}\n  ${n.failureSummary}`).join('\n')}`,
  );
}

/** How many px the page is wider than its window. */
export function sidewaysOverflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
}

/** Presses Tab until the focus is on what has this name; fails when it never gets there. */
export async function tabTo(page: Page, name: string): Promise<void> {
  for (let step = 0; step < 80; step++) {
    await page.keyboard.press('Tab');
    const here = await page.evaluate(() => {
      const at = document.activeElement;
      const label = at?.getAttribute('aria-label') ?? '';
      const labelled = (at?.getAttribute('aria-labelledby') ?? '')
        .split(' ')
        .map((id) => document.getElementById(id)?.textContent ?? '');
      return [label, ...labelled, at?.textContent ?? ''].map((text) => text.trim());
    });
    if (here.includes(name)) return;
  }
  throw new Error(`“${name}” must be reachable with Tab; it was not within 80 steps.`);
}
