import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { studyPath } from '../../web/paths.ts';
import { STAGES } from '../../web/routes.ts';
import {
  axeViolations,
  DESK,
  openBrowser,
  PHONE,
  sidewaysOverflow,
  type Visit,
  visit,
} from '../support/browser.ts';
import { type RunningService, startService } from '../support/service.ts';

let service: RunningService;
let browser: Browser;
/** Every page by name; filled once the demo study has its ids. */
const addresses: Record<string, string> = {};

async function ask<Answer>(path: string, method = 'GET'): Promise<Answer> {
  const answer = await fetch(`${service.address}/api${path}`, { method });
  return (await answer.json()) as Answer;
}

beforeAll(async () => {
  [service, browser] = await Promise.all([startService(), openBrowser()]);
  const { id: study } = await ask<{ id: string }>('/demo', 'POST');
  const { rows } = await ask<{ rows: { id: string; specimen: string }[] }>(
    `/studies/${study}/analyses?limit=1`,
  );
  const specimen = studyPath(study, `/sherds/${rows[0]?.specimen}`);
  Object.assign(addresses, {
    studies: '/',
    'a specimen': specimen,
    'an analysis': `${specimen}/analyses/${rows[0]?.id}`,
    'the analysis form': `${specimen}/analyses/${rows[0]?.id}/edit`,
    'no page': '/nowhere',
  });
  for (const stage of STAGES) addresses[stage.label] = studyPath(study, stage.path);
});
afterAll(async () => {
  await browser?.close();
  await service?.stop();
});

const PAGES = [
  'studies',
  'a specimen',
  'an analysis',
  'the analysis form',
  'no page',
  ...STAGES.map((stage) => stage.label),
];
const SETTINGS = [
  ['light, desk', { ...DESK, scheme: 'light' }],
  ['dark, desk', { ...DESK, scheme: 'dark' }],
  ['light, phone', { ...PHONE, scheme: 'light' }],
  ['dark, phone', { ...PHONE, scheme: 'dark' }],
] as const;

describe.each(SETTINGS)('%s', (_, look) => {
  let seen: Visit;
  beforeAll(async () => {
    seen = await visit(browser, service.address, look);
  });
  afterAll(() => seen?.context.close());

  test.each(PAGES)(
    '%s: axe finds nothing, nothing sticks out sideways, the console is silent',
    async (name) => {
      const { page, complaints } = seen;
      expect(addresses[name]).toMatch(/^\//);
      await page.goto(addresses[name]!);
      await page.getByRole('heading', { level: 1 }).waitFor();
      await page.waitForLoadState('networkidle');
      expect(await axeViolations(page)).toEqual([]);
      expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
      expect(complaints()).toEqual([]);
    },
  );
});

test.each(['light', 'dark'] as const)(
  'axe finds nothing in an open dialog and an open list (%s)',
  async (scheme) => {
    const { page, context } = await visit(browser, service.address, { ...DESK, scheme });
    await page.goto(addresses.Sherds ?? '');
    await page.getByRole('button', { name: 'New specimen' }).click();
    await page.getByRole('dialog').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /Ware group$/ })
      .click();
    await page.getByRole('listbox').waitFor();
    expect(await axeViolations(page)).toEqual([]);
    await context.close();
  },
);

test.each([PHONE, DESK])('axe finds nothing in a preview with errors, at $width px', async (look) => {
  const { page, context, complaints } = await visit(browser, service.address, look);
  await page.goto(addresses.Intake ?? '');
  await page.getByLabel('Table', { exact: true }).fill('Tile;SiO2;±;PbO\nT1;4I;0.2;36\nT2;42;0.2;<0.1');
  await page.getByRole('button', { name: 'Read the table' }).click();
  await page.getByRole('heading', { name: 'How each column was understood' }).waitFor();
  expect(await axeViolations(page)).toEqual([]);
  expect(await sidewaysOverflow(page)).toBeLessThanOrEqual(0);
  expect(complaints()).toEqual([]);
  await context.close();
});

test('on a phone every control is at least 44 px high or a link in a line of text', async () => {
  const { page, context } = await visit(browser, service.address, PHONE);
  await page.goto(addresses.Sherds ?? '');
  await page.getByRole('table', { name: 'Specimens' }).waitFor();
  const small = await page.evaluate(() =>
    [
      ...document.querySelectorAll(
        'button, input:not([type=checkbox]), select, .tick, a.button, nav a, a.cell',
      ),
    ]
      .filter(
        (one) =>
          one.checkVisibility() &&
          !one.closest('[aria-hidden=true]') &&
          !one.closest('[data-react-aria-prevent-focus]'),
      )
      .filter((one) => one.getBoundingClientRect().height < 43.5)
      .map((one) => `${one.outerHTML.slice(0, 100)} ${one.getBoundingClientRect().height}`),
  );
  expect(small).toEqual([]);
  await context.close();
});
