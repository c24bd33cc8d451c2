/**
 * How often the intervals of api/domain/trials hold a known effect, and how often a factor without effect is called
 * one. Seeded. Run: npx tsx scripts/coverage/trials.ts [runs]; prints the table of docs/coverage-trials.md.
 */
import { randomStream } from '../../api/domain/statistics/random.ts';
import { trialEffects } from '../../api/domain/trials/effects.ts';
import { findTangles } from '../../api/domain/trials/tangles.ts';
import { trialTable } from '../../api/domain/trials/trial-table.ts';
import type { Effect, Factor, Outcome } from '../../api/domain/trials/types.ts';
import { type Fire, fireTrial } from './trial-world.ts';

const runs = Number(process.argv[2] ?? 1000);
const COATS: Factor = { name: 'coats', kind: 'number', unit: 'coat', step: 1 };
const BRUSH: Factor = { name: 'brush', kind: 'category', base: 'poured' };
const ROAST: Factor = { name: 'roast', kind: 'category', base: 'short' };

const FIRE: Fire = {
  tiles: 4,
  zonesPerTile: 6,
  thickness: 0,
  brush: 0,
  roast: 0,
  tileSpread: 1,
  coats: 'whole',
  grades: 'two',
};

interface Scenario {
  readonly name: string;
  readonly fire: Partial<Fire>;
  readonly factors: readonly Factor[];
  readonly outcome: Outcome;
  /** Which effect is looked at, and its true value on its scale. */
  readonly looked: string;
  readonly truth: number;
}

const percent = (n: number, of: number) => `${((100 * n) / of).toFixed(1)} %`;
const holds = ({ low, high }: Effect, truth: number) =>
  (low === null || low <= truth) && (high === null || high >= truth);

function effectsOf(scenario: Scenario, seed: number): Effect[] {
  const zones = fireTrial({ ...FIRE, ...scenario.fire }, randomStream(seed));
  const table = trialTable(zones, { factors: scenario.factors, outcome: scenario.outcome, seed });
  return trialEffects(table, findTangles(table), { level: 0.95, seed }).effects;
}

function effectRow(scenario: Scenario, first: number): string {
  const found = Array.from({ length: runs }, (_, run) => effectsOf(scenario, first + run));
  const looked = found.flatMap((f) => f.filter((e) => e.factor === scenario.looked));
  const called = (name: string) => {
    const own = found.flatMap((f) => f.filter((e) => e.factor === name));
    return own.length === 0 ? '–' : percent(own.filter((e) => e.verdict === 'matters').length, own.length);
  };
  const open = looked.filter((e) => e.low === null || e.high === null).length;
  const penalised = looked.filter((e) => e.method === 'penalised').length;
  return `| ${[
    scenario.name,
    scenario.truth.toFixed(2),
    percent(looked.filter((e) => holds(e, scenario.truth)).length, looked.length),
    percent(open, looked.length),
    percent(penalised, looked.length),
    called('coats'),
    called('brush'),
    called('roast'),
  ].join(' | ')} |`;
}

const zoneScenario = (
  name: string,
  truth: number,
  fire: Partial<Fire> = {},
  more: Partial<Scenario> = {},
): Scenario => ({
  name,
  fire: { thickness: truth, ...fire },
  factors: [COATS],
  outcome: 'glossy',
  looked: 'coats',
  truth,
  ...more,
});

const all = { factors: [COATS, BRUSH, ROAST] };
const SCENARIOS: readonly Scenario[] = [
  ...[0, 0.4, 0.8, 1.2].map((b) => zoneScenario('glossy; coats alone', b)),
  ...[0, 0.4, 0.8, 1.2].map((b) => zoneScenario('glossy; coats as measured', b, { coats: 'measured' })),
  zoneScenario('glossy; coats, tiles spread by 2', 0.8, { tileSpread: 2 }),
  ...[0.4, 0.8].map((b) => zoneScenario('glossy; coats, brush, roast', b, {}, all)),
  ...[0.4, 0.8].map((b) => zoneScenario('glossy; the same, brush has 1.0', b, { brush: 1 }, all)),
  ...[0.4, 0.8].map((b) =>
    zoneScenario('glossy; coats as measured, brush, roast', b, { coats: 'measured' }, all),
  ),
  ...[0, 0.4, 0.8].map((b) =>
    zoneScenario('three grades, neighbouring odds', b, { grades: 'adjacent' }, { outcome: 'grade' }),
  ),
  ...[0, 0.8].map((b) =>
    zoneScenario('glossy of three grades, proportional odds', b, { grades: 'proportional' }),
  ),
  zoneScenario('share of glassy area, per coat', 0.04, { thickness: 0.8 }, { outcome: 'share' }),
  ...[6, 8, 12].map((tiles) =>
    zoneScenario(`roast over ${tiles} tiles`, 0, { tiles, thickness: 0.8 }, { ...all, looked: 'roast' }),
  ),
];

console.log(`${runs} runs each.\n`);
console.log(
  '| Scenario | True effect | Interval holds it | One-sided or open | Penalised | coats called | brush called | roast called |',
);
console.log('|---|---|---|---|---|---|---|---|');
for (const [i, scenario] of SCENARIOS.entries()) console.log(effectRow(scenario, 1_000_000 * (i + 1)));
