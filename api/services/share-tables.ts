import type { SharedBench, SharedOutcome } from '../contract/shared.ts';
import { COMPARISON_TABLES } from '../contract/table-names.ts';
import { comparisonCsv } from './comparison-tables.ts';
import { toCsv } from './csv.ts';
import type { FrozenPayload } from './share-payload.ts';

/** A table is written when it is asked for: one may be large, and few are. */
type Tables = Readonly<Record<string, () => string>>;

/** The tables of what is shared as CSV, by name; those worked out from it, not what it was made from. */
export function tablesOf(payload: FrozenPayload): Tables {
  if (payload.kind === 'outcome') return { zones: () => zones(payload), effects: () => effects(payload) };
  if (payload.kind === 'bench') return { recipe: () => recipe(payload), oxides: () => oxides(payload) };
  const { result } = payload.placement;
  return Object.fromEntries(COMPARISON_TABLES.map((table) => [table, () => comparisonCsv(result, table)]));
}

function zones({ zones: rows }: SharedOutcome): string {
  const factors = [...new Set(rows.flatMap((zone) => Object.keys(zone.factors)))];
  return toCsv(
    ['tile', 'zone', 'gloss', 'share glassy (0 to 1)', ...factors],
    rows.map((zone) => [
      ...[zone.tile, zone.label, zone.grade, zone.glassyShare],
      ...factors.map((factor) => zone.factors[factor] ?? null),
    ]),
  );
}

/** What an effect and its bounds are counted in here; the page shows odds as factors and shares as points. */
const UNITS = { 'log-odds': 'ln odds ratio', share: 'share, 0 to 1', grades: 'grades' } as const;

const effects = ({ analysis }: SharedOutcome): string =>
  toCsv(
    ['factor', 'contrast', 'unit', 'effect', 'low', 'high', 'level', 'p', 'method', 'verdict'],
    analysis.effects.map((one) => [
      ...[one.factor, one.contrast, UNITS[one.scale], one.estimate, one.low, one.high],
      ...[one.level, one.p, one.method, one.verdict],
    ]),
  );

const recipe = ({ unit, rows }: SharedBench): string =>
  toCsv(
    ['material', unit, 'dry share (wt%)', 'water in it (wt%)', 'handling'],
    rows.map((row) => [row.name, row.grams, row.dryPercent, row.water, row.handling]),
  );

const oxides = ({ result }: SharedBench): string =>
  toCsv(
    ['oxide', 'wt%', 'sigma (wt%)', 'low (wt%)', 'high (wt%)', 'mole %'],
    result.fired.oxides.map((one) => [
      ...[one.oxide, one.percent, one.sigma, one.low, one.high, one.molePercent],
    ]),
  );
