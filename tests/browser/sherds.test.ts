import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { openBrowser, PATIENT, tabTo, type Visit, visit } from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let sherds: string;
let demo: string;

async function post(path: string, body: unknown = {}): Promise<string> {
  const made = await fetch(`${service.address}/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return ((await made.json()) as { id: string }).id;
}

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  sherds = `/studies/${await post('/studies', { name: 'Marl' })}/sherds`;
  demo = `/studies/${await post('/demo')}/sherds`;
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(async () => {
  seen = await visit(browser, service.address);
  page = seen.page;
});
afterEach(async () => {
  const complaints = seen.complaints();
  await seen.context.close();
  expect(complaints).toEqual([]);
});

const table = (name: string) => page.getByRole('table', { name, exact: true });
const rowsOf = async (name: string) =>
  (await table(name).getByRole('rowheader').allTextContents()).map((text) => text.trim());
const specimensShown = () => rowsOf('Specimens');

test('a ware group is made, renamed, and its DOI is checked in plain words', async () => {
  await page.goto(sherds);
  await page.getByRole('button', { name: 'New ware group' }).click();
  await page.getByLabel('Name').fill('Ford ware');
  await page.getByLabel('DOI').fill('see the book');
  await page.getByRole('button', { name: 'Create the ware group' }).click();
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toContain('a DOI begins with 10.');
  expect(seen.complaints().every((one) => /status of 4\d\d/.test(one))).toBe(true);
  await page.getByLabel('DOI').fill('https://doi.org/10.9999/invented');
  await page.getByRole('button', { name: 'Create the ware group' }).click();
  await page.getByRole('link', { name: 'doi:10.9999/invented' }).waitFor();
  await page.getByRole('button', { name: 'Change Ford ware' }).click();
  await page.getByLabel('Name').fill('Ford black ware');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('link', { name: 'Ford black ware' }).waitFor();
  await page.reload();
  await expect.poll(() => rowsOf('Ware groups'), PATIENT).toEqual(['Ford black ware']);
});

test('a specimen and its analysis are typed in by keyboard, a slip of the hand is named, a reload loses nothing', async () => {
  await page.goto(sherds);
  await tabTo(page, 'New specimen');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type('F-1');
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'F-1' }).waitFor();
  await tabTo(page, 'F-1');
  await page.keyboard.press('Enter');
  await tabTo(page, 'New analysis');
  await page.keyboard.press('Enter');
  await tabTo(page, 'Analyte, line 1');
  await page.keyboard.type('PbO');
  await page.keyboard.press('Tab');
  await page.keyboard.type('4o,1');
  await tabTo(page, 'Save the analysis');
  await page.keyboard.press('Enter');
  await page.getByRole('alert').getByText('PbO needs a number; “4o,1” is none.').waitFor();
  await page.reload();
  await page.getByText('What you had typed before the reload is still here.').waitFor();
  const value = page.getByLabel('Value, PbO');
  expect(await value.inputValue()).toBe('4o,1');
  await value.fill('40,1');
  await page.getByLabel('Analyte, line 2').fill('SiO2');
  await page.getByLabel('Value, SiO2').fill('50');
  await page.getByLabel('Analyte, line 3').fill('SnO2');
  await page.getByLabel('Value, SnO2').fill('<0,02');
  await page.getByRole('button', { name: 'Save the analysis' }).click();
  await table('As reported').waitFor();
  const words = (await table('As reported').textContent())?.replaceAll(/\s+/g, ' ');
  expect(words).toContain('40.1 wt%');
  expect(words).toContain('< 0.02 wt%');
});

test('lines copied from a spreadsheet are pasted into the form', async () => {
  await page.goto(sherds);
  await page.getByRole('link', { name: 'F-1' }).click();
  await page.getByRole('link', { name: 'New analysis' }).click();
  const cell = page.getByLabel('Analyte, line 1');
  await cell.focus();
  await page.evaluate(() => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', 'SiO2\t45.2\t0.3\nPbO\t36,7\nMnO\t<0.1');
    document.activeElement?.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
    );
  });
  expect(await page.getByLabel('Value, PbO').inputValue()).toBe('36,7');
  expect(await page.getByLabel('Plus or minus, SiO2').inputValue()).toBe('0.3');
  await page.getByRole('button', { name: 'Save the analysis' }).click();
  await table('As reported').waitFor();
  expect(await rowsOf('As reported')).toEqual(['SiO₂', 'PbO', 'MnO']);
});

test('each step of the normalisation can be followed, and changes with its settings', async () => {
  const study = sherds.split('/')[2];
  const specimen = await post(`/studies/${study}/specimens`, { label: 'N-1' });
  const reported = [
    { analyte: 'PbO', value: 40.1 },
    { analyte: 'SiO2', value: 50 },
  ];
  const analysis = await post(`/studies/${study}/analyses`, { specimen, measured: 'paint', reported });
  await page.goto(`${sherds}/${specimen}/analyses/${analysis}`);
  const closed = table('Closed to 100');
  await closed.waitFor();
  // 40.1 PbO and 50 SiO2 sum to 90.1, so PbO becomes 100·40.1/90.1 = 44.5061.
  expect(await closed.textContent()).toContain('44.5');
  await page.getByText('The oxides sum to 90.1 wt% before closure: low').waitFor();
  await page.getByRole('button', { name: /Lead as$/ }).click();
  await page.getByRole('option', { name: 'Pb₃O₄' }).click();
  await closed.getByText('Pb₃O₄').waitFor();
  await page.reload();
  await closed.getByText('Pb₃O₄').waitFor();
});

test('an analysis is corrected, then deleted, then its specimen and group with it', async () => {
  await page.goto(sherds);
  await page.getByRole('link', { name: 'F-1' }).click();
  await table('Analyses').getByRole('link', { name: 'Paint' }).first().click();
  await page.getByRole('link', { name: 'Change' }).click();
  await page.getByLabel('Value, PbO').fill('41.25');
  await page.getByRole('button', { name: 'Save the analysis' }).click();
  await page.getByText('41.25').first().waitFor();
  await page.getByRole('button', { name: 'Delete this analysis' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Delete' }).click();
  await page.getByRole('heading', { level: 1, name: 'F-1' }).waitFor();
  await expect.poll(async () => (await rowsOf('Analyses')).length, PATIENT).toBe(1);
  await page.getByRole('button', { name: 'Delete this specimen' }).click();
  expect(await page.getByRole('alertdialog').textContent()).toContain('its 1 analysis will be lost');
  await page.getByRole('alertdialog').getByRole('button', { name: 'Delete' }).click();
  await expect.poll(specimensShown, PATIENT).toEqual(['N-1']);
  await page.getByRole('button', { name: 'Delete Ford black ware' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Delete' }).click();
  await page.getByText('None yet. A file with a column of ware groups').waitFor();
});

test('specimens are searched, filtered, sorted and paged, and a reload shows the same', async () => {
  await page.goto(demo);
  await table('Specimens').waitFor();
  expect(await specimensShown()).toHaveLength(50);
  await page.getByText('1–50 of 79 specimens').waitFor();
  await page.getByRole('button', { name: 'Later' }).click();
  await page.getByText('51–79 of 79 specimens').waitFor();
  await page.getByLabel('Search specimens').fill('HP-0');
  await page.getByText(/^6 specimens/).waitFor();
  await table('Specimens').getByRole('button', { name: 'Specimen' }).click();
  await expect.poll(specimensShown, PATIENT).toEqual(['HP-06', 'HP-05', 'HP-04', 'HP-03', 'HP-02', 'HP-01']);
  expect(
    await page.getByRole('columnheader', { name: 'Specimen', exact: true }).getAttribute('aria-sort'),
  ).toBe('descending');
  await page.reload();
  await expect.poll(specimensShown, PATIENT).toEqual(['HP-06', 'HP-05', 'HP-04', 'HP-03', 'HP-02', 'HP-01']);
  await page.getByLabel('Search specimens').fill('');
  await page.getByRole('button', { name: 'Every kind Kind' }).click();
  await page.getByRole('option', { name: 'Replica' }).click();
  await page.getByText(/^9 specimens/).waitFor();
  await page.getByRole('link', { name: 'Tile 9' }).click();
  await page.getByRole('heading', { level: 1, name: 'Tile 9' }).waitFor();
  await page.goBack();
  await page.getByText(/^9 specimens/).waitFor();
});

test('several specimens are put into another ware group at once', async () => {
  await page.goto(`${demo}?search=HP-0`);
  await table('Specimens').waitFor();
  await page.getByRole('checkbox', { name: 'Choose HP-01' }).focus();
  await page.keyboard.press('Space');
  await page.getByRole('checkbox', { name: 'Choose HP-02' }).focus();
  await page.keyboard.press('Space');
  await page.getByText('2 specimens chosen').waitFor();
  await page.getByRole('button', { name: /Put into ware group$/ }).click();
  await page.getByRole('option', { name: 'Sarn brown' }).click();
  await page.getByRole('button', { name: 'Move' }).click();
  await page.getByText('2 specimens chosen').waitFor({ state: 'detached' });
  await page.reload();
  const row = table('Specimens').getByRole('row').filter({ hasText: 'HP-02' });
  expect(await row.textContent()).toContain('Sarn brown');
});
