import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import {
  axeViolations,
  openBrowser,
  PATIENT,
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
let own: string;
let demo: string;

async function post(path: string, body: unknown = {}): Promise<string> {
  const made = await fetch(`${service.address}/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return ((await made.json()) as { id: string }).id;
}
async function get<Answer>(path: string): Promise<Answer> {
  return (await (await fetch(`${service.address}/api${path}`)).json()) as Answer;
}
interface Told {
  readonly id: string;
  readonly log: { readonly fileName: string; readonly begins: number } | null;
  readonly peak: { readonly value: number } | null;
  readonly readings: readonly { readonly at: number | null }[];
}

/** 20 to 850 °C and back in two hours, its Fahrenheit marked Celsius. */
const shape = (i: number) => 20 + 830 * Math.sin((Math.PI * i) / 120);
const LOG = [
  'Time (min),Top (°C),Bottom (°C)',
  ...Array.from(
    { length: 121 },
    (_, i) => `${i},${(1.8 * shape(i) + 32).toFixed(1)},${(shape(i) - 40).toFixed(1)}`,
  ),
].join('\n');
const file = (name: string, text: string | Buffer) => ({
  ...{ name, mimeType: 'text/csv' },
  buffer: Buffer.from(text),
});

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  own = `/studies/${await post('/studies', { name: 'Marl' })}`;
  demo = `/studies/${await post('/demo')}`;
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
  await seen.context.close();
});

test('a log is put right as understood, read, moved, asked for other temperatures, refused, and taken off', async () => {
  const id = await post(`${own}/firings`, { name: 'F1' });
  const told = () => get<Told>(`${own}/firings/${id}`);
  await page.goto(`${own}/fire/firings/${id}`);
  await page.getByText('No log and no reading by hand yet.').waitFor();
  const input = page.locator('input[type=file]').first();
  await input.setInputFiles(file('kiln.csv', LOG));
  await page.getByText(/read as °F they are 20 °C and 850 °C/).waitFor();
  expect((await told()).log).toBeNull();

  // By keyboard: the unit, then the thermocouple.
  await tabTo(page, 'Unit of Top');
  await page.keyboard.press('Enter');
  await page.getByRole('option', { name: '°F' }).waitFor();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.getByText(/hottest 850 °C as read now/).waitFor();
  await page.getByText('Nothing looks wrong in it.').waitFor();
  await tabTo(page, 'Thermocouple of Top');
  await page.keyboard.press('Enter');
  await page.getByRole('option', { name: 'Type K, class 2' }).click();
  await page.getByRole('button', { name: /Type K, class 2.*Thermocouple of Top/ }).waitFor();
  await tabTo(page, 'Read the log');
  await page.keyboard.press('Enter');
  await page
    .locator('.lead')
    .getByText(/^Peak 850 ± 6 °C at 1:00 h \(Top\)\./)
    .waitFor();
  await page.getByRole('img', { name: /Temperature of F1/ }).waitFor();
  expect(await page.locator('.figure .curve').count()).toBe(2);

  await page.getByLabel('Temperatures to stay above (°C)').fill('840, 500');
  await page.getByRole('button', { name: 'Count these' }).click();
  await page.getByRole('rowheader', { name: '840 °C' }).waitFor();

  const began = page.getByLabel('The log began this long after lighting (min)');
  await began.fill('-10');
  await began.press('Enter');
  await page
    .locator('.lead')
    .getByText(/^Peak 850 ± 6 °C at 0:50 h/)
    .waitFor();

  await page.getByLabel('Shown (°C)').fill('845');
  await page.getByLabel('Minutes since lighting').fill('50');
  await page.getByRole('button', { name: 'Add the reading' }).click();
  await page.locator('.figure .reading').first().waitFor({ state: 'attached' });

  await input.setInputFiles(file('fire.png', Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10])));
  await page.getByText(/this file is a PNG picture/).waitFor();
  await page.getByRole('button', { name: 'Leave it' }).click();
  expect(await told()).toMatchObject({
    log: { fileName: 'kiln.csv', begins: -600 },
    readings: [{ at: 3000 }],
  });

  await page.getByRole('button', { name: 'Take the log off' }).click();
  await page.getByRole('button', { name: 'Take it off' }).click();
  await page
    .locator('.lead')
    .getByText(/^Hottest reading by hand 845 °C/)
    .waitFor();
  expect((await told()).log).toBeNull();
});

const noted = (at: number, rest: object) => {
  const instant = new Date(at).toISOString();
  return { id: crypto.randomUUID(), noted: instant, at: instant, ...rest };
};
const taken = (celsius: number) => ({ kind: 'thermocouple', celsius, sensor: { kind: 'unknown' } });

test('a reading is taken off by keyboard, the focus stays near, and one that is gone meanwhile is said to be', async () => {
  const readings = [300, 640, 700].map((celsius, i) => ({ at: 600 * i, reading: taken(celsius) }));
  const id = await post(`${own}/firings`, { name: 'Taken off', readings });
  const told = () => get<Told & { readings: { id: string }[] }>(`${own}/firings/${id}`);
  await page.goto(`${own}/fire/firings/${id}`);
  await page.getByRole('button', { name: 'Take off 640 °C at 0:10 h' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('alertdialog', { name: 'Take off 640 °C at 0:10 h?' }).waitFor();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'Take off 640 °C at 0:10 h' }).waitFor({ state: 'detached' });
  await expect
    .poll(() => page.evaluate(() => document.activeElement?.textContent), PATIENT)
    .toBe('Readings by hand');
  const [left] = (await told()).readings;
  await fetch(`${service.address}/api${own}/firings/${id}/readings/${left!.id}`, { method: 'DELETE' });
  await page.getByRole('button', { name: 'Take off 300 °C at 0:00 h' }).click();
  await page.getByRole('button', { name: 'Take it off' }).click();
  await page.getByText(/a reading to be taken off must still be there; this one is not/).waitFor();
  expect((await told()).readings).toMatchObject([{ at: 1200 }]);
});

test('the last air tapped gets its end on the page, and a stage noted meanwhile is not written over', async () => {
  const id = await post(`${own}/firings`, { name: 'Open' });
  const lit = Date.now() - 10 * 3600_000;
  const minute = (m: number) => lit + 60_000 * m;
  const send = (...notes: object[]) => post(`${own}/firings/${id}/sheet/notes`, notes);
  const stages = async () =>
    (await get<{ stages: { air: string; from: number; to: number }[] }>(`${own}/firings/${id}`)).stages;
  await send(noted(lit, { kind: 'lit' }), noted(minute(310), { kind: 'air', air: 'smothered' }));
  await page.goto(`${own}/fire/firings/${id}`);
  await page.getByText('Smothered from 5:10 h, its end not noted.').waitFor();
  const end = page.getByLabel('It ended, minutes since lighting');
  await end.fill('310');
  await page.getByText('Minutes after 310 (5:10 h).').waitFor();
  await end.fill('540');
  await end.press('Enter');
  await page.getByText('smothered from 5:10 to 9:00 h').waitFor();
  expect(await page.getByText('its end not noted').count()).toBe(0);

  await page.getByRole('button', { name: 'Change', exact: true }).click();
  await page.getByLabel('Stage 1 to (min)').fill('500');
  await page.getByLabel('Weather').fill('Wet');
  await send(noted(minute(20), { kind: 'air', air: 'oxidising' }));
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText(/stages must be changed as they are; others were noted meanwhile/).waitFor();
  expect(await stages()).toMatchObject([{ air: 'oxidising' }, { air: 'smothered', to: 32_400 }]);
  await page.getByRole('button', { name: 'Take them as they are now' }).click();
  await page.getByLabel('Stage 2 to (min)').fill('500');
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('smothered from 5:10 to 8:20 h').waitFor();
  expect(await stages()).toMatchObject([
    { air: 'oxidising', from: 1200, to: 18_600 },
    { air: 'smothered', from: 18_600, to: 30_000 },
  ]);
  expect(await get<object>(`${own}/firings/${id}`)).toMatchObject({ weather: 'Wet' });

  // Untouched stages are not sent, so what is noted while the form is open stays.
  await page.getByRole('button', { name: 'Change', exact: true }).click();
  await page.getByLabel('Weather').fill('Dry');
  await send(noted(minute(550), { kind: 'air', air: 'neutral' }), noted(minute(560), { kind: 'out' }));
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByText('Dry').waitFor();
  expect((await stages()).map((one) => one.air)).toEqual(['oxidising', 'smothered', 'neutral']);
});

test('firings are ticked by keyboard and compared, with what lies apart marked', async () => {
  await page.goto(`${demo}/fire/firings`);
  for (const name of ['Firing 1 (invented)', 'Firing 2 (invented)']) {
    await page.getByRole('checkbox', { name: `Compare ${name}` }).focus();
    await page.keyboard.press('Space');
  }
  await page.getByRole('link', { name: 'Compare 2 firings' }).press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Firings compared' }).waitFor();
  const table = page.getByRole('table', { name: 'Firings compared' });
  const peak = await table.getByRole('row').filter({ hasText: 'peak (°C)' }).first().textContent();
  expect(peak).toMatch(/apart.*830 \(824 to 836\).*858/);
  const length = table.getByRole('row').filter({ hasText: 'length of the log (h)' });
  expect(await length.textContent()).toContain('not judged');
  await page.getByText('Not judged, length of the log: it is how long the logger ran').waitFor();
  const names = await page.locator('.figure .curve-name').allTextContents();
  expect(names).toEqual(['Firing 1 (invented)', 'Firing 2 (invented)']);
  expect(seen.complaints()).toEqual([]);
});

test.each(['light', 'dark'] as const)(
  'the pages of firings pass axe on a phone and a desk, also while a log is looked at (%s)',
  async (scheme) => {
    const [first, second] = await get<Told[]>(`${demo}/firings`);
    const paths = [
      '/firings',
      `/firings/${first!.id}`,
      `/firings/compare?firings=${first!.id},${second!.id}`,
      '/firings/compare',
    ];
    for (const look of [PHONE, {}]) {
      const one = await visit(browser, service.address, { ...look, scheme });
      for (const path of paths) {
        await one.page.goto(`${demo}/fire${path}`);
        await one.page.getByRole('heading', { level: 1 }).waitFor();
        await one.page.waitForLoadState('networkidle');
        expect(await axeViolations(one.page), path).toEqual([]);
        expect(await sidewaysOverflow(one.page), path).toBeLessThanOrEqual(0);
      }
      await one.page.goto(`${demo}/fire${paths[1]}`);
      await one.page.locator('input[type=file]').first().setInputFiles(file('kiln.csv', LOG));
      await one.page.getByText('Please check').waitFor();
      expect(await axeViolations(one.page), 'a log looked at').toEqual([]);
      expect(await sidewaysOverflow(one.page)).toBeLessThanOrEqual(0);
      expect(one.complaints()).toEqual([]);
      await one.context.close();
    }
  },
);
