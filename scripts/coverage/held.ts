/**
 * How often a factor without effect is called one when others that change on the same unit are held. Seeded. Run:
 * npx tsx scripts/coverage/held.ts [runs] [part of a row's name]; prints the table *Other factors held* of docs/coverage-trials.md.
 */
import { RequirementError } from '../../api/domain/requirement.ts';
import { type RandomStream, randomStream } from '../../api/domain/statistics/random.ts';
import type { EffectNumbers } from '../../api/domain/trials/effect-numbers.ts';
import { shuffled } from '../../api/domain/trials/orders.ts';
import { trialTable } from '../../api/domain/trials/trial-table.ts';
import { type Factor, GRADES, type Outcome, type Zone } from '../../api/domain/trials/types.ts';
import { unitEffect } from '../../api/domain/trials/unit-effect.ts';
import { zoneEffect } from '../../api/domain/trials/zone-effect.ts';

const runs = Number(process.argv[2] ?? 1000);

interface World {
  readonly name: string;
  readonly tiles: number;
  readonly zones: number;
  readonly firings?: number;
  /** Factors a, b, c, …: a has no effect, b has one. */
  readonly factors: number;
  readonly at: 'zone' | 'tile';
  readonly outcome: Outcome;
  /** `fine`: whole numbers from 0 to 100; `two`: every combination of two levels equally often. */
  readonly levels: 'fine' | 'two';
  /** Coats on each zone, another number of them on each tile. */
  readonly coats?: boolean;
}

const NAMES = ['a', 'b', 'c', 'd', 'e', 'f'];

function settingsOf(world: World, units: number, { uniform }: RandomStream): Record<string, number>[] {
  const names = NAMES.slice(0, world.factors);
  if (world.levels === 'fine')
    return Array.from({ length: units }, () =>
      Object.fromEntries(names.map((name) => [name, Math.round(100 * uniform())])),
    );
  const combination = (i: number) => Object.fromEntries(names.map((name, k) => [name, 100 * ((i >> k) & 1)]));
  return shuffled(
    Array.from({ length: units }, (_, i) => combination(i)),
    uniform,
  );
}

function zonesOf(world: World, random: RandomStream): Zone[] {
  const { tiles, zones, firings = 1, at } = world;
  const settings = settingsOf(world, at === 'tile' ? tiles : tiles * zones, random);
  return Array.from({ length: tiles }, (_, t) => {
    const own = random.normal();
    return Array.from({ length: zones }, (_, z): Zone => {
      const factors = settings[at === 'tile' ? t : t * zones + z]!;
      const coats = 1 + z + (world.coats ? Math.floor(3 * random.uniform()) : 0);
      const push = ((factors.b ?? 50) - 50) / 33 + own + (world.coats ? 0.6 * (coats - 4) : 0);
      const u = random.uniform();
      const seen = push + Math.log(u / (1 - u));
      return {
        id: `${t}-${z}`,
        label: `${z}`,
        tile: `${t}`,
        tileLabel: `T${t}`,
        firing: `F${t % firings}`,
        factors: world.coats ? { ...factors, coats } : factors,
        grade: GRADES[seen > 0.75 ? 2 : seen > -0.75 ? 1 : 0]!,
        glassyShare: Math.min(1, Math.max(0, 0.5 + push / 12 + random.normal() / 10)),
      };
    });
  }).flat();
}

/** The effect of a, which is none, the others of its unit held; null where it could not be compared or fitted. */
function effectOfNone(world: World, seed: number): EffectNumbers | null {
  const number = (name: string): Factor => ({ name, kind: 'number', unit: '', step: 10 });
  const names = [...NAMES.slice(0, world.factors), ...(world.coats ? ['coats'] : [])];
  const table = trialTable(zonesOf(world, randomStream(seed)), {
    factors: names.map(number),
    outcome: world.outcome,
    seed,
  });
  const term = table.terms.find((t) => t.factor.name === 'a');
  if (term?.unitOfChange !== world.at) return null;
  const others = table.terms.filter((t) => t !== term && t.unitOfChange === world.at);
  const effect = world.at === 'zone' ? zoneEffect : unitEffect;
  try {
    return effect(table, { term, others }, { level: 0.95, seed });
  } catch (error) {
    if (error instanceof RequirementError) return null;
    throw error;
  }
}

const percent = (n: number, of: number) => `${((100 * n) / of).toFixed(1)} %`;

function row(world: World, first: number): string {
  const found = Array.from({ length: runs }, (_, run) => effectOfNone(world, first + run)).filter(
    (e) => e !== null,
  );
  const share = (holds: (e: EffectNumbers) => boolean) => percent(found.filter(holds).length, found.length);
  const methods = [...new Set(found.map((e) => e.method))].map(
    (m) => `${m} ${percent(found.filter((e) => e.method === m).length, found.length)}`,
  );
  return `| ${[
    world.name,
    share((e) => (e.p ?? 1) <= 0.05),
    share((e) => (e.low === null || e.low <= 0) && (e.high === null || e.high >= 0)),
    share((e) => e.tooFew !== true && (e.smallestP ?? 0) <= 0.05),
    methods.join(', '),
  ].join(' | ')} |`;
}

const between = (tiles: number, factors: number, more: Partial<World> = {}): World => ({
  name: `${factors} factors of ${tiles} tiles, share of glassy area`,
  tiles,
  zones: 1,
  factors,
  at: 'tile',
  outcome: 'share',
  levels: 'fine',
  ...more,
});
const within = (tiles: number, zones: number, factors: number, outcome: Outcome): World => ({
  name: `${factors} factors of ${tiles} × ${zones} zones, ${outcome === 'share' ? 'share of glassy area' : outcome === 'grade' ? 'three grades' : outcome}`,
  tiles,
  zones,
  factors,
  at: 'zone',
  outcome,
  levels: 'fine',
});
const WORLDS: readonly World[] = [
  ...[[5, 2] as const, [6, 2] as const, [6, 3] as const, [7, 2] as const, [7, 4] as const].map(([n, k]) =>
    between(n, k),
  ),
  ...[[8, 2] as const, [8, 3] as const, [10, 4] as const].map(([n, k]) => between(n, k)),
  between(8, 2, { name: '2 factors of 4 + 4 tiles in two firings, share of glassy area', firings: 2 }),
  ...[8, 12].map((tiles) =>
    between(tiles, 2, {
      name: `2 × 2 levels on ${tiles} tiles of six zones, glossy`,
      zones: 6,
      outcome: 'glossy',
      levels: 'two',
    }),
  ),
  between(8, 1, {
    name: '1 factor of 8 tiles, tiles unevenly coated, glossy',
    zones: 6,
    outcome: 'glossy',
    levels: 'two',
    coats: true,
  }),
  within(1, 6, 3, 'share'),
  within(2, 4, 2, 'share'),
  within(2, 4, 3, 'share'),
  within(3, 4, 3, 'share'),
  within(4, 6, 3, 'share'),
  within(2, 6, 3, 'grade'),
  within(4, 6, 3, 'grade'),
  within(2, 6, 3, 'glossy'),
  within(4, 6, 3, 'glossy'),
];

console.log(`${runs} runs each.\n`);
console.log('| World | p ≤ .05 | Interval holds 0 | Verdict given | By |\n|---|---|---|---|---|');
for (const [i, world] of WORLDS.entries())
  if (world.name.includes(process.argv[3] ?? '')) console.log(row(world, 10_000_000 + 100_000 * i));
