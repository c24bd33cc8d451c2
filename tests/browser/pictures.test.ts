import type { Browser, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest';
import type { Tile } from '../../api/contract/tile.ts';
import { ciede2000 } from '../../api/domain/colour/ciede2000.ts';
import { labOf } from '../../api/domain/colour/lab.ts';
import { channelToLight } from '../../api/domain/colour/srgb.ts';
import {
  axeViolations,
  DESK,
  openBrowser,
  PATIENT,
  PHONE,
  sidewaysOverflow,
  tabTo,
  type Visit,
  visit,
} from '../support/browser.ts';
import { phoneJpeg } from '../support/pictures.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let own: string;
let demo: string;

async function post(path: string, body: unknown = {}): Promise<string> {
  const form = body instanceof FormData;
  const made = await fetch(`${service.address}/api${path}`, {
    method: 'POST',
    ...(form ? {} : { headers: { 'content-type': 'application/json' } }),
    body: form ? body : JSON.stringify(body),
  });
  return ((await made.json()) as { id: string }).id;
}
async function get<Answer>(path: string): Promise<Answer> {
  return (await (await fetch(`${service.address}/api${path}`)).json()) as Answer;
}
const tileNow = (tile: string) => get<Tile>(`${own}/tiles/${tile}`);

/** Grey at the left, paint at the right, both lit by the same reddish light; larger than what is sent. */
const PAINT = [64, 48, 40] as const;
const GREY_LIT = [130, 118, 100] as const;
function photograph(): Buffer {
  const png = new PNG({ width: 2600, height: 1300 });
  for (let i = 0; i < png.width * png.height; i++) {
    const colour = i % png.width < 1300 ? GREY_LIT : PAINT;
    png.data.set([...colour, 255], 4 * i);
  }
  return PNG.sync.write(png);
}
const photo = { name: 'tile.png', mimeType: 'image/png', buffer: photograph() };
/** The paint as the grey card says it is: each channel by 18 % over the grey's light. */
const trueLab = labOf(
  PAINT.map((byte, i) => (0.18 * channelToLight(byte)) / channelToLight(GREY_LIT[i]!)) as unknown as [
    number,
    number,
    number,
  ],
);

async function openTile(label: string, grid: object = { rows: 1, columns: 2 }): Promise<string> {
  const tile = await post(`${own}/tiles`, { label, ...grid });
  await page.goto(`${own}/fire/tiles/${tile}`);
  await page.getByRole('heading', { level: 2, name: 'Pictures' }).waitFor();
  return tile;
}
async function choose(file: { name: string; mimeType: string; buffer: Buffer }) {
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.getByRole('button', { name: /^Add a picture/ }).click(),
  ]);
  await chooser.setFiles(file);
}
const draw = () => page.getByRole('button', { name: 'Draw it' });
const pad = () => page.getByRole('application');
async function places() {
  const box = (await pad().boundingBox())!;
  return ([x, y]: readonly [number, number]): [number, number] => [
    box.x + x * box.width,
    box.y + y * box.height,
  ];
}
async function dragBox(from: readonly [number, number], to: readonly [number, number]) {
  const at = await places();
  await page.mouse.move(...at(from));
  await page.mouse.down();
  await page.mouse.move(...at([(from[0] + to[0]) / 2, to[1]]));
  await page.mouse.move(...at(to));
  await page.mouse.up();
}

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

test('by mouse: a large picture is made smaller, grey and zone are drawn, and the colour is what the grey says', async () => {
  const tile = await openTile('Mouse');
  await choose(photo);
  await page.getByText('Made smaller before it was sent: 2400 × 1200 pixels of 2600 × 1300').waitFor();
  await draw().click();
  await dragBox([0.05, 0.1], [0.4, 0.9]);
  await page.getByRole('button', { name: /^Zone A1/ }).waitFor();
  expect((await tileNow(tile)).pictures[0]).toMatchObject({ width: 2400, grey: { reflectance: 0.18 } });
  await draw().click();
  const at = await places();
  for (const corner of [
    [0.6, 0.2],
    [0.9, 0.2],
    [0.75, 0.8],
    [0.6, 0.2],
  ] as const)
    await page.mouse.click(...at(corner));
  await page.getByRole('button', { name: /^Zone B1/ }).waitFor();
  await page.getByRole('button', { name: 'Measure the colours' }).click();
  await page.getByText('1 colour measured').waitFor();
  const zone = (await tileNow(tile)).zones.find(({ label }) => label === 'A1')!;
  expect(zone.outline).toHaveLength(3);
  // What is left is JPEG and the rounding to bytes.
  expect(ciede2000(zone.measuredColour!.lab, trueLab)).toBeLessThan(1);
  const row = page.getByRole('table', { name: 'Colours measured' }).getByRole('row').nth(1);
  expect(await row.textContent()).toContain(zone.measuredColour!.hex);
  expect(seen.complaints()).toEqual([]);
});

test('by keys alone: a zone of a pot without a grid, each corner read out, and back where it began', async () => {
  const tile = await openTile('Pot', { rows: 0, columns: 0 });
  await choose(photo);
  await page.getByText('Made smaller').waitFor();
  await page.getByRole('button', { name: /^Grey patch/ }).click();
  await page.getByRole('option', { name: 'A new zone' }).click();
  await page.getByLabel('Its name').fill('shoulder');
  await tabTo(page, 'Draw it');
  await page.keyboard.press('Enter');
  await expect.poll(() => pad().evaluate((one) => one === document.activeElement), PATIENT).toBe(true);
  const said = page.getByRole('status').filter({ hasText: /Corner|Crosshair|Nothing|dropped|left/ });
  await page.keyboard.press('Shift+ArrowRight');
  expect(await said.textContent()).toBe('Crosshair at 55 % from the left, 50 % from the top');
  await page.keyboard.press('Enter');
  expect(await said.textContent()).toBe('Corner 1 at 55 % from the left, 50 % from the top');
  await page.keyboard.press('Escape');
  expect(await said.textContent()).toBe('Outline dropped');
  for (const key of [
    'Enter',
    'Shift+ArrowRight',
    'Enter',
    'ArrowDown',
    'Enter',
    'Backspace',
    'Shift+ArrowDown',
    'Enter',
    'Enter',
  ])
    await page.keyboard.press(key);
  await pad().waitFor({ state: 'detached' });
  await expect.poll(async () => (await tileNow(tile)).zones.length, PATIENT).toBe(1);
  const [zone] = (await tileNow(tile)).zones;
  expect(zone).toMatchObject({
    label: 'shoulder',
    row: null,
    outline: [
      [0.55, 0.5],
      [0.6, 0.5],
      [0.6, 0.56],
    ],
  });
  await expect.poll(() => draw().evaluate((one) => one === document.activeElement), PATIENT).toBe(true);
  // A name that is taken is refused before anything is drawn under it.
  await page.getByRole('button', { name: /^Grey patch/ }).click();
  await page.getByRole('option', { name: 'A new zone' }).click();
  await page.getByLabel('Its name').fill('shoulder');
  await page.getByText('A zone shoulder is there already.').waitFor();
  expect(await draw().isDisabled()).toBe(true);
  await page.getByRole('button', { name: /shoulder.*not judged/ }).press('Enter');
  await page.getByRole('dialog').getByText('Glossy', { exact: true }).click();
  await page.getByRole('button', { name: 'Save the zone' }).click();
  await page.locator('.board .shape.glossy').waitFor();
});

test('by finger: corners are tapped', async () => {
  const context = await browser.newContext({
    ...{ baseURL: service.address, viewport: { width: 380, height: 800 } },
    ...{ hasTouch: true, isMobile: true },
  });
  page = await context.newPage();
  const tile = await openTile('Finger');
  await choose(photo);
  await page.getByText('Made smaller').waitFor();
  await draw().tap();
  await pad().waitFor();
  await pad().scrollIntoViewIfNeeded();
  const at = await places();
  for (const corner of [
    [0.1, 0.2],
    [0.4, 0.2],
    [0.4, 0.8],
  ] as const)
    await page.touchscreen.tap(...at(corner));
  await page.getByText(/^Corner 3 at 40 %/).waitFor();
  await page.getByRole('button', { name: 'Close the outline' }).tap();
  await expect.poll(async () => (await tileNow(tile)).pictures[0]?.grey?.outline.length, PATIENT).toBe(3);
  await context.close();
});

test('without grey, with a file that is none, and with sides that cross, the page says why', async () => {
  await openTile('Refused');
  await choose({ name: 'a.png', mimeType: 'image/png', buffer: Buffer.from('<svg xmlns="x"/>') });
  const alert = page.getByRole('alert');
  await alert.waitFor();
  expect(await alert.textContent()).toContain('a picture needs to be a JPEG, a PNG or a WebP');
  await choose(photo);
  await page.getByText('Made smaller').waitFor();
  await page.getByRole('button', { name: /^Grey patch/ }).click();
  await page.getByRole('option', { name: /^Zone A1/ }).click();
  await draw().click();
  const at = await places();
  for (const corner of [
    [0.2, 0.2],
    [0.8, 0.8],
    [0.8, 0.2],
    [0.2, 0.8],
  ] as const)
    await page.mouse.click(...at(corner));
  await page.getByRole('button', { name: 'Close the outline' }).click();
  await page.getByText('sides that do not cross').waitFor();
  await page.getByRole('button', { name: 'Drop it' }).click();
  await dragBox([0.6, 0.2], [0.9, 0.8]);
  await page.getByRole('button', { name: 'Measure the colours' }).click();
  await page.getByText('A1: a measured colour needs a grey patch in the same picture').waitFor();
});

test('a picture taken on its side is shown upright, and no place is left in it', async () => {
  const tile = await openTile('Side');
  const form = new FormData();
  form.set('file', new File([phoneJpeg(6) as Uint8Array<ArrayBuffer>], 'a.jpg'));
  form.set('tile', tile);
  const id = await post(`${own}/pictures`, form);
  await page.reload();
  const image = page.locator('.board > img');
  const size = () => image.evaluate((one: HTMLImageElement) => [one.naturalWidth, one.naturalHeight]);
  await expect.poll(size, PATIENT).toEqual([40, 60]);
  expect(await get(`${own}/pictures/${id}`)).toMatchObject({ width: 40, height: 60 });
});

test('an analysis names its zone on the form; both pages show it', async () => {
  const tile = await openTile('Read');
  const analysis = await post(`${own}/analyses`, {
    ...{ specimen: tile, measured: 'paint', spot: 'a' },
    reported: [
      { analyte: 'PbO', value: 45 },
      { analyte: 'SiO2', value: 35 },
    ],
  });
  await page.goto(`${own}/sherds/${tile}/analyses/${analysis}/edit`);
  await page.getByRole('button', { name: /Zone of the tile/ }).click();
  await page.getByRole('option', { name: 'B1' }).click();
  await page.getByRole('button', { name: 'Save the analysis' }).click();
  await page.getByRole('definition').filter({ hasText: /^B1$/ }).getByRole('link').click();
  const row = page.getByRole('table', { name: 'Zones' }).getByRole('row').filter({ hasText: 'B1' });
  await expect.poll(() => row.textContent(), PATIENT).toMatch(/paint a PbO 56\.3 wt%, SiO₂ 43\.8 wt%/);
});

test('the notebook shows pictures, and is taken away with them', async () => {
  await page.goto(`${demo}/fire/notebook`);
  await page.getByLabel('Search the notebook').fill('tile 5 glossy');
  await page
    .getByRole('list', { name: 'Pictures of Tile 5' })
    .getByRole('img', { name: /^Invented picture/ })
    .waitFor();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Download with pictures' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('notebook.zip');
});

test.each([
  ['light', DESK],
  ['dark', DESK],
  ['light', PHONE],
  ['dark', PHONE],
] as const)(
  'axe finds nothing on a tile with a picture, while drawing, in firings and the notebook (%s, %o)',
  async (scheme, look) => {
    await seen.context.close();
    seen = await visit(browser, service.address, { ...look, scheme });
    page = seen.page;
    const tiles = await get<Tile[]>(`${demo}/tiles`);
    const tile = tiles.find(({ label }) => label === 'Tile 5')!;
    const looksWell = async () => {
      expect(await axeViolations(page)).toEqual([]);
      expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
      expect(seen.complaints()).toEqual([]);
    };
    await page.goto(`${demo}/fire/tiles/${tile.id}`);
    await page.getByRole('table', { name: 'Colours measured' }).waitFor();
    await looksWell();
    await draw().click();
    await pad().waitFor();
    await page.keyboard.press('Enter');
    await looksWell();
    for (const [path, heading] of [
      ['firings', 'Firings'],
      ['notebook', 'Notebook'],
    ] as const) {
      await page.goto(`${demo}/fire/${path}`);
      await page.getByRole('heading', { level: 1, name: heading }).waitFor();
      await page.waitForLoadState('networkidle');
      await looksWell();
    }
  },
);
