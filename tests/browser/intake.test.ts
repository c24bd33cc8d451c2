import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { axeViolations, openBrowser, PATIENT, type Visit, visit } from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

// An invented table in a laboratory's own spelling: semicolons, decimal commas, ±, ppm, below detection.
const GOOD = [
  'Sherd no.;Ware;SiO2 (wt%);± 1σ;Fe2O3T;PbO;Cu [ppm];remarks',
  'A1;Ford ware;38,2;0,4;6,29;41,2;1200;',
  'A2;Ford ware;39,1;0,4;6,01;40,8;<50;glossy',
  'A3;Mill ware;40,1;0,4;5,90;39,5;950;',
].join('\n');
const BAD = GOOD.replace('40,1', '4O,1');

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let study: string;

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  const made = await fetch(`${service.address}/api/studies`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name: 'Marl' }),
  });
  study = ((await made.json()) as { id: string }).id;
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(async () => {
  seen = await visit(browser, service.address);
  page = seen.page;
  await page.goto(`/studies/${study}/intake`);
});
afterEach(async () => {
  const complaints = seen.complaints();
  await seen.context.close();
  expect(complaints).toEqual([]);
});

async function chooseFile(name: string, text: string) {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Choose a file' }).click();
  await (await chooser).setFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.getByRole('heading', { name: 'How each column was understood' }).waitFor();
}
async function pick(label: string | RegExp, option: string | RegExp) {
  await page.getByRole('button', { name: label }).click();
  await page.getByRole('option', { name: option }).click();
}
const bringIn = () => page.getByRole('button', { name: /^Bring in [\d,]+ anal/ });
const counts = async () => {
  const answer = await fetch(`${service.address}/api/studies/${study}`);
  return ((await answer.json()) as { counts: { analyses: number; groups: number } }).counts;
};

test('a file with a letter among its figures is refused by row and column, and changes nothing', async () => {
  await chooseFile('bad.csv', BAD);
  await pick(/Measured$/, /^Paint/);
  const problems = page.getByRole('table', { name: 'Problems' });
  await problems.getByText('4O,1').waitFor();
  const words = await problems.textContent();
  expect(words).toContain('row 4');
  expect(words).toContain('column C');
  expect(await page.getByRole('button', { name: 'Bring in', exact: true }).isDisabled()).toBe(true);
  expect(await counts()).toMatchObject({ analyses: 0, groups: 0 });
});

test('the row at fault can be left out, and the others come in', async () => {
  await chooseFile('bad.csv', BAD);
  await pick(/Measured$/, /^Paint/);
  await page.getByRole('button', { name: 'Leave row 4 out' }).click();
  await page.getByText('Ready: 2 analyses of 2 specimens').waitFor();
});

test('a file is understood, brought in with one press, and taken back with another', async () => {
  await chooseFile('marl.csv', GOOD);
  await pick(/Measured$/, /^Paint/);
  await page.getByText('Ready: 3 analyses of 3 specimens').waitFor();
  await bringIn().click();
  await page.getByText('Brought in', { exact: true }).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  expect(await counts()).toMatchObject({ analyses: 3, groups: 2 });
  await page.getByRole('link', { name: 'See the specimens' }).click();
  await page.getByRole('link', { name: 'A2' }).click();
  await page.getByRole('link', { name: 'Paint' }).click();
  const reported = page.getByRole('table', { name: 'As reported' });
  await reported.waitFor();
  const words = (await reported.textContent())?.replaceAll(/\s+/g, ' ');
  expect(words).toContain('39.1 ± 0.4 wt%');
  expect(words).toContain('< 50 ppm');
  await page.getByRole('link', { name: 'Intake' }).click();
  await page.getByRole('button', { name: 'Take it back marl.csv' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Take it back' }).click();
  await page.getByRole('alertdialog').waitFor({ state: 'detached' });
  await expect.poll(counts, PATIENT).toMatchObject({ analyses: 0 });
});

test('what a column holds is changed by hand, survives a reload, and is remembered for the next file', async () => {
  await chooseFile('marl.csv', GOOD);
  await pick(/Measured$/, /^Paint/);
  await pick(/What column H holds$/, 'Leave out');
  await page.getByText('As chosen by hand').waitFor();
  await page.reload();
  await page.getByRole('heading', { name: 'marl.csv' }).waitFor();
  await page.getByText('As chosen by hand').waitFor();
  await bringIn().click();
  await page.getByText('Brought in', { exact: true }).waitFor();
  await page.getByRole('button', { name: 'Bring in another' }).click();
  await chooseFile('more.csv', GOOD.replaceAll(/^A/gm, 'B'));
  await page.getByText('Read as last time').waitFor();
  await page.getByText('Ready: 3 analyses of 3 specimens').waitFor();
});

test('replicas come in as replicas, from a pasted table, into no group', async () => {
  await page.getByLabel('Table', { exact: true }).fill('Tile\tSiO2\tPbO\nT1\t41.0\t36.5\nT2\t42.0\t35.5');
  await page.getByRole('button', { name: 'Read the table' }).click();
  await page.getByRole('heading', { name: 'Pasted table' }).waitFor();
  await pick(/The rows are$/, /^Replicas/);
  await pick(/Measured$/, /^Paint/);
  await page.getByText('Ready: 2 analyses').waitFor();
  await bringIn().click();
  await page.getByText('Brought in', { exact: true }).waitFor();
  await page.goto(`/studies/${study}/sherds?kind=replica`);
  await page.getByRole('link', { name: 'T1' }).waitFor();
  await page.getByText('2 specimens').waitFor();
});

test('a table pasted but not yet read is still there after a reload', async () => {
  await page.getByLabel('Table', { exact: true }).fill('Tile\tSiO2\nT1\t41.0');
  await page.reload();
  expect(await page.getByLabel('Table', { exact: true }).inputValue()).toBe('Tile\tSiO2\nT1\t41.0');
});

test('a picture that calls itself a table is refused in plain words', async () => {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Choose a file' }).click();
  const png = await readFile(
    'node_modules/@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf.png',
  );
  await (await chooser).setFiles({ name: 'results.xlsx', mimeType: 'image/png', buffer: png });
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toMatch(/picture|image|PNG/i);
  expect(seen.complaints().every((one) => /status of 4\d\d/.test(one))).toBe(true);
  await page.getByRole('button', { name: 'Choose another file' }).click();
  await page.getByRole('button', { name: 'Choose a file' }).waitFor();
});

test('a long import shows how far it is, and leaves nothing when it is stopped', async () => {
  const before = await counts();
  const rows = Array.from({ length: 40_000 }, (_, i) => `L${i};40;41;19`);
  await chooseFile('long.csv', ['Sherd;SiO2;PbO;CaO', ...rows].join('\n'));
  await pick(/Measured$/, /^Paint/);
  await page.getByText('Ready: 40,000 analyses').waitFor({ timeout: 60_000 });
  await bringIn().click();
  await page.getByText(/[\d,]+ of 40,001 rows|[\d,]+ of 40,000 rows/).waitFor();
  await page.getByRole('button', { name: 'Stop' }).click();
  await page.getByText('Stopped; nothing was brought in').waitFor({ timeout: 30_000 });
  expect(await counts()).toEqual(before);
});
