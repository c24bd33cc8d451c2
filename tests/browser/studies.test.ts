import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import { openBrowser, PATIENT, tabTo, type Visit, visit } from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(async () => {
  seen = await visit(browser, service.address);
  await seen.page.goto('/');
});
afterEach(async () => {
  const complaints = seen.complaints();
  await seen.context.close();
  expect(complaints).toEqual([]);
});

const heading = (name: string | RegExp) => seen.page.getByRole('heading', { level: 1, name });

test('a study is made by keyboard alone, and is still there after a reload', async () => {
  const { page } = seen;
  await page.getByRole('heading', { name: 'No study yet' }).waitFor();
  await tabTo(page, 'New study');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type('Lower Marl glazes');
  await page.keyboard.press('Tab');
  await page.keyboard.type('Lower Marl');
  await page.keyboard.press('Enter');
  await heading('Lower Marl glazes').waitFor();
  expect(await page.title()).toBe('Lower Marl glazes – Nearsherd');
  await page.reload();
  await heading('Lower Marl glazes').waitFor();
  await page.getByText('Bring in the sherds').waitFor();
});

test('a name typed but not saved is still in the form after a reload', async () => {
  const { page } = seen;
  await page.getByRole('button', { name: 'New study' }).click();
  await page.getByLabel('Name').fill('Half typed');
  await page.reload();
  await page.getByRole('button', { name: 'New study' }).click();
  expect(await page.getByLabel('Name').inputValue()).toBe('Half typed');
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'detached' });
});

test('a study is renamed, then deleted only after what is lost has been named', async () => {
  const { page } = seen;
  await page.getByRole('link', { name: 'Lower Marl glazes' }).click();
  await page.getByRole('button', { name: 'Change', exact: true }).click();
  await page.getByLabel('Name').fill('Upper Marl glazes');
  await page.getByRole('button', { name: 'Save' }).click();
  await heading('Upper Marl glazes').waitFor();
  await page.getByRole('button', { name: 'Delete this study' }).click();
  const question = page.getByRole('alertdialog');
  expect(await question.textContent()).toMatch(/Upper Marl glazes.*This cannot be undone/);
  await page.getByRole('button', { name: 'Keep it' }).click();
  await question.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Delete this study' }).click();
  await page.getByRole('alertdialog').getByRole('button', { name: 'Delete' }).click();
  await heading('Studies').waitFor();
  await page.getByRole('heading', { name: 'No study yet' }).waitFor();
});

test('the demo study opens with one press, and says that it is invented', async () => {
  const { page } = seen;
  await page.getByRole('button', { name: 'Open the demo study' }).click();
  await page.getByText('every number in this study are made up').waitFor();
  await page.getByRole('link', { name: 'Nearsherd' }).click();
  await page.getByText('invented data').waitFor();
});

test('the study switcher leads from one study to another', async () => {
  const { page } = seen;
  await page.getByRole('button', { name: 'New study' }).click();
  await page.getByLabel('Name').fill('Second study');
  await page.keyboard.press('Enter');
  await heading('Second study').waitFor();
  await page.getByRole('button', { name: /change study/ }).click();
  await page.getByRole('menuitem', { name: /\(demo\)/ }).click();
  await heading(/\(demo\)/).waitFor();
});

test('light or dark is chosen by hand and remembered', async () => {
  const { page } = seen;
  const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  const light = await paper();
  await page.getByRole('button', { name: /Light or dark/ }).click();
  await page.getByRole('option', { name: 'Dark' }).click();
  await expect.poll(paper, PATIENT).not.toBe(light);
  const dark = await paper();
  await page.reload();
  expect(await paper()).toBe(dark);
});

test('the skip link is the first stop of the keyboard and leads past the header', async () => {
  const { page } = seen;
  await heading('Studies').waitFor();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Skip to the page');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('main');
});

test('an address of a study that is not here says so, and leads back', async () => {
  const { page } = seen;
  await page.goto('/studies/00000000-0000-4000-8000-000000000000');
  await heading('This study is not here').waitFor();
  expect(seen.complaints().every((one) => one.includes('404'))).toBe(true);
  await page.getByRole('link', { name: 'All studies' }).click();
  await heading('Studies').waitFor();
});

test('a service that does not answer is named as such, and asked again at a press', async () => {
  const { page } = seen;
  await page.route('**/api/**', (route) => route.abort());
  await page.reload();
  await page.getByRole('alert').getByText('The service does not answer').waitFor();
  expect(seen.complaints().every((one) => one.includes('ERR_FAILED'))).toBe(true);
  await page.unroute('**/api/**');
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('table', { name: 'Studies' }).waitFor();
});
