/**
 * How long a share takes to open: from the start of navigation to the first frame after the figure stands, in Chromium
 * with a cold cache, over loopback. Run after `npm run build`: `npx tsx scripts/bench/share-opening.ts` opens the
 * demo's placement, `npx tsx scripts/bench/share-opening.ts 2000` one of 2,000 invented sherds and 20 replicas. Prints
 * medians of nine openings and on what machine; no test, since it depends on the machine.
 */
import { cpus, loadavg } from 'node:os';
import { type Browser, chromium } from 'playwright-core';
import type { FrozenPlacement } from '../../api/contract/placement.ts';
import type { ShareMade } from '../../api/contract/share.ts';
import { remoteClient } from '../../tests/support/api-client.ts';
import { startService } from '../../tests/support/service.ts';
import { analysesCsv } from './comparison.ts';

const OPENINGS = 9;
const MARKS = ['page', 'code', 'data', 'words', 'figure', 'rest'] as const;
type Times = Record<(typeof MARKS)[number], number>;

/** Text, not a function: what compiles this file adds helpers that a page does not have. */
const WATCH = `
  const seen = {};
  const selectors = { words: '.sentence', figure: '.figure-sheet svg .axis-title', rest: '#words-heading' };
  requestAnimationFrame(function look() {
    for (const mark in selectors)
      if (!(mark in seen) && document.querySelector(selectors[mark])) seen[mark] = performance.now();
    if (Object.keys(seen).length < 3) requestAnimationFrame(look);
    else window.seen = seen;
  });
`;

const [service, browser] = await Promise.all([
  startService(),
  chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  }),
]);
try {
  const { share, sherds } = await makeShare(process.argv[2] === '2000');
  const before = loadavg()[0]!;
  const times: Times[] = [];
  for (let i = 0; i < OPENINGS; i++) times.push(await openOnce(browser, service.address + share));
  const median = (mark: keyof Times) =>
    times.map((one) => one[mark]).sort((a, b) => a - b)[(OPENINGS - 1) / 2]!;
  const all = times.map(({ figure }) => figure.toFixed(0)).join(', ');
  console.log(`${sherds} sherds: figure at ${median('figure').toFixed(0)} ms (${all})`);
  console.log(MARKS.map((mark) => `${mark} ${median(mark).toFixed(0)}`).join(', '));
  console.log(`${cpus().length} × ${cpus()[0]!.model}, load before ${before.toFixed(1)}`);
} finally {
  await browser.close();
  await service.stop();
}

async function makeShare(large: boolean): Promise<{ share: string; sherds: number }> {
  const api = remoteClient(service.address);
  const study = large ? await api.newStudy('Opening') : ((await api.post('/api/demo', {})).body.id as string);
  if (large) await api.bringIn(study, { file: { name: 'sherds.csv', content: analysesCsv() } });
  const at = `/api/studies/${study}`;
  const groups = (await api.get(`${at}/groups`)).body.map(({ id }: { id: string }) => id);
  const wish = { name: 'Opening', comparison: { settings: { groups } } };
  const kept: FrozenPlacement = (await api.post(`${at}/placements`, wish)).body;
  const made: ShareMade = (await api.post(`${at}/shares`, { placement: kept.id })).body;
  return { share: made.path, sherds: kept.result.references.length };
}

/** When each stood, in ms from the start of navigation: watched in the page itself, frame by frame. */
async function openOnce(at: Browser, address: string): Promise<Times> {
  const context = await at.newContext();
  const page = await context.newPage();
  await page.addInitScript({ content: WATCH });
  await page.goto(address, { waitUntil: 'commit' });
  await page.waitForFunction(() => 'seen' in window);
  const times = await page.evaluate(() => {
    const [navigation] = performance.getEntriesByType('navigation') as PerformanceNavigationTiming[];
    const loaded = performance.getEntriesByType('resource') as PerformanceResourceTiming[];
    const [code, data] = [/\.js$/, /\/api\/shared\//].map((pattern) =>
      Math.max(...loaded.filter(({ name }) => pattern.test(name)).map(({ responseEnd }) => responseEnd)),
    );
    const { seen } = window as unknown as { seen: Record<'words' | 'figure' | 'rest', number> };
    return { page: navigation!.responseEnd, code: code!, data: data!, ...seen };
  });
  await context.close();
  return times;
}
