import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import {
  axeViolations,
  type Look,
  openBrowser,
  PATIENT,
  PHONE,
  sidewaysOverflow,
  tabTo,
  visit,
} from '../support/browser.ts';
import { invented } from '../support/pictures.ts';
import { proxyOf } from '../support/proxy.ts';
import { type RunningService, startService } from '../support/service.ts';

const OUTSIDE = 'https://fire.example.org';
let service: RunningService;
let browser: Browser;
let study: string;
let firing: string;
let run = 0;

async function post<Answer = { id: string }>(path: string, body: unknown = {}): Promise<Answer> {
  const made = await fetch(`${service.address}/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  return (await made.json()) as Answer;
}
const get = async <Answer>(path: string): Promise<Answer> =>
  (await (await fetch(`${service.address}/api${path}`)).json()) as Answer;
interface FiringSeen {
  lit: string | null;
  stages: { air: string }[];
  readings: { at: number; where: string; reading: { kind: string; celsius: number } }[];
}
const kept = () => get<FiringSeen>(`${study}/firings/${firing}`);

beforeAll(async () => {
  [service, browser] = await Promise.all([startService({ NEARSHERD_OUTSIDE: OUTSIDE }), openBrowser()]);
  study = `/studies/${(await post('/studies', { name: 'Marl' })).id}`;
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(async () => {
  run += 1;
  firing = (await post(`${study}/firings`, { name: `Fire ${run}` })).id;
  await post(`${study}/tiles`, { label: `Tile ${run}`, firing, place: 'front', position: 2 });
});

/** A phone that has opened the sheet with a network, and kept it. */
async function atTheFire(look: Look = PHONE) {
  const phone = await visit(browser, service.address, look);
  await open(phone.page);
  return phone;
}
async function open(page: Page) {
  await page.goto(`${study}/fire/sheet/${firing}`);
  await page.getByText('This sheet opens without a network now').waitFor();
}
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });

test('the sheet opens and takes notes without a network, after a reload and in a new page, and sends each once later', async () => {
  const phone = await visit(browser, service.address, PHONE);
  // The intake page keeps files on the device too: the two must not get in each other's way.
  await phone.page.goto(`${study}/intake`);
  await phone.page
    .locator('input[type=file]')
    .first()
    .setInputFiles({ name: 'a.csv', mimeType: 'text/csv', buffer: Buffer.from('id,SiO2,PbO\nA,40,50\n') });
  await open(phone.page);
  await phone.context.setOffline(true);
  await phone.page.reload();
  await button(phone.page, 'Lit now').click();
  await button(phone.page, /^reducing/).click();
  await phone.page.getByText('2 notes waiting on this phone').waitFor();
  await phone.page.close();

  const later = await phone.context.newPage();
  await later.goto(`${study}/fire/sheet/${firing}`);
  await later.getByText('2 notes waiting on this phone').waitFor();
  await later.getByText(/No answer from the service; shown as it was at/).waitFor();
  await later.getByText('Where the tiles stand').click();
  await later.getByText(/^Tile \d+: place 2 by the plan, front$/).waitFor();
  await later.getByLabel('Temperature shown (°C)').fill('805');
  await later.getByLabel('Where in the fire').fill('by the pot');
  await button(later, 'Note it').click();
  await button(later, 'matt').click();
  await later.getByText('4 notes waiting on this phone').waitFor();
  expect((await kept()).lit).toBeNull();

  await phone.context.setOffline(false);
  await later.getByText(/All 4 notes have been sent, the last at/).waitFor();
  const fire = await kept();
  expect(fire.readings).toMatchObject([{ where: 'by the pot', reading: { celsius: 805 } }]);
  expect(fire.readings[0]?.at).toBeGreaterThanOrEqual(0);
  const [tile] = await get<{ firing: string; zones: { grade: string | null }[] }[]>(`${study}/tiles`);
  expect(tile?.zones[0]?.grade).toBe('matt');
  await later.reload();
  await later.getByText(/All 4 notes have been sent/).waitFor();
  expect((await kept()).readings).toHaveLength(1);
  await phone.context.close();
});

test('a note whose answer is lost on the way is sent again, and counts once', async () => {
  const phone = await atTheFire();
  await button(phone.page, 'Lit now').click();
  await phone.page.getByText(/The note has been sent/).waitFor();
  let cut = 0;
  let lost = false;
  await phone.context.route('**/sheet/notes', async (route) => {
    if (cut++ > 0) return route.continue();
    await route.fetch();
    await route.abort('connectionreset');
    lost = true;
  });
  await phone.page.getByLabel('Temperature shown (°C)').fill('640');
  await button(phone.page, 'Note it').click();
  await expect.poll(() => lost, PATIENT).toBe(true);
  await phone.page.getByText('1 note waiting on this phone').waitFor();
  expect((await kept()).readings).toHaveLength(1);
  await button(phone.page, 'Send now').click();
  await phone.page.getByText(/All 2 notes have been sent/).waitFor();
  expect(cut).toBeGreaterThan(1);
  expect((await kept()).readings).toHaveLength(1);
  await phone.context.close();
});

test('two phones at one fire see each other’s notes, and neither writes over the other', async () => {
  const [one, two] = [await atTheFire(), await atTheFire()];
  await button(one.page, 'Lit now').click();
  await one.page.getByText(/The note has been sent/).waitFor();
  await two.context.setOffline(true);
  for (const [phone, where] of [
    [one, 'front'],
    [two, 'back'],
  ] as const) {
    await phone.page.getByLabel('Temperature shown (°C)').fill('500');
    await phone.page.getByLabel('Where in the fire').fill(where);
    await button(phone.page, 'Note it').click();
  }
  await two.context.setOffline(false);
  await two.page.getByText(/The note has been sent/).waitFor();
  await two.page.getByRole('heading', { name: 'Noted' }).waitFor();
  await two.page.getByText('500 °C front').waitFor();
  await two.page.getByText(/^Minute \d+$/).waitFor();
  const wheres = (await kept()).readings.map((reading) => reading.where).sort();
  expect(wheres).toEqual(['back', 'front']);
  await one.context.close();
  await two.context.close();
});

test('a fire lit before anyone looked at the phone gets its time, and stages end as the air changes', async () => {
  const { page, context } = await atTheFire();
  await button(page, 'It was lit earlier').click();
  const earlier = new Date(Date.now() - 30 * 60_000);
  const two = (n: number) => String(n).padStart(2, '0');
  await page.getByLabel('Lit at').fill(`${two(earlier.getHours())}:${two(earlier.getMinutes())}`);
  await button(page, 'Save').click();
  await page.getByText(/^Minute (29|30|31)$/).waitFor();
  await button(page, /^smothered/).click();
  await page.getByRole('heading', { name: /Air now: smothered since/ }).waitFor();
  await page.waitForTimeout(1_100);
  await button(page, 'The fire is out').click();
  await expect
    .poll(async () => (await kept()).stages.map((stage) => stage.air), PATIENT)
    .toEqual(['smothered']);
  await context.close();
});

test('lighting now is asked about where there is a record, and a tap inside a stage written by hand is said to be hidden', async () => {
  await fetch(`${service.address}/api${study}/firings/${firing}`, {
    method: 'PATCH',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ stages: [{ air: 'oxidising', from: 0, to: 36_000 }] }),
  });
  const { page, context } = await atTheFire();
  await button(page, 'Lit now').click();
  await page.getByText('This firing has a record already.').waitFor();
  expect(await axeViolations(page)).toEqual([]);
  await button(page, 'Leave it').click();
  expect((await kept()).lit).toBeNull();
  await button(page, 'Lit now').click();
  await button(page, 'It is being lit now').click();
  await page.getByText(/^Minute 0$/).waitFor();
  expect(await page.getByText(/a stage written by hand stands/).count()).toBe(0);
  await button(page, /^smothered/).click();
  await page.getByText(/a stage written by hand stands: oxidising from 0:00 to 10:00 h/).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
  await context.close();
});

test('an infrared reading is corrected for the surface, and its instrument is remembered', async () => {
  const { page, context } = await atTheFire();
  await page.getByText('Thermocouple K, class 2, now').click();
  await page.getByRole('button', { name: /Read by/ }).click();
  await page.getByRole('option', { name: 'Infrared thermometer' }).click();
  await page.getByLabel('Temperature shown (°C)').fill('737');
  await page.getByText(/^Corrected to 7\d\d °C: between \d+ and \d+ °C/).waitFor();
  await page.reload();
  await page.getByText('Infrared thermometer, now').click();
  await page.getByText(/Its settings: 10 µm, set to 0.95, surface 0.75 to 0.98/).waitFor();
  await page.getByLabel('Temperature shown (°C)').fill('737');
  await button(page, 'Note it').click();
  await expect.poll(async () => (await kept()).readings[0]?.reading.kind, PATIENT).toBe('infrared');
  await context.close();
});

test('a picture taken without a network waits on the phone, over a reload, and is sent once', async () => {
  const { page, context } = await atTheFire();
  await context.setOffline(true);
  const camera = page.locator('input[type=file]');
  expect(await camera.getAttribute('capture')).toBe('environment');
  await page.getByRole('button', { name: /Of$/ }).click();
  await page.getByRole('option', { name: `Tile ${run}`, exact: true }).click();
  const picture = { name: 'a.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(invented('invented.jpg')) };
  await camera.setInputFiles(picture);
  await page.getByText('1 note waiting on this phone').waitFor();
  await page.reload();
  await page.getByText(`Picture of Tile ${run}`).waitFor();
  await context.setOffline(false);
  await page.getByText(/The note has been sent/).waitFor();
  const tiles = await get<{ id: string; label: string }[]>(`${study}/tiles`);
  const tile = tiles.find((one) => one.label === `Tile ${run}`)!;
  expect(await get(`${study}/pictures?tile=${tile.id}`)).toHaveLength(1);
  await context.close();
});

test('the whole sheet is worked with the keyboard', async () => {
  const { page, context } = await atTheFire({});
  await tabTo(page, 'Lit now');
  await page.keyboard.press('Enter');
  await page.getByText(/^Minute 0$/).waitFor();
  await page.getByLabel('Temperature shown (°C)').focus();
  await page.keyboard.type('712,5');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await kept()).readings[0]?.reading.celsius, PATIENT).toBe(712.5);
  await context.close();
});

test('elsewhere nothing kept is shown: other pages without a network do not open, and the API is never answered from the phone', async () => {
  const phone = await atTheFire();
  await phone.context.setOffline(true);
  const refused = await phone.page.goto(`${study}/fire/firings`).catch((error: Error) => error.message);
  expect(refused).toContain('ERR_INTERNET_DISCONNECTED');
  const page = await phone.context.newPage();
  await page.goto(`${study}/fire/sheet/${firing}`);
  await page.getByRole('heading', { level: 1, name: `Fire ${run}` }).waitFor();
  const api = await page.evaluate(
    (path) =>
      fetch(path).then(
        () => 'answered',
        () => 'no answer',
      ),
    `/api${study}/firings/${firing}/sheet`,
  );
  expect(api).toBe('no answer');
  await phone.context.close();
});

test('a new build takes the place of the old one, and what the old one kept goes', async () => {
  let built = 1;
  const proxy = await proxyOf(service.address, {
    change: (path, body) =>
      path === '/sheet-worker.js' && built > 1
        ? body.replaceAll('/mark.svg', `/mark.svg?build=${built}`)
        : body,
  });
  const { page, context } = await visit(browser, proxy.address, PHONE);
  const marks = () =>
    page.evaluate(async () => {
      const caught = await Promise.all(
        (await caches.keys()).map(async (name) => (await caches.open(name)).keys()),
      );
      return caught.flat().flatMap((one) => (one.url.includes('mark.svg') ? [new URL(one.url).search] : []));
    });
  await open(page);
  expect(await marks()).toEqual([expect.stringMatching(/^\?__WB_REVISION__/)]);
  built = 2;
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  await expect.poll(marks, PATIENT).toEqual([expect.stringMatching(/^\?build=2/)]);
  await context.setOffline(true);
  await page.reload();
  await page.getByRole('heading', { level: 1, name: `Fire ${run}` }).waitFor();
  await context.close();
  await proxy.close();
});

test('a link opens the same sheet on a phone that knows no study, without a network too, until it is taken back', async () => {
  const desk = await visit(browser, service.address);
  await desk.page.goto(`${study}/fire/sheet`);
  await desk.page.getByRole('button', { name: /Firing$/ }).click();
  await desk.page.getByRole('option', { name: `Fire ${run}`, exact: true }).click();
  await desk.page.getByRole('button', { name: 'Make a link' }).click();
  await desk.page.getByRole('img', { name: /as a code/ }).waitFor();
  expect(await axeViolations(desk.page)).toEqual([]);
  const address = await desk.page.locator('.sheet-address').textContent();
  expect(address).toMatch(/^https:\/\/fire\.example\.org\/shared\/[\w-]{32}\/sheet$/);
  await desk.page.setViewportSize({ width: 380, height: 800 });
  expect(await sidewaysOverflow(desk.page)).toBeLessThanOrEqual(0);
  const path = new URL(address!).pathname;

  // Through the outside door, as the proxy on this machine would hand it in.
  const door = await proxyOf(service.address, { name: new URL(OUTSIDE).host });
  const phone = await visit(browser, door.address, PHONE);
  await phone.page.goto(path);
  await phone.page.getByText('This sheet opens without a network now').waitFor();
  expect(await phone.page.getByRole('link', { name: /At the fire/ }).count()).toBe(0);
  await phone.context.setOffline(true);
  await phone.page.reload();
  await button(phone.page, 'Lit now').click();
  await phone.page.getByText('1 note waiting on this phone').waitFor();
  await phone.context.setOffline(false);
  await phone.page.getByText(/The note has been sent/).waitFor();
  expect((await kept()).lit).not.toBeNull();

  await desk.page.getByRole('link', { name: /Take a link back/ }).click();
  await desk.page
    .getByRole('button', { name: /Take back/ })
    .first()
    .click();
  await desk.page.getByRole('button', { name: 'Take it back' }).click();
  await desk.page.getByText('Taken back', { exact: true }).waitFor();
  await phone.page.getByLabel('Temperature shown (°C)').fill('700');
  await button(phone.page, 'Note it').click();
  await phone.page.reload();
  await phone.page.getByRole('heading', { name: 'This sheet cannot be shown' }).waitFor();
  await phone.page.getByText('This sheet is closed').waitFor();
  expect(await axeViolations(phone.page)).toEqual([]);
  const [saved] = await Promise.all([
    phone.page.waitForEvent('download'),
    button(phone.page, 'Save what waits as CSV').click(),
  ]);
  expect(saved.suggestedFilename()).toBe('notes-from-the-fire.csv');
  expect((await kept()).readings).toEqual([]);
  expect((await phone.page.goto(`${study}/fire/sheet/${firing}`))?.status()).toBe(404);
  await desk.context.close();
  await phone.context.close();
  await door.close();
});

test('without a name outside the page says what to do; the paper sheet prints with its zones and blanks', async () => {
  const { page, context } = await visit(browser, service.address);
  await page.route('**/api/health', (route) =>
    route.fulfill({ json: { status: 'ok', version: 'test', outside: null } }),
  );
  await page.goto(`${study}/fire/sheet`);
  await page.getByText('Phones cannot reach this service yet').waitFor();
  expect(await axeViolations(page)).toEqual([]);
  expect(await page.locator('.paper').isVisible()).toBe(false);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.paper h1').textContent()).toBe(`Fire ${run}`);
  expect(await page.locator('.paper .zone').count()).toBe(6);
  expect(await page.getByText('☐ glossy').first().isVisible()).toBe(true);
  await context.close();
});

test.each(['light', 'dark'] as const)(
  'the sheet passes axe on a phone, its targets large (%s)',
  async (scheme) => {
    const phone = await atTheFire({ ...PHONE, scheme });
    const check = async (state: string) => {
      expect(await axeViolations(phone.page), state).toEqual([]);
      expect(await sidewaysOverflow(phone.page), state).toBeLessThanOrEqual(0);
      const small = await phone.page
        .locator('.phone :is(button, input:not(.unseen), summary, label.button)')
        .evaluateAll((all) =>
          all
            .map((one) => ({ of: one.outerHTML.slice(0, 80), ...one.getBoundingClientRect().toJSON() }))
            .filter(({ height, width }) => height > 0 && (height < 48 || width < 48)),
        );
      expect(small, state).toEqual([]);
    };
    await check('unlit');
    await button(phone.page, 'It was lit earlier').click();
    await check('time of lighting');
    await button(phone.page, 'Leave it').click();
    await button(phone.page, 'Lit now').click();
    await button(phone.page, /^oxidising/).click();
    await phone.page.getByText('Thermocouple K, class 2, now').click();
    await phone.page.getByRole('button', { name: /Read by/ }).click();
    await phone.page.getByRole('option', { name: 'Infrared thermometer' }).click();
    await phone.page.getByText(/Its settings/).click();
    await phone.page.getByText(/All 2 notes have been sent/).waitFor();
    await check('lit');
    await phone.context.setOffline(true);
    await button(phone.page, 'glossy').click();
    await phone.page.getByText(/1 note waiting/).waitFor();
    await check('waiting');
    await phone.context.close();
  },
);
