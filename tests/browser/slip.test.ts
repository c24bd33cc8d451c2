import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Comparison } from '../../api/contract/placement.ts';
import type { DrawOffAnswer } from '../../api/contract/slip.ts';
import type { WareGroup } from '../../api/contract/ware-group.ts';
import { studyPath } from '../../web/paths.ts';
import {
  axeViolations,
  openBrowser,
  PHONE,
  sidewaysOverflow,
  type Visit,
  visit,
} from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let study: string;
let usual: Comparison;

async function ask<Answer>(path: string, body?: unknown): Promise<Answer> {
  const sent = {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  };
  const answer = await fetch(`${service.address}/api${path}`, body === undefined ? {} : sent);
  return (await answer.json()) as Answer;
}

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  study = (await ask<{ id: string }>('/demo', {})).id;
  const groups = await ask<WareGroup[]>(`/studies/${study}/groups`);
  usual = await ask(`/studies/${study}/comparison`, { settings: { groups: groups.map(({ id }) => id) } });
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(() => open());
afterEach(async () => {
  const complaints = seen.complaints();
  await seen.context.close();
  expect(complaints).toEqual([]);
});

async function open(look?: Parameters<typeof visit>[2]) {
  await seen?.context.close();
  seen = await visit(browser, service.address, look);
  page = seen.page;
  await page.goto(studyPath(study, '/placement'));
  await page.locator('.sentence').waitFor();
}
const sentence = () => page.locator('.sentence').textContent();
const sides = () => page.locator('.slip > p[role=status]').textContent();
const thumb = () => page.getByRole('slider', { name: /Slip drawn off/ });
const shown = () => page.locator('.slider-value').textContent();
const fold = (name: RegExp) => page.getByRole('button', { name }).click();

async function chooseOwnSlip() {
  await page.getByRole('button', { name: /Slip$/ }).click();
  await page.getByRole('option', { name: /Its own slip/ }).click();
  await page.locator('.slider').waitFor();
}
async function drawOffByKeys(presses: number) {
  await thumb().focus();
  for (let i = 0; i < presses; i++) await page.keyboard.press('PageUp');
}

describe('slip in the paint', () => {
  test('is in on both sides until a slip is chosen, and the page says so', async () => {
    expect(await sides()).toBe('Tile 1: slip in; the references: slip in. Like is compared with like.');
  });

  test('names the oxides that the slip lacks before it draws anything', async () => {
    const bare = (await ask<{ id: string }>('/demo', {})).id;
    const { rows } = await ask<{ rows: { id: string; specimenLabel: string; measured: string }[] }>(
      `/studies/${bare}/analyses?limit=500`,
    );
    const slip = rows.find((one) => one.specimenLabel === 'Tile 1' && one.measured === 'slip')!;
    const path = `/studies/${bare}/analyses/${slip.id}`;
    const { reported } = await ask<{ reported: { analyte: string }[] }>(path);
    await fetch(`${service.address}/api${path}`, {
      method: 'PATCH',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ reported: reported.filter(({ analyte }) => !['PbO', 'SO3'].includes(analyte)) }),
    });
    await page.goto(studyPath(bare, '/placement'));
    await page.getByRole('button', { name: /Slip$/ }).click();
    await page.getByRole('option', { name: /Its own slip/ }).click();
    await page.getByText('were not measured in the slip of Tile 1').waitFor();
    expect(await page.locator('.slider').count()).toBe(0);
    expect(await sentence()).toBe(usual.placements[0]!.sentence);
    await page.getByText(/Take the slip to hold no/).click();
    await page.locator('.slider').waitFor();
  });

  test('drawn off by keys moves the replica and gives the sentence of the service', async () => {
    await chooseOwnSlip();
    const mark = page.locator('.figure g[clip-path] .replica.chosen circle').first();
    const before = (await mark.boundingBox())!;
    await drawOffByKeys(4);
    const f = Number(await shown());
    expect(f).toBeGreaterThan(0.05);
    const choice = {
      specimen: usual.placements[0]!.id,
      source: { kind: 'own' },
      f,
      from: 'a value set by hand',
      unmeasured: 'none',
    };
    const there = await ask<DrawOffAnswer>(`/studies/${study}/slip/draw-off`, {
      comparison: usual.request,
      choice,
    });
    await expect.poll(sentence).toBe(there.placement.sentence);
    expect(await sides()).toBe(there.likeWithLike.sentence);
    const row = page.getByRole('row', { name: new RegExp(there.placement.groups[0]!.name) }).first();
    await expect.poll(() => row.textContent()).toContain(there.placement.groups[0]!.distance.toPrecision(3));
    await expect.poll(async () => (await mark.boundingBox())!.x).not.toBe(before.x);
    expect(await page.locator('.figure path.way').count()).toBe(1);
    expect(await page.locator('.slip').textContent()).toContain(`At most ${there.limit.f.toFixed(3)}`);
  });

  test('follows the mouse, and stays as it is over a reload', async () => {
    await chooseOwnSlip();
    const track = (await page.locator('.slider-track').boundingBox())!;
    const y = track.y + track.height / 2;
    await page.mouse.move(track.x + 2, y);
    await page.mouse.down();
    await page.mouse.move(track.x + track.width / 3, y, { steps: 5 });
    await page.mouse.up();
    const [f, said] = [await shown(), await sentence()];
    expect(Number(f)).toBeGreaterThan(0.05);
    expect(said).not.toBe(usual.placements[0]!.sentence);
    await page.reload();
    await expect.poll(shown).toBe(f);
    await expect.poll(sentence).toBe(said);
  });

  test('stays with a placement that is kept', async () => {
    await chooseOwnSlip();
    await drawOffByKeys(3);
    const said = await sentence();
    const f = await shown();
    await page.getByRole('button', { name: /Keep this placement/ }).click();
    await page.getByRole('button', { name: 'Keep it' }).click();
    await page.getByText('Kept on').waitFor();
    expect(await sentence()).toBe(said);
    expect(await page.locator('.slip').textContent()).toContain(`Drawn off: f = ${f}`);
  });
});

describe('how much slip', () => {
  test('is estimated by tracers that disagree, said plainly, and put on the slider', async () => {
    await chooseOwnSlip();
    await fold(/How much slip/);
    await page.locator('.estimate-value').waitFor();
    const wish = {
      by: 'tracers',
      specimen: usual.placements[0]!.id,
      tracers: ['Al2O3', 'TiO2'],
    };
    const { estimate } = await ask<{ estimate: { f: number; low: number; high: number } }>(
      `/studies/${study}/slip/estimate`,
      wish,
    );
    const said = await page.locator('.estimate-value').first().textContent();
    expect(said).toContain(`f = ${estimate.f.toFixed(3)}, 95 % interval ${estimate.low.toFixed(3)}–`);
    expect(await page.locator('.estimate').textContent()).toContain('The tracers disagree');
    const button = page.getByRole('button', { name: /^Draw off f =/ });
    const f = (await button.textContent())!.replace('Draw off f = ', '');
    // No more can be drawn off than leaves every oxide something; then the page says so.
    expect(Number(f)).toBeLessThanOrEqual(Number(estimate.f.toFixed(3)));
    const cut = Number(f) < Number(estimate.f.toFixed(3));
    expect(await page.getByText('More than that cannot be drawn off').count()).toBe(cut ? 1 : 0);
    await button.click();
    expect(await shown()).toMatch(new RegExp(`^${f} ± 0\\.\\d+$`));
    expect(await sides()).toContain('from tracers');
  });

  test('is estimated by a batch of the bench and by a group’s own line', async () => {
    await chooseOwnSlip();
    await fold(/How much slip/);
    await page.getByText('By the batch').click();
    await page.getByRole('button', { name: /Batch$/ }).click();
    await page.getByRole('option', { name: /Batch A/ }).click();
    await page.getByText(/What was read is batch paint and slip/).waitFor();
    await page.getByText('By a ware group’s line').click();
    await page.getByRole('button', { name: /Line of$/ }).click();
    await page.getByRole('option').first().click();
    await page.getByText(/must not be used to test membership/).waitFor();
  });
});

describe('uncertainty', () => {
  test('is carried by draws beside the page: sentence, intervals, cloud and seed', async () => {
    await fold(/How sure is this/);
    await page.getByRole('button', { name: 'Draw 2,000 times' }).click();
    await page.getByText('What was carried').waitFor();
    const answer = await ask<{ sentence: string }>(`/studies/${study}/slip/uncertainty`, {
      comparison: usual.request,
      specimen: usual.placements[0]!.id,
      settings: { draws: 2000, seed: 1 },
    });
    expect(await page.locator('.estimate-value').textContent()).toBe(answer.sentence);
    expect(answer.sentence).toMatch(/side in .* % of 2,000 draws/);
    expect(await page.locator('.figure path.cloud').count()).toBe(1);
    expect(await page.locator('.slip').textContent()).toContain('Seed 1.');
  });

  test('can be cancelled, and is not shown for a replica that has moved since', async () => {
    await chooseOwnSlip();
    await fold(/How sure is this/);
    await page.getByLabel('Draws').fill('100000');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /Draw 100,000 times/ }).click();
    await page.getByRole('button', { name: 'Cancel' }).click();
    expect(await page.getByRole('progressbar').count()).toBe(0);
    await page.getByLabel('Draws').fill('500');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Draw 500 times' }).click();
    await page.getByText('What was carried').waitFor();
    await drawOffByKeys(1);
    await page.getByText('Something has changed since the last draws').waitFor();
    await expect.poll(() => page.locator('.figure path.cloud').count()).toBe(0);
  });
});

describe('the layer and what is beneath', () => {
  test('is recast beside the slip, and its reading depth says which oxides read the slip', async () => {
    await chooseOwnSlip();
    await fold(/Lead alone, or with silica/);
    await page.getByText('Beside the slip of Tile 1', { exact: true }).waitFor();
    await fold(/How deep is it read/);
    await page.getByLabel('Thickness, µm').fill('10');
    await page.getByLabel('Density, g/cm³').fill('4.5');
    await page.keyboard.press('Enter');
    await page.getByText(/^This reading sees mostly the slip in Fe₂O₃/).waitFor();
    const iron = page.getByRole('row', { name: /Fe₂O₃.*Fe Kα 6\.40 keV/ });
    expect(await iron.textContent()).toMatch(/slip|both/);
  });

  test('takes the thickness of tiles from their zones, and says from which', async () => {
    await fold(/Slip by thickness/);
    await page.getByRole('button', { name: 'Take thicknesses from zones' }).click();
    const lines = async () => (await page.getByLabel('Tiles', { exact: true }).inputValue()).split('\n');
    // Tile 5 was read at A1 and C1, noted as 65 and 90 µm: mean 77.5, standard deviation 25/√2.
    await expect
      .poll(async () => (await lines()).find((line) => line.startsWith('Tile 5;')))
      .toMatch(/^Tile 5; 77\.5; 17\.7; ; ?$/);
    await page.getByText(/Tile 5: A1, C1/).waitFor();
  });

  test('teaches how slip falls with thickness, and takes it off the references', async () => {
    await fold(/Slip by thickness/);
    await page
      .getByLabel('Tiles', { exact: true })
      .fill('A; 10; 1; 0.5; 0.01\nB; 20; 1; 0.333; 0.01\nC; 40; 1; 0.2; 0.01');
    const sherd = usual.references.find(({ label }) => label.endsWith('-01'))!;
    await page.getByLabel('Reference sherds', { exact: true }).fill(`${sherd.label}; 90; 5`);
    await page.getByRole('button', { name: 'Learn from the tiles' }).click();
    await page.getByText(/^Depth (9\.99\d*|10\.0\d*) µm/).waitFor();
    await page.getByRole('button', { name: 'Draw it off these references' }).click();
    await expect.poll(sides).toContain('the references: slip drawn off in 1 of');
    expect(await sides()).toContain('These are not alike');
  });
});

describe('for everyone', () => {
  test.each([
    ['a desk, light', { scheme: 'light' }],
    ['a phone, dark', { ...PHONE, scheme: 'dark' }],
  ] as const)('on %s nothing is wrong by axe or wider than the window', async (_, look) => {
    await open(look);
    await chooseOwnSlip();
    await drawOffByKeys(2);
    for (const name of [/How much slip/, /How sure/, /Lead alone/, /How deep/, /Slip by thickness/])
      await fold(name);
    await page.locator('.estimate-value').first().waitFor();
    expect(await axeViolations(page)).toEqual([]);
    expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
  });
});
