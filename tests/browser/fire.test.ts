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
interface TileSeen {
  id: string;
  label: string;
  zones: { id: string; label: string; grade: string | null; coats: number | null }[];
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

test('a tile is laid out with the keyboard alone, and a zone of it judged', async () => {
  await page.goto(`${own}/fire`);
  await page.getByRole('heading', { level: 1, name: 'Tiles' }).waitFor();
  await tabTo(page, 'New tile');
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').waitFor();
  await page.keyboard.type('Ladder 1');
  await page.keyboard.press('Enter');
  await page.getByRole('link', { name: 'Ladder 1' }).waitFor();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await tabTo(page, 'Ladder 1');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Ladder 1' }).waitFor();
  await page.getByRole('button', { name: /^B1/ }).press('Enter');
  await page.getByRole('dialog').getByLabel('Coats').fill('3');
  await page.getByRole('dialog').getByText('Glossy', { exact: true }).click();
  await page.getByRole('button', { name: 'Save the zone' }).click();
  await page.getByRole('button', { name: /^B1.*glossy.*3 coats/ }).waitFor();
  const [tile] = await get<TileSeen[]>(`${own}/tiles`);
  expect(tile?.zones.find((zone) => zone.label === 'B1')).toMatchObject({ grade: 'glossy', coats: 3 });
});

test('the demo leads from why only in places to what mattered, to the next tile, to a plan and its tiles', async () => {
  await page.goto(`${demo}/fire`);
  await page.getByRole('link', { name: 'See what mattered' }).click();
  await page.getByText(/^From 54 zones of 9 tiles, coats/).waitFor();
  await page.getByText('15 to 90 µm; 54 zones').waitFor();
  await page.getByText('Split ash · Split ash, then brushwood; 54 zones').waitFor();
  const row = page
    .getByRole('table', { name: 'Effects' })
    .getByRole('row')
    .filter({ hasText: 'coats' })
    .first();
  expect(await row.textContent()).toMatch(/matters.*odds ×4\.7 \(1\.7 to 24\), 95 % interval/);
  await page.getByRole('img', { name: /Chance of a glossy zone against coats/ }).waitFor();
  expect(await page.locator('.figure .zones circle').count()).toBe(54);
  await page.getByText('Tiles looked at: all 9').click();
  const ninth = page.getByRole('checkbox', { name: /^Tile 9/ });
  await ninth.focus();
  await page.keyboard.press('Space');
  await page.getByText(/^From 48 zones of 8 tiles/).waitFor();
  await page.getByText('Tiles looked at: 8 of 9').waitFor();
  await page.keyboard.press('Space');
  await page.getByText(/^From 54 zones of 9 tiles/).waitFor();
  await page.getByRole('link', { name: 'Suggest the next tile' }).click();
  await page.getByRole('button', { name: 'Suggest a tile' }).click();
  await page.getByRole('heading', { name: 'The tile suggested' }).waitFor();
  const narrow = page.getByRole('table', { name: 'What it would narrow' });
  expect(await narrow.textContent()).toMatch(/odds × [\d.,]+ \([\d.]+\)/);
  await page.getByLabel('Zones on the tile').fill('5');
  await page.getByLabel('Zones on the tile').press('Tab');
  await page.getByText(/choices above have changed since a tile was suggested/).waitFor();
  expect(await page.getByRole('button', { name: 'Accept it as a plan' }).count()).toBe(0);
  await page.getByLabel('Zones on the tile').fill('6');
  await page.getByLabel('Zones on the tile').press('Tab');
  await page.getByRole('button', { name: 'Accept it as a plan' }).click();
  await page.getByRole('heading', { level: 1, name: /^Next tile/ }).waitFor();
  await page.getByLabel('In front of each label').fill('N-');
  await page.getByRole('button', { name: 'Make the tiles' }).click();
  await page.getByText('Made N-T1; they are under Tiles.').waitFor();
  expect(await get<TileSeen[]>(`${demo}/tiles`)).toHaveLength(10);
  expect(seen.complaints()).toEqual([]);
});

test('a tile’s place is written in words, and the plan’s place number stands beside it', async () => {
  const plan = await post(`${demo}/plans`, {
    name: 'Ladder',
    request: {
      ...{ kind: 'ladder', tiles: 2, rows: 1, columns: 3, seed: 3 },
      factors: [{ name: 'coats', unit: null, at: 'zone', levels: [1, 2, 3] }],
    },
  });
  await post(`${demo}/plans/${plan}/tiles`, { prefix: 'P-' });
  const made = (await get<TileSeen[]>(`${demo}/tiles`)).find(({ label }) => label === 'P-T1')!;
  await page.goto(`${demo}/fire/tiles/${made.id}`);
  await page.getByText(/place \d by the plan/).waitFor();
  const place = page.getByLabel('Place in the fire');
  expect(await place.inputValue()).toBe('');
  await place.fill('front');
  await place.press('Tab');
  await page.getByText(/place \d by the plan, front/).waitFor();
  await page.goto(`${demo}/fire/mattered`);
  await page.getByText(/zones were left out/).waitFor();
  await page.getByText(/zones of tiles .*P-T1 and P-T2: no gloss grade noted yet/).waitFor();
  await page
    .getByText(/9 tiles fired in .*; not fired yet: /)
    .first()
    .waitFor();
  expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
  expect(seen.complaints()).toEqual([]);
});

test('judging at the fire goes on to the next open zone, over to the next tile, and says when all are judged', async () => {
  const study = `/studies/${await post('/studies', { name: 'Judged' })}`;
  const firing = await post(`${study}/firings`, { name: 'F1' });
  const zones = ['A1', 'B1'].map((label, i) => ({ label, row: 1, column: i + 1 }));
  for (const label of ['T1', 'T2'])
    await post(`${study}/tiles`, {
      ...{ label, firing, rows: 1, columns: 2 },
      zones: zones.map((zone) => ({ ...zone, grade: label === 'T1' && zone.label === 'B1' ? 'matt' : null })),
    });
  await page.goto(`${study}/fire/sheet/${firing}`);
  const judge = page.getByRole('region', { name: 'Gloss, zone by zone' });
  const glossy = (zone: string) =>
    judge.getByRole('group', { name: `Gloss of ${zone}` }).getByRole('button', { name: 'glossy' });
  await glossy('A1').click();
  await judge.getByText('Zone (0 of 2 judged)').first().waitFor();
  await glossy('A1').click();
  await judge.getByText('Zone (1 of 2 judged)').first().waitFor();
  await glossy('B1').click();
  await judge.getByText('All 4 zones are judged.').waitFor();
});

test('a plan with more settings than places is refused in words, and nothing typed is lost', async () => {
  await page.goto(`${own}/fire/plans/new`);
  await page.getByLabel('Rows of zones on a tile').fill('1');
  await page.getByLabel('Columns of zones on a tile').fill('2');
  await page.getByRole('button', { name: 'Draw up the plan' }).click();
  await page.getByText('No plan can be drawn up').waitFor();
  await page.reload();
  await page.getByText('What you had typed before is still here').waitFor();
  await page.getByLabel('Columns of zones on a tile').fill('6');
  await page.getByRole('button', { name: 'Draw up the plan' }).click();
  await page.getByRole('heading', { level: 1, name: 'Thickness ladder' }).waitFor();
  expect(await page.locator('.labels .zone').count()).toBe(6);
  // No firing of that number is meant, but a study has one.
  expect(await page.locator('.labels').textContent()).toMatch(/Place 1 in the fire/);
});

test('a firing is recorded with its stages, and the notebook finds it by its words', async () => {
  await page.goto(`${own}/fire/firings`);
  await page.getByRole('button', { name: 'New firing' }).click();
  await page.getByLabel('Name').fill('First fire');
  await page.getByLabel('Day').fill('2026-03-01');
  await page.getByLabel('Fuel').fill('Beech');
  await page.getByRole('button', { name: 'Add a stage' }).click();
  await page.getByRole('button', { name: 'Record the firing' }).click();
  await page.getByText('oxidising from 0:00 to 1:00 h').waitFor();
  await page.goto(`${own}/fire/notebook`);
  await page.getByLabel('Search the notebook').fill('beech');
  await expect.poll(() => page.locator('.line > li').count(), PATIENT).toBe(1);
  expect(await page.locator('.line > li').textContent()).toMatch(/2026-03-01.*firing.*First fire/);
  const [saved] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('link', { name: 'Download as CSV' }).click(),
  ]);
  expect(saved.suggestedFilename()).toBe('notebook.csv');
});

const PAGES = ['', '/firings', '/mattered', '/next', '/plans', '/plans/new', '/sheet', '/notebook'];
test.each(['light', 'dark'] as const)(
  'every page of the fire passes axe on a phone and a desk (%s)',
  async (scheme) => {
    for (const look of [PHONE, {}]) {
      const one = await visit(browser, service.address, { ...look, scheme });
      for (const path of PAGES) {
        await one.page.goto(`${demo}/fire${path}`);
        await one.page.getByRole('heading', { level: 1 }).waitFor();
        await one.page.waitForLoadState('networkidle');
        expect(await axeViolations(one.page), path).toEqual([]);
        expect(await sidewaysOverflow(one.page), path).toBeLessThanOrEqual(0);
      }
      expect(one.complaints()).toEqual([]);
      await one.context.close();
    }
  },
);
