import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { FrozenPlacement } from '../../api/contract/placement.ts';
import type { ShareMade } from '../../api/contract/share.ts';
import { studyPath } from '../../web/paths.ts';
import {
  axeViolations,
  DESK,
  openBrowser,
  PHONE,
  sidewaysOverflow,
  tabTo,
  type Visit,
  visit,
} from '../support/browser.ts';
import { readPdf, readPng, readSvg } from '../support/read-files.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
let seen: Visit;
let page: Page;
let study: string;
let kept: FrozenPlacement;

async function ask<Answer>(path: string, body?: unknown): Promise<Answer> {
  const headers = { 'content-type': 'application/json' };
  const sent = { method: 'POST', headers, body: JSON.stringify(body) };
  const answer = await fetch(`${service.address}/api${path}`, body === undefined ? {} : sent);
  return (await answer.json()) as Answer;
}
const share = (wish: object = {}) =>
  ask<ShareMade>(`/studies/${study}/shares`, { placement: kept.id, ...wish });

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  study = (await ask<{ id: string }>('/demo', {})).id;
  const groups = (await ask<{ id: string }[]>(`/studies/${study}/groups`)).map(({ id }) => id);
  kept = await ask(`/studies/${study}/placements`, {
    name: 'For the museum',
    comparison: { settings: { groups } },
  });
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});
beforeEach(async () => {
  seen = await visit(browser, service.address);
  page = seen.page;
});
let expected: RegExp | null = null;
afterEach(async () => {
  const complaints = seen.complaints().filter((text) => !expected?.test(text));
  expected = null;
  await seen.context.close();
  expect(complaints).toEqual([]);
});

async function saved(press: () => Promise<void>) {
  const download = page.waitForEvent('download');
  await press();
  return readFile(await (await download).path());
}

describe('sharing', () => {
  test('goes from the keyboard to an address that opens without the study around it', async () => {
    await page.goto(studyPath(study, '/share'));
    await page.getByRole('heading', { name: 'Share', exact: true }).waitFor();
    await tabTo(page, 'Share it');
    await page.keyboard.press('Enter');
    const link = page.locator('.share-address');
    const address = (await link.textContent())!;
    expect(address).toMatch(/\/shared\/[\w-]{22,}$/);
    await page.goto(address);
    await page.getByRole('heading', { name: kept.name }).waitFor();
    expect(await page.locator('.sentence').textContent()).toBe(kept.result.placements[0]!.sentence);
    expect(await page.locator('a[href*="/studies/"]').count()).toBe(0);
  });
  test('loads no more than it shows: nothing that checks what is sent, no page of the study, its data once', async () => {
    const { path } = await share();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    await page.goto(path);
    await page.getByRole('heading', { name: 'Methods, captions and sources' }).waitFor();
    expect(asked.filter((one) => one.startsWith('/api/'))).toEqual([`/api${path}`]);
    const code = asked.filter((one) => one.endsWith('.js') && one.startsWith('/assets/'));
    const sizes = await Promise.all(
      code.map(async (one) => {
        const text = await (await fetch(service.address + one)).text();
        expect(text, one).not.toContain('invalid_union');
        expect(text, one).not.toContain('Suggest the next tile');
        return text.length;
      }),
    );
    const sum = sizes.reduce((a, b) => a + b, 0);
    expect(sum).toBeGreaterThan(300_000);
    expect(sum).toBeLessThan(1_150_000);
    const packed = await fetch(service.address + code[0]!, { headers: { 'accept-encoding': 'br' } });
    expect(packed.headers.get('content-encoding')).toBe('br');
    expect(packed.headers.get('cache-control')).toContain('immutable');
  });
  test('shows the visitor a point, other components, methods and citations', async () => {
    const { path } = await share();
    await page.goto(path);
    const cover = page.locator('.cover');
    await cover.focus();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.readout').textContent()).not.toBe('');
    await page.getByRole('button', { name: /Across$/ }).click();
    await page.getByRole('option', { name: /PC3/ }).click();
    await expect.poll(() => page.locator('.axis.x .axis-title').first().textContent()).toContain('PC3');
    expect(await page.locator('main').textContent()).toContain('Hotelling');
    expect(await page.getByRole('link', { name: 'doi:10.1007/978-94-009-4109-0' }).count()).toBe(1);
  });
  test('lets the visitor draw slip off by keyboard, says that it is tried, and leads back', async () => {
    const { path } = await share();
    await page.goto(path);
    const sentence = page.locator('.sentence');
    const asKept = await sentence.textContent();
    await page.getByRole('button', { name: /Slip$/ }).press('Enter');
    await page.getByRole('option', { name: /^Its own slip/ }).waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    const slider = page.getByRole('slider', { name: /Slip drawn off/ });
    await slider.focus();
    for (let i = 0; i < 8; i++) await page.keyboard.press('PageUp');
    const replica = kept.result.placements[0]!.id;
    const f = Number(await slider.inputValue());
    expect(f).toBeGreaterThan(0);
    const choice = { specimen: replica, source: { kind: 'own' }, f };
    const asked = { comparison: kept.result.request, choice };
    const served = await ask<{ placement: { sentence: string } }>(`/studies/${study}/slip/draw-off`, asked);
    await expect.poll(() => sentence.textContent()).toBe(served.placement.sentence);
    expect(served.placement.sentence).not.toBe(asKept);
    const notice = page.locator('.notice', { hasText: 'Tried by you, not as kept' });
    expect(await notice.textContent()).toContain(asKept);
    expect(await axeViolations(page)).toEqual([]);
    await notice.getByRole('button', { name: 'Back to as kept' }).click();
    await expect.poll(() => sentence.textContent()).toBe(asKept);
    expect(await notice.count()).toBe(0);
  });
  test('opens with the slip that the placement was kept with, and can put it back in', async () => {
    const replica = kept.result.placements[0]!.id;
    const slip = [{ specimen: replica, source: { kind: 'own' }, f: 0.1 }];
    const comparison = { ...kept.result.request, slip };
    const drawn = await ask<FrozenPlacement>(`/studies/${study}/placements`, {
      name: 'Slip off',
      comparison,
    });
    const { path } = await ask<ShareMade>(`/studies/${study}/shares`, { placement: drawn.id });
    await page.goto(path);
    const sentence = page.locator('.sentence');
    expect(await sentence.textContent()).toBe(drawn.result.placements[0]!.sentence);
    expect(await page.getByText('Tried by you, not as kept').count()).toBe(0);
    await page.getByRole('button', { name: /Slip$/ }).click();
    await page.getByRole('option', { name: /^Left in/ }).click();
    await expect.poll(() => sentence.textContent()).toBe(kept.result.placements[0]!.sentence);
    await page.getByText('Tried by you, not as kept').waitFor();
  });
  test('gives everything as one zip', async () => {
    const { path } = await share();
    await page.goto(path);
    const link = page.getByRole('link', { name: 'Everything as one zip' });
    expect((await saved(() => link.click())).subarray(0, 2).toString()).toBe('PK');
  });
  test('gives figures as they are looked at, and tables', async () => {
    const { path } = await share();
    await page.goto(path);
    const files = page.getByRole('region', { name: 'Figures as files' });
    await files.waitFor();
    const link = (name: string) => page.getByRole('link', { name, exact: true });
    expect(readSvg((await saved(() => link('SVG of Scores').click())).toString()).get('svg')).toBe(1);
    expect((await readPdf(await saved(() => link('PDF of Oxides').click()))).pages).toBe(1);
    expect(readPng(await saved(() => link('PNG of Loadings').click())).width).toBe(3840);
    expect((await saved(() => link('members').click())).toString()).toContain('wt%');
  });
  test('takes a comment as words, never as a page', async () => {
    const { path } = await share({ comments: true });
    await page.goto(path);
    await page.getByLabel('Your name').fill('<img src=x onerror="document.title=1">');
    await page.getByLabel('Your comment').fill('<script>document.title = "run"</script>');
    await page.getByRole('button', { name: 'Leave this comment' }).click();
    await page.getByText('<script>document.title = "run"</script>', { exact: true }).waitFor();
    expect(await page.locator('main img, main script').count()).toBe(0);
    expect(await page.title()).toContain(kept.name);
    await page.goto(studyPath(study, '/share'));
    await page.getByText('<script>document.title = "run"</script>').first().waitFor();
  });
  test('can be taken back, and then says so and shows nothing', async () => {
    const { path } = await share();
    await page.goto(studyPath(study, '/share'));
    await page
      .getByRole('button', { name: /^Take back/ })
      .first()
      .click();
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText('Taken back', { exact: true }).first().waitFor();
    expected = /410|Gone/;
    await page.goto(path);
    await page.getByText('whoever shared this has taken it back.').waitFor();
    expect(await page.locator('svg.figure, .sentence, .figure').count()).toBe(0);
  });
  test('an address that leads nowhere says just that', async () => {
    expected = /404/;
    let asked = 0;
    page.on('request', (request) => {
      if (request.url().includes('/api/shared/')) asked++;
    });
    await page.goto('/shared/AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA');
    await page.getByText('nothing is shared at this address.').waitFor();
    expect(asked, 'one guess is one guess').toBe(1);
  });
});

describe('what else is shared', () => {
  const open = async (path: string, scheme: 'light' | 'dark') => {
    const looked = await visit(browser, service.address, { ...PHONE, scheme });
    await looked.page.goto(path);
    return looked;
  };
  test('what mattered goes from its page to an address with answer, zones, methods; hostile names are words', async () => {
    await page.goto(studyPath(study, '/fire/mattered'));
    await page.getByRole('heading', { name: 'Share this' }).waitFor();
    await tabTo(page, 'Share it');
    await page.keyboard.press('Enter');
    const sentence = await page.locator('.answer').textContent();
    await page.goto((await page.locator('.share-address').getAttribute('href'))!);
    expect(await page.locator('.answer').textContent()).toBe(sentence);
    await page.getByRole('heading', { name: 'Methods and sources' }).waitFor();
    const link = (name: string) => page.getByRole('link', { name, exact: true });
    const zones = await saved(() => link('zones').click());
    expect(zones.toString().split('\r\n').length).toBeGreaterThan(10);
    expect(readSvg((await saved(() => link('SVG of Zones').click())).toString()).get('svg')).toBe(1);
    expect((await readPdf(await saved(() => link('PDF of Effects').click()))).pages).toBe(1);
    expect(readPng(await saved(() => link('PNG of Chance').click())).width).toBe(3840);
    expect(await page.locator('a[href*="/studies/"]').count()).toBe(0);
  });
  test('a batch found for a target goes out with its target and how it was found, and is not kept', async () => {
    const before = (await ask<object[]>(`/studies/${study}/batches`)).length;
    await page.goto(studyPath(study, '/bench/target'));
    await page.getByRole('heading', { name: 'Share this' }).waitFor();
    await page.getByRole('button', { name: /Which batch$/ }).press('Enter');
    await page.getByRole('option', { name: 'By weighted error' }).click();
    await page.getByRole('button', { name: 'Share it' }).press('Enter');
    const address = (await page.locator('.share-address').getAttribute('href'))!;
    if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/target.png`, fullPage: true });
    await page.goto(address);
    await page.getByRole('heading', { level: 1, name: /^Bench sheet: For / }).waitFor();
    const said = await page.locator('main').textContent();
    expect(said).toContain('by weighted error');
    await page.getByRole('heading', { name: 'In one picture' }).waitFor();
    expect(await page.locator('.figure-sheet svg').count()).toBe(1);
    if (process.env.SHOTS) await page.screenshot({ path: `${process.env.SHOTS}/found.png`, fullPage: true });
    expect(await ask<object[]>(`/studies/${study}/batches`)).toHaveLength(before);
  });
  test('a bench sheet goes out with what was analysed on its tiles only where that is ticked, and says so', async () => {
    const batches = await ask<{ id: string; name: string }[]>(`/studies/${study}/batches`);
    const { id } = batches.find(({ name }) => name === 'Batch C, roasted')!;
    await page.goto(studyPath(study, `/bench/batches/${id}/sheet`));
    const part = page.getByRole('region', { name: 'Share this' });
    const sentence = part.getByText('The visitor sees');
    const tilesOf = async () => {
      const address = part.locator('.share-address');
      const before = (await address.count()) > 0 ? await address.getAttribute('href') : null;
      await part.getByRole('button', { name: 'Share it' }).press('Enter');
      await expect.poll(() => address.getAttribute('href')).not.toBe(before);
      const token = (await address.getAttribute('href'))!.split('/').at(-1);
      return (await ask<{ tiles: object[] }>(`/shared/${token}`)).tiles;
    };
    expect(await sentence.textContent()).not.toContain('analysed');
    expect(await tilesOf()).toEqual([]);
    await part.getByRole('checkbox', { name: 'With what was analysed on its tiles' }).press('Space');
    expect(await sentence.textContent()).toContain('what was analysed on its tiles');
    if (process.env.SHOTS) await part.screenshot({ path: `${process.env.SHOTS}/bench-sheet.png` });
    expect((await tilesOf()).length).toBeGreaterThan(0);
  });
  test.each(['light', 'dark'] as const)('both pass axe in %s and fit a phone', async (colorScheme) => {
    const name = '<img src=x onerror="document.title=1">';
    const [{ factor }] = await ask<[{ factor: object }]>(`/studies/${study}/trials/factors`);
    const [batch] = await ask<[{ id: string }]>(`/studies/${study}/batches`);
    for (const wish of [
      { kind: 'outcome', name, trial: { factors: [factor] } },
      { kind: 'bench', batch: batch.id },
    ]) {
      const { path } = await ask<ShareMade>(`/studies/${study}/shares`, wish);
      const looked = await open(path, colorScheme);
      await looked.page.getByRole('button', { name: 'Everything as JSON' }).waitFor();
      expect(await looked.page.locator('main img').count()).toBe(0);
      expect(await axeViolations(looked.page)).toEqual([]);
      expect(await sidewaysOverflow(looked.page)).toBeLessThanOrEqual(0);
      expect(looked.complaints()).toEqual([]);
      await looked.context.close();
    }
  });
});

describe('a kept placement', () => {
  test('gives its figures as files and its words', async () => {
    await page.goto(studyPath(study, `/placement/kept/${kept.id}`));
    await page.getByRole('heading', { name: 'Methods, captions and sources' }).waitFor();
    const pdf = await saved(() => page.getByRole('link', { name: 'PDF of Scores', exact: true }).click());
    expect((await readPdf(pdf)).text).toContain(kept.result.placements[0]!.label);
  });
  test('goes out as one zip and comes in as a study of its own; a broken one says why', async () => {
    await page.goto(studyPath(study, `/placement/kept/${kept.id}`));
    const zip = await saved(() => page.getByRole('link', { name: 'Download the zip' }).click());
    await page.goto(studyPath(study, '/share'));
    const choose = async (buffer: Buffer) => {
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Choose a zip' }).click();
      await (await chooser).setFiles({ name: 'placement.zip', mimeType: 'application/zip', buffer });
    };
    expected = /422/;
    await choose(Buffer.from('hello'));
    await page.getByText(/must be an intact zip/).waitFor();
    await choose(zip);
    await page.getByRole('heading', { name: kept.name, level: 1 }).waitFor();
    expect(page.url()).not.toContain(study);
    expect(await page.locator('.sentence').textContent()).toBe(kept.result.placements[0]!.sentence);
  });
});

describe('a talk', () => {
  test('goes step by step with the arrow keys, and on without a network', async () => {
    await page.goto(studyPath(study, `/share/talk/${kept.id}`));
    await page.getByRole('heading', { name: kept.name, level: 1 }).waitFor();
    await seen.context.setOffline(true);
    const heading = () => page.locator('.talk h1').textContent();
    const count = Number(/of (\d+)/.exec((await page.locator('.talk-bar').textContent())!)![1]);
    await page.keyboard.press('ArrowRight');
    expect(await heading()).toBe('The sherds');
    expect(await page.locator('.talk .references').count()).toBe(kept.result.model.groups.length);
    expect(await page.locator('.talk .replica').count()).toBe(0);
    const ticks = await page.locator('.talk .axis.x').innerHTML();
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.talk g[clip-path] .replica.chosen').count()).toBe(1);
    expect(await page.locator('.talk .axis.x').innerHTML()).toBe(ticks);
    await page.keyboard.press('End');
    const sentence = (await page.locator('.talk-words').textContent())!;
    expect(sentence.replace(/[₀-₉]/g, '')).toBe(
      kept.result.placements[0]!.sentence.replace(/(?<=[A-Za-z])\d/g, ''),
    );
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.talk-bar').textContent()).toContain(`${count} of ${count}`);
    for (let i = 0; i < count; i++) await page.keyboard.press('ArrowLeft');
    expect(await heading()).toBe(kept.name);
    await seen.context.setOffline(false);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Methods, captions and sources' }).waitFor();
  });
  test('shows slip being drawn off along its way', async () => {
    const [first] = kept.result.placements;
    const reported = [
      { analyte: 'SiO2', value: 61 },
      { analyte: 'Al2O3', value: 21 },
      { analyte: 'PbO', value: 0.2 },
    ];
    await ask(`/studies/${study}/analyses`, { specimen: first!.id, measured: 'slip', reported });
    const parts = reported.map(({ analyte }) => analyte);
    const slip = [{ specimen: first!.id, source: { kind: 'own' }, f: 0.15 }];
    const { request } = kept.result;
    const comparison = { ...request, settings: { ...request.settings, parts }, slip };
    const drawn = await ask<FrozenPlacement>(`/studies/${study}/placements`, {
      name: 'Slip off',
      comparison,
    });
    await page.goto(studyPath(study, `/share/talk/${drawn.id}`));
    await page.getByRole('heading', { name: 'Slip off', level: 1 }).waitFor();
    for (let i = 0; i < 2; i++) await page.keyboard.press('ArrowRight');
    expect(await page.locator('.talk h1').textContent()).toContain('as measured');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.talk h1').textContent()).toContain('slip drawn off');
    expect(await page.locator('.talk .way').count()).toBe(1);
  });
});

describe('a report', () => {
  test('holds what is needed to repeat the placement, and prints it', async () => {
    await page.goto(studyPath(study, `/share/report/${kept.id}`));
    await page.getByRole('heading', { name: 'Numbers' }).waitFor();
    const printed = await readPdf(await page.pdf({ format: 'A4' }));
    expect(printed.pages).toBeGreaterThan(3);
    const text = (await page.locator('main').textContent())!;
    const { model, placements } = kept.result;
    for (const { label } of [...model.members, ...placements]) expect(text).toContain(label);
    for (const word of [kept.version, kept.id, 'Settings', 'Log-ratios', '0.65 of the limit'])
      expect(text).toContain(word);
  });
});

describe.each([
  ['light at a desk', { ...DESK, scheme: 'light' as const }],
  ['dark on a phone', { ...PHONE, scheme: 'dark' as const }],
])('pages of sharing, %s,', (_, look) => {
  test('pass axe and stay within the window', async () => {
    const { path } = await share({ comments: true });
    await seen.context.close();
    seen = await visit(browser, service.address, look);
    page = seen.page;
    for (const [at, heading] of [
      [studyPath(study, '/share'), 'Shared so far'],
      [path, 'Comments'],
      [studyPath(study, `/share/talk/${kept.id}`), kept.name],
      [studyPath(study, `/share/report/${kept.id}`), 'Numbers'],
    ] as const) {
      await page.goto(at);
      await page.getByRole('heading', { name: heading }).first().waitFor();
      if (heading === kept.name) for (let i = 0; i < 2; i++) await page.keyboard.press('ArrowRight');
      if (process.env.SHOTS)
        await page.screenshot({
          path: `${process.env.SHOTS}/${look.scheme}-${heading.replaceAll(' ', '-')}.png`,
          fullPage: true,
        });
      expect(await axeViolations(page)).toEqual([]);
      expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
    }
  });
});
