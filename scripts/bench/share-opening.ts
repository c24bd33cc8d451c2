/**
 * How long a share takes to open: from the start of navigation to the drawn figure, in Chromium with a cold cache, over
 * loopback. Run after `npm run build`: `npx tsx scripts/bench/share-opening.ts`. Prints the median of five openings of
 * the demo's placement; no test, since it depends on the machine.
 */
import { chromium } from 'playwright-core';
import type { FrozenPlacement } from '../../api/contract/placement.ts';
import type { ShareMade } from '../../api/contract/share.ts';

import { startService } from '../../tests/support/service.ts';

const OPENINGS = 5;
const [service, browser] = await Promise.all([
  startService(),
  chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  }),
]);
try {
  const ask = async <Answer>(path: string, body?: unknown) => {
    const sent = {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    };
    const answer = await fetch(`${service.address}/api${path}`, body === undefined ? {} : sent);
    if (!answer.ok) throw new Error(await answer.text());
    return (await answer.json()) as Answer;
  };
  const study = (await ask<{ id: string }>('/demo', {})).id;
  const groups = (await ask<{ id: string }[]>(`/studies/${study}/groups`)).map(({ id }) => id);
  const comparison = { settings: { groups } };
  const kept = await ask<FrozenPlacement>(`/studies/${study}/placements`, { name: 'Opening', comparison });
  const { path } = await ask<ShareMade>(`/studies/${study}/shares`, { placement: kept.id });
  const times: number[] = [];
  for (let i = 0; i < OPENINGS; i++) {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(service.address + path, { waitUntil: 'commit' });
    await page.locator('.figure-sheet svg .axis-title').first().waitFor();
    times.push(await page.evaluate(() => performance.now()));
    await context.close();
  }
  times.sort((a, b) => a - b);
  const shown = times.map((time) => time.toFixed(0)).join(', ');
  console.log(`${kept.result.references.length} sherds: median ${times[2]!.toFixed(0)} ms of ${shown}`);
} finally {
  await browser.close();
  await service.stop();
}
