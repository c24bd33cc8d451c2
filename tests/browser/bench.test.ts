import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import {
  axeViolations,
  openBrowser,
  PHONE,
  sidewaysOverflow,
  tabTo,
  type Visit,
  visit,
} from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let bench: string;
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
  bench = `/studies/${await post('/studies', { name: 'Marl' })}/bench`;
  demo = `/studies/${await post('/demo')}/bench`;
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
/** The cell of a row under a column, as text. */
async function cell(name: string, row: string, column: string): Promise<string> {
  const columns = await table(name).getByRole('columnheader').allTextContents();
  const at = columns.findIndex((text) => text.trim() === column);
  expect(at, `${name} has a column ${column}`).toBeGreaterThanOrEqual(0);
  const line = table(name)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: row, exact: true }) });
  return ((await line.locator('th, td').nth(at).textContent()) ?? '').replaceAll('\u00a0', ' ').trim();
}
async function weigh(lines: readonly (readonly [string, string])[]) {
  for (const [i, [material, amount]] of lines.entries()) {
    await page.getByLabel(`Material, line ${i + 1}`).selectOption({ label: material });
    await page.getByLabel(`Amount, ${material}`).fill(amount);
  }
}

test('a batch is weighed, its fired paint follows each keystroke, and it is kept and scaled', async () => {
  await page.goto(`${bench}/batches/new`);
  await page.getByLabel('Name').fill('Litharge glass');
  await weigh([
    ['Litharge', '65'],
    ['Quartz', '35'],
  ]);
  await expect.poll(() => cell('Fired paint', 'PbO', 'wt%')).toContain('65.00');
  await page.getByLabel('Amount, Quartz').press('End');
  await page.keyboard.type('0');
  // 65 of 415 g.
  await expect.poll(() => cell('Fired paint', 'PbO', 'wt%')).toContain('15.66');
  await page.keyboard.press('Backspace');
  await page.getByLabel('Scale to (g)').fill('50');
  await page.keyboard.press('Enter');
  expect(await page.getByLabel('Amount, Litharge').inputValue()).toBe('32.5');
  await page.getByRole('button', { name: 'Save the batch' }).click();
  await page.getByRole('heading', { level: 1, name: 'Litharge glass' }).waitFor();
  await page.getByRole('link', { name: 'Bench sheet' }).click();
  await table('What to weigh').waitFor();
  await page.getByLabel('Amount wanted (g)').fill('200');
  await expect.poll(() => cell('What to weigh', 'Litharge', 'Weigh, g')).toBe('130.00');
  await expect.poll(() => cell('What to weigh', 'Quartz', 'On the pan, g')).toBe('200.00');
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(false);
  expect(await page.getByText('Local codes and licensed practice come first').isVisible()).toBe(true);
});

test('carbonate, water and sulfur are accounted for line by line, and raw galena is not enough', async () => {
  await page.goto(`${bench}/batches/new`);
  await weigh([
    ['Galena', '50'],
    ['Calcite', '10'],
    ['Kaolinite', '20'],
  ]);
  await page.getByLabel('Water, Kaolinite').fill('25');
  // CaCO3 loses 43.97 % (CO2 44.009 of 100.086).
  await expect.poll(() => cell('Mass balance, line by line', 'Calcite', 'CO₂, g')).toBe('4.397');
  expect(await cell('Mass balance, line by line', 'Kaolinite', 'Dry, g')).toBe('15.00');
  await page.getByText('the roast is the missing step').waitFor();
  expect(await page.getByText('Not for food use').count()).toBeGreaterThan(0);
  expect(await page.getByText(/food.safe/i).count()).toBe(0);
});

test('slips of the hand are named beside the line, and a reload loses nothing', async () => {
  await page.goto(`${bench}/batches/new`);
  await weigh([
    ['Quartz', '-5'],
    ['Minium (red lead)', '4o'],
  ]);
  await page.getByText('Quartz needs an amount of zero or more; it is -5.').waitFor();
  await page.getByText('“4o” is none.').waitFor();
  await page.getByLabel('Name').fill('Slip');
  await page.getByRole('button', { name: 'Save the batch' }).click();
  await page.getByRole('alert').getByText('Every line needs to be read first').waitFor();
  await page.reload();
  await page.getByText('What you had typed before is still here').waitFor();
  expect(await page.getByLabel('Amount, Quartz').inputValue()).toBe('-5');
});

test('a material is made from a formula by keyboard; an impossible one is refused in words', async () => {
  await page.goto(`${bench}/materials`);
  await table('Materials').waitFor();
  await tabTo(page, 'New material');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'New material' }).waitFor();
  await tabTo(page, 'Name');
  await page.keyboard.type('Ridge ore');
  await tabTo(page, 'Formula');
  await page.keyboard.type('PbQ');
  await page.getByText('a formula needs elements with a standard atomic weight; Q is none').waitFor();
  await page.keyboard.press('Backspace');
  await page.keyboard.type('S');
  await tabTo(page, 'Purity, least (wt%)');
  await page.keyboard.type('80');
  await page.keyboard.press('Tab');
  await page.keyboard.type('90');
  await page.keyboard.press('Tab');
  await page.keyboard.type('SiO2');
  await table('Fired paint').waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Ridge ore' }).waitFor();
  expect(await cell('Materials', 'Ridge ore', 'Known by')).toBe('PbS, 80 to 90 % pure');
});

test('a clay of the study becomes a material from its analysis', async () => {
  await page.goto(`${demo}/materials/new`);
  await page.getByLabel('Name').fill('Vale body');
  await page.getByText('a clay, an ash, an ore').click();
  await page.getByRole('button', { name: /Analyses of$/ }).click();
  await page.getByRole('option', { name: 'Body' }).click();
  await page.getByRole('button', { name: /Take over an analysis/ }).click();
  await page.getByRole('option').first().click();
  await expect
    .poll(() => page.getByLabel('Analysis, wt% of the dry material').inputValue())
    .toMatch(/SiO2\s+\d/);
  await page.getByText('The analysis states no loss on ignition').waitFor();
  await page.getByRole('button', { name: 'Save the material' }).click();
  await page.getByRole('link', { name: 'Vale body' }).waitFor();
});

const PAGES = ['', '/batches/new', '/materials', '/materials/new'];

test.each(['light', 'dark'] as const)(
  'every page of the bench passes axe on a phone and a desk (%s)',
  async (scheme) => {
    for (const look of [PHONE, {}]) {
      const own = await visit(browser, service.address, { ...look, scheme });
      for (const path of PAGES) {
        await own.page.goto(`${demo}${path}`);
        await own.page.getByRole('heading', { level: 1 }).waitFor();
        await own.page.waitForLoadState('networkidle');
        expect(await axeViolations(own.page), path).toEqual([]);
        expect(await sidewaysOverflow(own.page), path).toBeLessThanOrEqual(0);
      }
      expect(own.complaints()).toEqual([]);
      await own.context.close();
    }
  },
);
