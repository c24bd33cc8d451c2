/**
 * The placement page with 5,000 invented sherds, in a browser: frames a second while the plot is dragged and while it
 * is zoomed, each frame drawn anew (wanted: above 30), beside the same page at rest. Needs `npm run build` first.
 */
import { type Browser, chromium, type Page } from 'playwright-core';
import { findChromium } from '../../tests/support/chromium.ts';
import { startService } from '../../tests/support/service.ts';
import { USUAL } from '../../web/pages/placement/settings.ts';
import { largeCsv } from './large-csv.ts';

const SHERDS = 5_000;
const FRAMES = 150;
const WANTED = 30;
const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-sync',
];

async function call<Answer>(url: string, init?: RequestInit): Promise<Answer> {
  const answer = await fetch(url, init);
  if (!answer.ok) throw new Error(`${url} answered ${answer.status}: ${await answer.text()}`);
  return (await answer.json()) as Answer;
}
const post = (body: unknown): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** A study with so many sherds in ten groups, and one replica. */
async function makeStudy(api: string): Promise<string> {
  const { id: study } = await call<{ id: string }>(`${api}/studies`, post({ name: 'Benchmark, invented' }));
  const form = new FormData();
  form.set('file', new File([largeCsv(SHERDS)], 'sherds.csv', { type: 'text/csv' }));
  const { id } = await call<{ id: string }>(`${api}/studies/${study}/imports`, {
    method: 'POST',
    body: form,
  });
  for (;;) {
    const { status, outcome } = await call<{ status: string; outcome: unknown }>(
      `${api}/studies/${study}/imports/${id}`,
    );
    if (status === 'done') break;
    if (status !== 'running') throw new Error(`the import ${status}: ${JSON.stringify(outcome)}`);
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
  const tile = await call<{ id: string }>(
    `${api}/studies/${study}/specimens`,
    post({ label: 'Tile 1', kind: 'replica' }),
  );
  const [{ reported }] = (
    await call<{ rows: [{ reported: unknown }] }>(`${api}/studies/${study}/analyses?limit=1`)
  ).rows;
  await call(`${api}/studies/${study}/analyses`, post({ specimen: tile.id, measured: 'body', reported }));
  return study;
}

async function openPlot(browser: Browser, address: string, study: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 }, baseURL: address });
  const settings = JSON.stringify({ ...USUAL, measured: 'body' });
  // The runner names functions with a helper that the page does not have.
  await page.addInitScript('globalThis.__name = (named) => named');
  await page.addInitScript(([key, value]) => sessionStorage.setItem(key, value), [
    `nearsherd.draft.placement.1.${study}`,
    settings,
  ] as const);
  await page.goto(`/studies/${study}/placement`);
  await page.locator('.sentence').waitFor({ timeout: 60_000 });
  await page.locator('.cover').scrollIntoViewIfNeeded();
  return page;
}

/** Processor time the page's main thread has used, ms: unlike frames a second, no other program changes it. */
async function processorClock(page: Page): Promise<() => Promise<number>> {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return 1000 * metrics.find(({ name }) => name === 'TaskDuration')!.value;
  };
}

type Gesture = 'rest' | 'drag' | 'zoom';

/** Does one step of a gesture in every frame; answers with the frames drawn and how long each took, ms. */
function play(page: Page, gesture: Gesture) {
  return page.evaluate(
    async ([gesture, frames]) => {
      const cover = document.querySelector<HTMLElement>('.cover')!;
      const host = document.querySelector('.scores .figure')!;
      const { left, top, width, height } = cover.getBoundingClientRect();
      const middle = { clientX: left + width / 2, clientY: top + height / 2, bubbles: true, view: window };
      let drawn = 0;
      const watch = new MutationObserver(() => drawn++);
      watch.observe(host, { childList: true });
      const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
      if (gesture === 'drag')
        cover.dispatchEvent(new MouseEvent('mousedown', { ...middle, cancelable: true }));
      const times: number[] = [];
      let last = await frame();
      for (let i = 0; i < frames; i++) {
        const swing = Math.sin(i / 12);
        if (gesture === 'drag')
          window.dispatchEvent(
            new MouseEvent('mousemove', { ...middle, clientX: middle.clientX + 120 * swing }),
          );
        if (gesture === 'zoom')
          cover.dispatchEvent(
            new WheelEvent('wheel', {
              ...middle,
              deltaY: i % 60 < 30 ? -6 : 6,
              ctrlKey: true,
              cancelable: true,
            }),
          );
        const now = await frame();
        times.push(now - last);
        last = now;
      }
      if (gesture === 'drag') window.dispatchEvent(new MouseEvent('mouseup', middle));
      watch.disconnect();
      return { drawn, times };
    },
    [gesture, FRAMES] as const,
  );
}

interface Played extends Awaited<ReturnType<typeof play>> {
  readonly work: number;
}
function tell(gesture: Gesture, { drawn, times, work }: Played): void {
  const total = times.reduce((sum, time) => sum + time, 0);
  const sorted = [...times].sort((a, b) => a - b);
  const slow = sorted[Math.floor(0.95 * sorted.length)]!;
  const shown = gesture === 'rest' ? times.length : drawn;
  const fps = (1000 * shown) / total;
  const verdict = gesture === 'rest' ? '' : `, ${(fps / WANTED).toFixed(1)} × the ${WANTED} wanted`;
  console.log(
    `  ${gesture.padEnd(5)} ${fps.toFixed(0).padStart(3)} frames/s (95 % under ${slow.toFixed(0)} ms)${verdict}; ${(work / times.length).toFixed(1)} ms of processor time each`,
  );
}

export async function bench(): Promise<void> {
  const executablePath = findChromium();
  if (executablePath === null) return console.log('  no Chromium found: not measured');
  const service = await startService();
  const browser = await chromium.launch({ executablePath, args: FLAGS });
  try {
    const study = await makeStudy(`${service.address}/api`);
    const page = await openPlot(browser, service.address, study);
    const nodes = await page.locator('.scores .figure *').count();
    console.log(`  ${SHERDS.toLocaleString('en-GB')} sherds in ${nodes} nodes`);
    const clock = await processorClock(page);
    for (const gesture of ['rest', 'drag', 'zoom'] as const) {
      const before = await clock();
      const played = await play(page, gesture);
      tell(gesture, { ...played, work: (await clock()) - before });
    }
  } finally {
    await browser.close();
    await service.stop();
  }
}
