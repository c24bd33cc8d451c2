import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FrozenPlacement } from '../../api/contract/placement.ts';
import type { ShareMade } from '../../api/contract/share.ts';
import { axeViolations, DESK, type Look, openBrowser, PHONE, sidewaysOverflow } from '../support/browser.ts';
import { readPdf, readPng, readSvg } from '../support/read-files.ts';
import { type RunningService, startService } from '../support/service.ts';

const HOSTILE = '</script><img src=x onerror="document.title=1"><!-- "Museum"';
let service: RunningService;
let browser: Browser;
let folder: string;
let study: string;
let kept: FrozenPlacement;
let html: string;
/** What else is shared, its file written beside the placement's. */
let others: Record<'outcome' | 'bench', string>;

const call = (path: string, body?: unknown) =>
  fetch(`${service.address}/api${path}`, {
    ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
    headers: { 'content-type': 'application/json' },
  });
const ask = async <Answer>(path: string, body?: unknown) => (await (await call(path, body)).json()) as Answer;

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  folder = await mkdtemp(join(tmpdir(), 'nearsherd-file-'));
  study = (await ask<{ id: string }>('/demo', {})).id;
  await ask(`/studies/${study}/specimens`, { label: 'Not compared', kind: 'material' });
  const groups = (await ask<{ id: string }[]>(`/studies/${study}/groups`)).map(({ id }) => id);
  const wish = { name: HOSTILE, note: HOSTILE, comparison: { settings: { groups } } };
  kept = await ask(`/studies/${study}/placements`, wish);
  const { token } = await ask<ShareMade>(`/studies/${study}/shares`, { placement: kept.id });
  html = await (await call(`/shared/${token}/page.html`)).text();
  await writeFile(join(folder, 'placement.html'), html);
  const factors = await ask<{ factor: { name: string } }[]>(`/studies/${study}/trials/factors`);
  const { factor } = factors.find((one) => one.factor.name === 'coats')!;
  const [batch] = await ask<[{ id: string; name: string }]>(`/studies/${study}/batches`);
  others = { outcome: HOSTILE, bench: `Bench sheet: ${batch.name}` };
  for (const shared of [
    { kind: 'outcome', name: HOSTILE, trial: { factors: [factor] } },
    { kind: 'bench', batch: batch.id, measured: true },
  ]) {
    const made = await ask<ShareMade>(`/studies/${study}/shares`, shared);
    const answer = await call(`/shared/${made.token}/page.html`);
    await writeFile(join(folder, `${shared.kind}.html`), await answer.text());
  }
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
  await rm(folder, { recursive: true, force: true });
});

/** The file as somebody opens it from a disk, where every request to a network is refused and counted. */
async function open(look: Look = DESK, colorScheme: 'light' | 'dark' = 'light', kind = 'placement') {
  const { width = 1280, height = 900 } = look;
  const context = await browser.newContext({ viewport: { width, height }, colorScheme, offline: true });
  const page = await context.newPage();
  const wrong: string[] = [];
  page.on('request', (request) => {
    if (!/^(file|data|blob):/.test(request.url())) wrong.push(request.url());
  });
  page.on('pageerror', (error) => wrong.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') wrong.push(message.text());
  });
  await page.goto(pathToFileURL(join(folder, `${kind}.html`)).href);
  await page.getByRole('heading', { level: 1 }).waitFor();
  return { context, page, wrong };
}
const savedBytes = async (page: Page, press: () => Promise<void>) => {
  const download = page.waitForEvent('download');
  await press();
  return readFile(await (await download).path());
};
const saved = async (page: Page, press: () => Promise<void>) => (await savedBytes(page, press)).toString();
/** One figure in each form, drawn by the page itself. */
async function inEveryForm(page: Page, figure: string, says: string): Promise<string> {
  const press = (form: string) => () =>
    page.getByRole('button', { name: `${form} of ${figure}`, exact: true }).click();
  const svg = await saved(page, press('SVG'));
  expect(readSvg(svg).get('svg')).toBe(1);
  expect(svg).toContain(says);
  const pdf = await readPdf(await savedBytes(page, press('PDF')));
  expect(pdf.pages).toBe(1);
  expect(pdf.text).toContain(says);
  expect(pdf.fonts.length).toBeGreaterThan(0);
  expect(pdf.fonts.every(({ embedded }) => embedded)).toBe(true);
  expect(pdf.pictures).toBe(0);
  const png = readPng(await savedBytes(page, press('PNG')));
  expect(png.width).toBe(3840);
  expect(png.colours).toBeGreaterThan(3);
  return svg;
}

describe('a share saved as one file', () => {
  test('opens from a disk without a network: figure, components, slip by keyboard, talk, data', async () => {
    const { context, page, wrong } = await open();
    const sentence = page.locator('.sentence');
    expect(await sentence.textContent()).toBe(kept.result.placements[0]!.sentence);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(HOSTILE);
    await page.locator('.cover').focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.readout').textContent()).not.toBe('');
    await page.getByRole('button', { name: /Across$/ }).press('Enter');
    await page.getByRole('option', { name: /PC3/ }).click();
    await expect.poll(() => page.locator('.axis.x .axis-title').first().textContent()).toContain('PC3');
    await page.getByRole('button', { name: /Slip$/ }).press('Enter');
    await page.getByRole('option', { name: /^Its own slip/ }).click();
    await page.getByRole('slider', { name: /Slip drawn off/ }).focus();
    for (let i = 0; i < 8; i++) await page.keyboard.press('PageUp');
    await expect.poll(() => sentence.textContent()).not.toBe(kept.result.placements[0]!.sentence);
    await page.getByRole('button', { name: 'Back to as kept' }).click();
    await expect.poll(() => sentence.textContent()).toBe(kept.result.placements[0]!.sentence);
    const button = (name: string) => page.getByRole('button', { name, exact: true });
    expect(await saved(page, () => button('members').click())).toContain('wt%');
    expect(await saved(page, () => button('reported-values').click())).toContain('belowDetection');
    const whole = JSON.parse(await saved(page, () => button('Everything as JSON').click()));
    expect(whole.placement).toEqual(kept);
    await page
      .getByRole('button', { name: /Download as SVG/ })
      .first()
      .press('Enter');
    const sheet = page.getByRole('menuitem').first();
    expect(readSvg(await saved(page, () => sheet.click())).get('svg')).toBe(1);
    const drawnHere = await inEveryForm(page, 'Scores', kept.result.placements[0]!.label);
    // As it is looked at now: its third component across.
    const look = 'format=slide-16-9&across=3&up=2&naming=replicas';
    const served = await call(`/studies/${study}/placements/${kept.id}/figures/scores.svg?${look}`);
    expect(readSvg(drawnHere)).toEqual(readSvg(await served.text()));
    expect(await page.locator('main').textContent()).toContain('Hotelling');
    await page.getByRole('link', { name: 'Show it as a talk' }).click();
    await page.locator('.talk-figure, .talk').first().waitFor();
    expect(wrong).toEqual([]);
    await context.close();
  });
  test.each([
    ['outcome', 'Effects', 'no effect', 'zones'],
    ['bench', 'Predicted and fired', 'wt%', 'recipe'],
  ] as const)(
    'of %s has its figure in every form, its tables and its methods',
    async (kind, figure, says, table) => {
      const { context, page, wrong } = await open(DESK, 'light', kind);
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(others[kind]);
      await page
        .getByRole('heading', { name: /^Methods/ })
        .first()
        .waitFor();
      await inEveryForm(page, figure, says);
      const csv = await saved(page, () => page.getByRole('button', { name: table, exact: true }).click());
      expect(csv.trim().split('\r\n').length).toBeGreaterThan(2);
      expect(await page.locator('main img, main script').count()).toBe(0);
      expect(await page.locator('a[href*="/studies/"], a[href*="/api/"]').count()).toBe(0);
      expect(wrong).toEqual([]);
      await context.close();
    },
  );
  test('runs nothing that a name holds', async () => {
    const { context, page, wrong } = await open();
    expect(await page.title()).toBe(`${HOSTILE} – Nearsherd`);
    expect(await page.locator('main img, main script').count()).toBe(0);
    expect(wrong).toEqual([]);
    await context.close();
  });
  test('holds nothing else of the study, and no way to it', () => {
    expect(html).not.toContain('Not compared');
    expect(html).not.toContain(study);
    expect(html).not.toContain('/api/');
    expect(html).not.toContain(service.address);
  });
  test('of what mattered holds no setting that was not asked for', async () => {
    const file = await readFile(join(folder, 'outcome.html'), 'utf8');
    const [, data] = /id="frozen">(.*?)<\/script>/s.exec(file)!;
    expect(data).toContain('"coats"');
    for (const word of ['PbO as weighed', 'lead roast', 'fritted']) expect(data).not.toContain(word);
  });
  test('is the same from the study itself', async () => {
    const own = await (await call(`/studies/${study}/placements/${kept.id}/page.html`)).text();
    const dataOf = (text: string) => JSON.parse(/id="frozen">(.*?)<\/script>/s.exec(text)![1]!);
    expect(dataOf(own)).toEqual(dataOf(html));
  });
  test.each(['light', 'dark'] as const)('passes axe in %s and fits a phone', async (colorScheme) => {
    for (const kind of ['placement', 'outcome', 'bench']) {
      const { context, page } = await open(PHONE, colorScheme, kind);
      await page
        .getByRole('heading', { name: /^Methods/ })
        .first()
        .waitFor();
      if (process.env.SHOTS)
        await page.screenshot({
          path: `${process.env.SHOTS}/file-${kind}-${colorScheme}.png`,
          fullPage: true,
        });
      expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
      expect(await axeViolations(page)).toEqual([]);
      await context.close();
    }
  });
});
