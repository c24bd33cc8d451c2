import { RequirementError } from '../requirement.ts';

/** One tile (or matched set): whole-number scores of its zones, and what each zone had, in whole steps. */
export interface Stratum {
  /** 0, 1, … : the grade of each zone. */
  readonly scores: readonly number[];
  /** The factor looked at, then factors held fixed; one list a factor, whole numbers ≥ 0. */
  readonly steps: readonly (readonly number[])[];
}

/** How Σ score·step falls when the scores of each stratum are dealt out anew, all deals alike. */
export interface Arrangements {
  readonly totals: readonly number[];
  /** Share of the deals with that total; sums to 1. */
  readonly shares: readonly number[];
  readonly observed: number;
  /** Number of deals, before those that move a fixed factor are dropped. */
  readonly deals: number;
}

/** Beyond this many combinations of totals the sums are not worked out. */
export const MOST_TOTALS = 2_000_000;

/** Mixed-radix place values: a total of factor k counts `places[k]` in the key. */
function placesOf(strata: readonly Stratum[]): { places: number[]; size: number } {
  const factors = strata[0]?.steps.length ?? 0;
  const places: number[] = [];
  let size = 1;
  for (let k = 0; k < factors; k++) {
    places.push(size);
    size *= 1 + strata.reduce((sum, s) => sum + largest(s, k), 0);
  }
  return { places, size };
}

/** The largest Σ score·step: largest scores on largest steps. */
function largest({ scores, steps }: Stratum, k: number): number {
  const high = scores.toSorted((a, b) => b - a);
  return steps[k]!.toSorted((a, b) => b - a).reduce((sum, step, i) => sum + step * high[i]!, 0);
}

/** Shares of deals of one stratum by key of totals. */
function dealsOf({ scores, steps }: Stratum, places: readonly number[], size: number): Map<number, number> {
  const grades = [...new Set(scores)].sort((a, b) => a - b);
  const room = grades.map((g) => scores.filter((s) => s === g).length);
  const bases = room.map((_, g) => room.slice(0, g).reduce((product, r) => product * (r + 1), 1));
  const weights = scores.map((_, i) => places.reduce((sum, place, k) => sum + place * steps[k]![i]!, 0));
  let table = new Map<number, number>([[0, 1]]);
  weights.forEach((weight, done) => {
    const next = new Map<number, number>();
    for (const [key, share] of table)
      grades.forEach((grade, g) => {
        const used = Math.floor(Math.floor(key / size) / bases[g]!) % (room[g]! + 1);
        if (used === room[g]) return;
        const to = key + bases[g]! * size + grade * weight;
        // Drawing scores without putting back keeps shares within range, however many the deals.
        const drawn = (share * (room[g]! - used)) / (scores.length - done);
        next.set(to, (next.get(to) ?? 0) + drawn);
      });
    table = next;
  });
  return new Map([...table].map(([key, share]) => [key % size, share]));
}

function dealCount({ scores }: Stratum): number {
  let count = 1;
  const seen = new Map<number, number>();
  scores.forEach((score, i) => {
    const n = (seen.get(score) ?? 0) + 1;
    seen.set(score, n);
    count *= (i + 1) / n;
  });
  return Math.round(count);
}

/** Sums over strata by adding every stratum's totals to every total so far. */
function convolve(parts: readonly Map<number, number>[], size: number): Float64Array {
  let sums = new Float64Array(size);
  sums[0] = 1;
  for (const part of parts) {
    const next = new Float64Array(size);
    sums.forEach((share, key) => {
      if (share > 0) for (const [more, s] of part) next[key + more]! += share * s;
    });
    sums = next;
  }
  return sums;
}

const totalOf = (strata: readonly Stratum[], k: number) =>
  strata.reduce((sum, s) => sum + s.scores.reduce((own, score, i) => own + score * s.steps[k]![i]!, 0), 0);

/**
 * The exact permutation distribution of Σ score·step for the first factor, scores dealt out anew within each stratum,
 * given that Σ score·step of every further factor stays as observed: what conditional logistic inference rests on
 * (Cox 1970, *Analysis of Binary Data*; Mehta & Patel 1995, doi 10.1002/sim.4780141908). By dynamic programming over
 * zones, so that it is exact however many deals there are. Throws beyond `MOST_TOTALS` combinations of totals.
 *
 * @example
 * arrangements([{ scores: [0, 1, 1], steps: [[0, 1, 2]] }]) // { totals: [1, 2, 3], shares: [0.33333, 0.33333, 0.33333], observed: 3, deals: 3 }
 * arrangements([{ scores: [0, 1], steps: [[0, 3000000]] }]) // throws arrangements needs at most 2000000 totals; found 3000001
 */
export function arrangements(strata: readonly Stratum[]): Arrangements {
  const { places, size } = placesOf(strata);
  if (size > MOST_TOTALS)
    throw new RequirementError(`arrangements needs at most ${MOST_TOTALS} totals; found ${size}`);
  const sums = convolve(
    strata.map((s) => dealsOf(s, places, size)),
    size,
  );
  const radix = places[1] ?? size;
  const fixed = places.slice(1).reduce((sum, place, k) => sum + place * totalOf(strata, k + 1), 0);
  const kept = Array.from({ length: radix }, (_, total) => ({ total, share: sums[fixed + total]! })).filter(
    ({ share }) => share > 0,
  );
  const whole = kept.reduce((sum, { share }) => sum + share, 0);
  return {
    totals: kept.map(({ total }) => total),
    shares: kept.map(({ share }) => share / whole),
    observed: totalOf(strata, 0),
    deals: strata.reduce((product, s) => product * dealCount(s), 1),
  };
}
