import { quantile } from '../statistics/moments.ts';
import { LEFT_OUT } from './few-materials.ts';
import type { TargetSpread } from './target-spread.ts';
import type { Material } from './types.ts';

/** How much of one material the batches inside the group take, wt% of the dry batch. */
export interface MaterialRange {
  readonly id: string;
  readonly name: string;
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly least: number;
  readonly most: number;
  /** Share of the batches that use it at all, 0–1. */
  readonly used: number;
}

/** Two materials that move together or against each other across the batches. */
export interface MaterialTie {
  readonly first: string;
  readonly second: string;
  readonly correlation: number;
  readonly words: string;
}

export interface BatchSet {
  readonly draws: number;
  /** Draws whose nearest batch fires to a composition inside the group. */
  readonly inside: number;
  /** 5 %, 50 %, 95 % and extremes over the batches inside; empty when there is none. */
  readonly materials: readonly MaterialRange[];
  readonly ties: readonly MaterialTie[];
  readonly words: string;
}

/** The batches that landed inside a group, wt% of the dry batch by material. */
export interface KeptBatches {
  readonly kept: readonly Float64Array[];
  readonly draws: number;
  readonly spread: Pick<TargetSpread, 'name' | 'words'>;
}

/**
 * What the batches inside a group have in common: range of each material (5 %, 50 %, 95 %, extremes, share that use
 * it) and which materials move together or against each other (|r| ≥ 0.7).
 * @example
 * const two = ['SiO2', 'PbO'].map((f) => materialFromFormula({ id: f, name: f }, f))
 * const set = describeSet(two, { kept: [[40, 60], [30, 70], [20, 80]].map((x) => Float64Array.from(x)), draws: 4, spread: { name: 'Red', words: 'inside' } })
 * set.materials[0].median // 30
 * set.ties[0].words // 'more SiO2 goes with less PbO'
 */
export function describeSet(materials: readonly Material[], { kept, draws, spread }: KeptBatches): BatchSet {
  const inside = kept.length;
  const share = Math.round((100 * inside) / draws);
  if (inside === 0)
    return {
      draws,
      inside,
      materials: [],
      ties: [],
      words: `None of ${draws} targets drawn from ${spread.name} can be reached with these materials: see which oxides cannot be met.`,
    };
  const ranges = materials
    .map(({ id, name }, k) =>
      rangeOf(
        { id, name },
        kept.map((x) => x[k]!),
      ),
    )
    .filter((range) => range.used > 0);
  const columns = materials
    .map(({ name }, k) => ({ name, values: kept.map((x) => x[k]!) }))
    .filter((c) => c.values.some((v) => v > LEFT_OUT));
  return {
    draws,
    inside,
    materials: ranges,
    ties: tiesOf(columns),
    words: `${inside} of ${draws} targets drawn from ${spread.name} (${share} %) are met by a batch that lands ${spread.words}. Each is the nearest batch to one target: other mixtures of like materials may land there too.`,
  };
}

function rangeOf(of: { id: string; name: string }, values: readonly number[]): MaterialRange {
  return {
    ...of,
    low: quantile(values, 0.05),
    median: quantile(values, 0.5),
    high: quantile(values, 0.95),
    least: Math.min(...values),
    most: Math.max(...values),
    used: values.filter((v) => v > LEFT_OUT).length / values.length,
  };
}

/** Correlations weaker than this are not worth a sentence. */
const TIED = 0.7;

function tiesOf(columns: readonly { name: string; values: readonly number[] }[]): MaterialTie[] {
  const ties: MaterialTie[] = [];
  columns.forEach((first, i) => {
    for (const second of columns.slice(i + 1)) {
      const correlation = correlationOf(first.values, second.values);
      if (!(Math.abs(correlation) >= TIED)) continue;
      const words = `more ${first.name} goes with ${correlation > 0 ? 'more' : 'less'} ${second.name}`;
      ties.push({ first: first.name, second: second.name, correlation, words });
    }
  });
  return ties.sort((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
}

function correlationOf(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [a, b].map((v) => v.reduce((sum, x) => sum + x, 0) / v.length);
  let [aa, bb, ab] = [0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    const [x, y] = [a[i]! - meanA!, b[i]! - meanB!];
    [aa, bb, ab] = [aa + x * x, bb + y * y, ab + x * y];
  }
  return ab / Math.sqrt(aa * bb);
}
