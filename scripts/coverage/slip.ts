/**
 * Measures whether intervals hold what they promise: tsx scripts/coverage/slip.ts [tiles] writes the tables in
 * docs/coverage.md between its marks. A few minutes for 1,000 tiles.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { allCoverage, type Coverage } from './fractions.ts';
import { allUniformity, type Uniformity } from './membership.ts';

const tiles = Number(process.argv[2] ?? 1000);
const file = path.resolve(import.meta.dirname, '../../docs/coverage.md');
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

function coverageRow(c: Coverage): string {
  const inside = c.held >= 0.93 && c.held <= 0.97;
  const row = [
    c.estimator,
    c.world,
    percent(c.held) + (inside ? '' : c.held > 0.97 ? ' (too wide)' : ' (**too narrow**)'),
    c.meanWidth.toFixed(3),
    percent(c.agreed),
    c.refused,
  ];
  return `| ${row.join(' | ')} |`;
}

function uniformityRow(u: Uniformity): string {
  const verdict = u.p > 0.01 ? 'uniform' : '**not uniform**';
  const p = u.p < 0.0001 ? '< .0001' : u.p.toFixed(4);
  return `| ${[u.references, u.tile, u.n, u.d.toFixed(3), p, verdict, percent(u.below05)].join(' | ')} |`;
}

function table(head: readonly string[], rows: readonly string[]): string {
  return [`| ${head.join(' | ')} |`, `|${' --- |'.repeat(head.length)}`, ...rows].join('\n');
}

function collect<T>(items: Iterable<T>, row: (item: T) => string): string[] {
  return Array.from(items, (item) => {
    const line = row(item);
    console.log(line);
    return line;
  });
}

const fractions = table(
  ['estimator', 'world', 'true f held by the 95 % interval', 'mean width', 'found consistent', 'refused'],
  collect(allCoverage(tiles), coverageRow),
);
const members = table(
  ['references', 'tile', 'n', 'KS distance', 'KS p', '', 'p < .05'],
  collect(allUniformity(tiles), uniformityRow),
);
let text = readFileSync(file, 'utf8');
for (const [mark, content] of Object.entries({ fractions, members })) {
  const [open, close] = [`<!-- ${mark} -->`, `<!-- /${mark} -->`];
  const before = text.slice(0, text.indexOf(open) + open.length);
  text = `${before}\n${content}\n${text.slice(text.indexOf(close))}`;
}
writeFileSync(file, text);
