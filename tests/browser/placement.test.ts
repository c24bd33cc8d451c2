import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { ComparisonText } from '../../api/contract/figure.ts';
import type { Comparison, ComparisonRequest } from '../../api/contract/placement.ts';
import type { WareGroup } from '../../api/contract/ware-group.ts';
import { studyPath } from '../../web/paths.ts';
import { idsIn } from '../figures/drawing.ts';
import { axeViolations, DESK, openBrowser, PHONE, tabTo, type Visit, visit } from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let study: string;
let groups: WareGroup[];
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
const compare = (request: Partial<ComparisonRequest> & Pick<ComparisonRequest, 'settings'>) =>
  ask<Comparison>(`/studies/${study}/comparison`, request);
const allGroups = () => groups.map(({ id }) => id);
const usualSettings = () => ({ ...usual.request.settings });

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  study = (await ask<{ id: string }>('/demo', {})).id;
  groups = await ask<WareGroup[]>(`/studies/${study}/groups`);
  const settings = { groups: allGroups() } as ComparisonRequest['settings'];
  usual = await compare({ settings });
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(async () => {
  seen = await visit(browser, service.address);
  page = seen.page;
  await page.goto(studyPath(study, '/placement'));
  await page.locator('.sentence').waitFor();
});
afterEach(async () => {
  const complaints = seen.complaints();
  await seen.context.close();
  expect(complaints).toEqual([]);
});

const sentence = () => page.locator('.sentence').textContent();
const settled = () => page.locator('.placing[aria-busy=false]').waitFor();
const readout = () => page.locator('.readout').textContent();
const ticks = () => page.locator('.scores .axis.x .tick text').allTextContents();
async function pick(label: RegExp, option: string | RegExp) {
  await page.getByRole('button', { name: label }).click();
  await page.getByRole('option', { name: option }).click();
}
async function saved(press: () => Promise<void>) {
  const download = page.waitForEvent('download');
  await press();
  const file = await download;
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') };
}
/** Where on the screen a replica's mark is. */
async function placeOf(chosen: boolean) {
  const ring = page
    .locator(`.figure g[clip-path] .replica${chosen ? '.chosen' : ':not(.chosen)'} circle`)
    .first();
  const box = (await ring.boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

describe('the verdict', () => {
  test('is the sentence of the service, before any figure or table', async () => {
    expect(await sentence()).toBe(usual.placements[0]!.sentence);
    const before = await page.evaluate(() => {
      const [first, figure] = [document.querySelector('.sentence')!, document.querySelector('.figure')!];
      return Boolean(first.compareDocumentPosition(figure) & Node.DOCUMENT_POSITION_FOLLOWING);
    });
    expect(before).toBe(true);
  });
  test('follows the replica chosen by list, by next, by table and by mark', async () => {
    await pick(/Replica$/, usual.placements[3]!.label);
    expect(await sentence()).toBe(usual.placements[3]!.sentence);
    await page.getByRole('button', { name: 'Next', exact: true }).click();
    expect(await sentence()).toBe(usual.placements[4]!.sentence);
    await page.getByRole('button', { name: `Look at ${usual.placements[7]!.label}` }).click();
    expect(await sentence()).toBe(usual.placements[7]!.sentence);
    await page.locator('.cover').scrollIntoViewIfNeeded();
    const { x, y } = await placeOf(false);
    await page.mouse.click(x, y);
    const label = (await readout())!.split(',')[0]!;
    expect(await sentence()).toBe(usual.placements.find((one) => one.label === label)!.sentence);
  });
  test('can be asked against any one group', async () => {
    await pick(/Against$/, groups[2]!.name);
    expect(await sentence()).toContain(groups[2]!.name);
    await page.getByRole('heading', { name: `Oxide by oxide against ${groups[2]!.name}` }).waitFor();
  });
  test('stays on the replica, group and settings after a reload', async () => {
    await pick(/Replica$/, usual.placements[2]!.label);
    await pick(/Against$/, groups[1]!.name);
    await page.getByRole('checkbox', { name: groups[3]!.name }).click({ force: true });
    await page.getByText(`against ${groups.length - 1} ware groups`).waitFor();
    await settled();
    const before = await sentence();
    await page.reload();
    await page.getByText(`against ${groups.length - 1} ware groups`).waitFor();
    await settled();
    expect(await sentence()).toBe(before);
    expect(before).toContain(usual.placements[2]!.label);
  });
});

describe('the scores plot', () => {
  test('is reached by Tab once and read by arrow keys, its words spoken as status', async () => {
    await tabTo(
      page,
      `${await page.locator('.scores svg title').textContent()}. Arrow keys read its points.`,
    );
    await page.keyboard.press('ArrowRight');
    expect(await readout()).toMatch(/replica, 1 of 9 from the left: PC1 .+, PC2 /);
    await page.keyboard.press('ArrowDown');
    expect(await readout()).toContain(groups[0]!.name);
    await page.keyboard.press('End');
    expect(await readout()).toContain(`${usual.groups[0]!.used} of ${usual.groups[0]!.used} from the left`);
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    const label = (await readout())!.split(',')[0]!;
    expect(await sentence()).toBe(usual.placements.find((one) => one.label === label)!.sentence);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.className)).not.toContain('cover');
    expect(await page.locator('.readout p').getAttribute('role')).toBe('status');
  });
  test('comes nearer by key, button and wheel, moves by drag, and is whole again on 0', async () => {
    const whole = await ticks();
    await page.locator('.cover').focus();
    await page.keyboard.press('+');
    await expect.poll(ticks).not.toEqual(whole);
    await page.keyboard.press('0');
    await expect.poll(ticks).toEqual(whole);
    await page.getByRole('button', { name: 'Nearer' }).click();
    await page.getByRole('button', { name: 'Nearer' }).click();
    const near = await ticks();
    expect(near).not.toEqual(whole);
    await page.locator('.cover').scrollIntoViewIfNeeded();
    const from = await placeOf(true);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 120, from.y + 40, { steps: 4 });
    await page.mouse.up();
    await expect.poll(async () => Math.round((await placeOf(true)).x - from.x)).toBe(120);
    const moved = await ticks();
    await page.keyboard.down('Control');
    await page.mouse.wheel(0, -300);
    await page.keyboard.up('Control');
    await expect.poll(ticks).not.toEqual(moved);
    await page.getByRole('button', { name: 'Whole' }).click();
    await expect.poll(ticks).toEqual(whole);
  });
  test('leaves a bare wheel to the page', async () => {
    const before = await ticks();
    await page.locator('.cover').hover();
    const top = await page.evaluate(() => scrollY);
    await page.mouse.wheel(0, 200);
    await expect.poll(() => page.evaluate(() => scrollY)).not.toBe(top);
    expect(await ticks()).toEqual(before);
  });
  test('names the point under the pointer', async () => {
    await page.locator('.cover').scrollIntoViewIfNeeded();
    const { x, y } = await placeOf(true);
    await page.mouse.move(x, y);
    await expect.poll(readout).toContain(usual.placements[0]!.label);
  });
  test('shows the two components that are chosen, and swaps them', async () => {
    await pick(/Up$/, /^PC3/);
    const titles = page.locator('.scores .axis-title');
    await expect
      .poll(() => titles.allTextContents())
      .toEqual([expect.stringContaining('PC1'), expect.stringContaining('PC3')]);
    await pick(/Across$/, /^PC3/);
    await expect
      .poll(() => titles.allTextContents())
      .toEqual([expect.stringContaining('PC3'), expect.stringContaining('PC1')]);
  });
  test('shows and hides ellipses and the oxides’ directions', async () => {
    const ellipses = page.locator('.scores .figure g[clip-path] > ellipse');
    expect(await ellipses.count()).toBe(groups.length);
    await page.getByText('Ellipses', { exact: true }).click();
    await expect.poll(() => ellipses.count()).toBe(0);
    await page.locator('.look').getByText('Oxides', { exact: true }).click();
    await expect.poll(() => page.locator('.scores .loading').count()).toBe(usual.model.parts.length);
  });
  test('is drawn again without the page being rendered again while it is dragged', async () => {
    await page.locator('.cover').scrollIntoViewIfNeeded();
    await page.evaluate(() => {
      const watched = globalThis as unknown as { elsewhere: number };
      watched.elsewhere = 0;
      new MutationObserver((changes) => {
        for (const { target } of changes)
          if (!(target as Element).closest?.('.scores, .readout')) watched.elsewhere++;
      }).observe(document.querySelector('.placing')!, { subtree: true, childList: true, attributes: true });
    });
    const { x, y } = await placeOf(true);
    const first = await page.locator('.scores .figure svg').elementHandle();
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 60, y + 60, { steps: 6 });
    await page.mouse.up();
    await expect.poll(() => first!.evaluate((svg) => svg.isConnected)).toBe(false);
    expect(await page.evaluate(() => (globalThis as unknown as { elsewhere: number }).elsewhere)).toBe(0);
  });
});

describe('the settings', () => {
  test('change the answer to what the service says for the same request', async () => {
    await page.getByRole('checkbox', { name: groups[0]!.name }).click({ force: true });
    await page.getByRole('button', { name: /^How it is reckoned/ }).click();
    await pick(/Scale$/, /^Logarithms/);
    await pick(/Spread of a group$/, /^Shrinkage \(Ledoit/);
    const wanted = await compare({
      settings: {
        ...usualSettings(),
        groups: allGroups().slice(1),
        scale: 'log10',
        covariance: { kind: 'shrinkage', target: 'ledoit-wolf' },
      },
    });
    await expect.poll(sentence).toBe(wanted.placements[0]!.sentence);
    await page.getByRole('button', { name: 'Back to the usual settings' }).click();
    await expect.poll(sentence).toBe(usual.placements[0]!.sentence);
  });
  test('say why an oxide fell out, and take it in at the cost of the specimens that lack it', async () => {
    const out = usual.model.fallenOut.find(({ because }) => because === 'not measured')!;
    await page.getByRole('button', { name: /^Oxides \d/ }).click();
    const tick = page.locator('.settings .tick').filter({ hasText: `not measured in ${out.specimens[0]}` });
    await tick.click();
    await page.getByText('Chosen by hand: specimens that lack one of them are left out.').waitFor();
    const settings = { ...usualSettings(), parts: [...usual.model.parts, out.oxide] };
    const wanted = await compare({ settings });
    await expect
      .poll(() => page.locator('.settings-gist').textContent())
      .toContain(`${wanted.placements.length} replicas`);
    expect(wanted.placements.length).toBeLessThan(usual.placements.length);
    await page.getByRole('button', { name: /^Specimens left out/ }).click();
    const table = page.getByRole('table', { name: 'Specimens left out' });
    expect(await table.textContent()).toContain(out.specimens[0]);
  });
  test('that cannot be compared are refused in words, and can be put right', async () => {
    await page.getByRole('button', { name: /^Oxides \d/ }).click();
    for (const oxide of usual.model.parts.slice(1))
      await page
        .locator('.settings .tick')
        .filter({ hasText: new RegExp(`^${shown(oxide)}$`) })
        .click();
    await page.getByRole('alert').waitFor();
    expect(await page.getByRole('alert').textContent()).toMatch(/two oxides/);
    expect(seen.complaints().every((one) => /status of 4\d\d/.test(one))).toBe(true);
    await page.getByRole('button', { name: 'All measured everywhere' }).click();
    await expect.poll(sentence).toBe(usual.placements[0]!.sentence);
  });
  test('leave a sherd out with its reason, and take it back in', async () => {
    await page.locator('.cover').focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    const label = (await readout())!.split(',')[0]!;
    await page.getByRole('button', { name: `Leave ${label} out …` }).click();
    await page.getByLabel('Reason').fill('weathered');
    await page.getByRole('button', { name: 'Leave it out' }).click();
    await page.locator('.settings').getByText('weathered').waitFor();
    await page.getByRole('button', { name: /^Specimens left out/ }).click();
    await page.getByText('left out by hand: weathered').waitFor();
    await page.getByRole('button', { name: `Take ${label} back in` }).click();
    await expect.poll(sentence).toBe(usual.placements[0]!.sentence);
  });
});
const shown = (oxide: string) => oxide.replace(/\d/g, (digit) => '₀₁₂₃₄₅₆₇₈₉'[Number(digit)]!);

describe('what can be taken away', () => {
  test('the table of groups as CSV, at full precision', async () => {
    const first = usual.placements[0]!;
    const section = page.locator('section', {
      has: page.getByRole('heading', { name: `${first.label} against each ware group` }),
    });
    const { name, text } = await saved(() =>
      section.getByRole('button', { name: 'Download as CSV' }).click(),
    );
    expect(name).toBe(`${first.label} against groups.csv`);
    for (const group of first.groups) {
      expect(text).toContain(String(group.distance));
      if (group.d2 !== null) expect(text).toContain(String(group.d2));
    }
  });
  test('both figures as well-formed SVG, as they stand', async () => {
    for (const [name, button] of [
      ['scores.svg', 0],
      ['oxides.svg', 1],
    ] as const) {
      await page.getByRole('button', { name: 'Download as SVG' }).nth(button).click();
      const file = await saved(() => page.getByRole('menuitem', { name: /^For a slide/ }).click());
      expect(file.name).toBe(name);
      expect(idsIn(file.text).length).toBeGreaterThan(1);
      expect(file.text).toContain(usual.placements[0]!.label);
    }
  });
});

describe('other views', () => {
  const open = (title: string) => page.getByRole('button', { name: new RegExp(`^${title}`) }).click();

  test('draw nothing until they are opened, and then carry their caption', async () => {
    expect(await page.locator('figcaption').count()).toBe(0);
    await open('Tree');
    await page.locator('figcaption', { hasText: 'Ward’s criterion' }).waitFor();
    await pick(/Joined by$/, /^Average linkage/);
    await page.locator('figcaption', { hasText: 'average linkage' }).waitFor();
  });
  test('show the two oxides and the axes that are chosen, and give the same as a file', async () => {
    await open('Two oxides');
    const caption = page.locator('figcaption');
    await caption.waitFor();
    const section = page.locator('section', { has: page.locator('#views-heading') });
    const choose = async (label: RegExp, option: string) => {
      await section.getByRole('button', { name: label }).click();
      await page.getByRole('option', { name: option, exact: true }).click();
    };
    await choose(/Across$/, 'Al₂O₃');
    await choose(/Up$/, 'PbO');
    await choose(/Axes$/, 'Linear');
    await expect.poll(() => caption.textContent()).toMatch(/^PbO against Al₂O₃ of .* linear axes/);
    const { name, text } = await saved(() =>
      page.getByRole('button', { name: 'SVG of Two oxides', exact: true }).click(),
    );
    expect(name).toBe('pair.svg');
    expect(text).toContain('PbO against Al2O3');
    expect(text).toContain('linear scales');
  });
  test('come with the methods of a comparison that is not kept', async () => {
    await open('Methods, captions and sources');
    const words = await ask<ComparisonText>(`/studies/${study}/comparison/text`, {
      comparison: usual.request,
    });
    await page.getByText(words.methods).waitFor();
    await page.getByText(words.captions.scores).waitFor();
  });
});

describe('keeping', () => {
  test('a placement freezes it: it opens again as it was, is renamed, compared again, and deleted', async () => {
    await pick(/Replica$/, usual.placements[5]!.label);
    await page.getByRole('button', { name: 'Keep this placement …' }).click();
    await page.getByRole('textbox', { name: 'Name' }).fill('First firing');
    await page.getByRole('button', { name: 'Keep it', exact: true }).click();
    await page.getByRole('heading', { name: 'First firing', level: 1 }).waitFor();
    expect(await sentence()).toBe(usual.placements[5]!.sentence);
    await page.getByRole('button', { name: 'Change', exact: true }).click();
    await page.getByRole('textbox', { name: 'Note' }).fill('Before the second roast');
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('Before the second roast').waitFor();
    await page.getByRole('link', { name: '← Placement' }).click();
    await page.getByRole('link', { name: 'First firing' }).click();
    await page.getByRole('heading', { name: 'First firing', level: 1 }).waitFor();
    await page.getByRole('button', { name: 'Compare again' }).click();
    await page.getByRole('heading', { name: 'Placement', level: 1 }).waitFor();
    await expect.poll(sentence).toBe(usual.placements[5]!.sentence);
    await page.getByRole('link', { name: 'First firing' }).click();
    await page.getByRole('button', { name: 'Delete' }).click();
    await page.getByRole('alertdialog').getByRole('button', { name: 'Delete' }).click();
    await page.getByRole('heading', { name: 'Placement', level: 1 }).waitFor();
    await expect.poll(() => page.getByRole('link', { name: 'First firing' }).count()).toBe(0);
  });
});

describe('when something is not there yet', () => {
  test('a study without groups says what to bring in', async () => {
    const { id } = await ask<{ id: string }>('/studies', { name: 'Bare' });
    await page.goto(studyPath(id, '/placement'));
    await page.getByRole('heading', { name: 'No ware groups yet' }).waitFor();
    await page.getByRole('link', { name: 'Bring in analysed sherds' }).click();
    await page.waitForURL(`**${studyPath(id, '/intake')}`);
  });
  test('references without a replica are drawn by themselves', async () => {
    const { id } = await ask<{ id: string }>('/studies', { name: 'No tiles' });
    const group = await ask<{ id: string }>(`/studies/${id}/groups`, { name: 'Ford ware' });
    for (const [i, lead] of [40, 44, 47, 52, 55].entries()) {
      const made = await ask<{ id: string }>(`/studies/${id}/specimens`, { label: `F${i}`, group: group.id });
      const reported = [
        ['PbO', lead],
        ['SiO2', 90 - lead + i],
        ['MnO', 4 + i / 10],
      ].map(([analyte, value]) => ({ analyte, value }));
      await ask(`/studies/${id}/analyses`, { specimen: made.id, measured: 'paint', reported });
    }
    await page.goto(studyPath(id, '/placement'));
    await page.getByRole('heading', { name: 'No replica to place yet' }).waitFor();
    expect(await page.locator('.scores .references').count()).toBe(1);
    expect(await page.locator('.sentence').count()).toBe(0);
  });
});

test.each([
  ['light, desk', { ...DESK, scheme: 'light' }],
  ['dark, phone', { ...PHONE, scheme: 'dark' }],
] as const)('axe finds nothing with everything folded out: %s', async (_, look) => {
  const { page: other, context, complaints } = await visit(browser, service.address, look);
  await other.goto(studyPath(study, '/placement'));
  await other.locator('.sentence').waitFor();
  const change = other.getByRole('button', { name: 'Change', exact: true });
  if (await change.isVisible()) await change.click();
  // By key: what unfolds above moves what lies beneath.
  for (const fold of await other.locator('.fold-trigger').all()) await fold.press('Enter');
  expect(await other.locator('.fold-trigger[aria-expanded=false]').count()).toBe(0);
  expect(await axeViolations(other)).toEqual([]);
  expect(await other.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
    0,
  );
  expect(complaints()).toEqual([]);
  await context.close();
});
