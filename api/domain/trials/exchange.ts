import { RequirementError } from '../requirement.ts';
import { randomStream } from '../statistics/random.ts';

/** Which of some candidates to take, the same one more than once if need be. */
export interface Choice {
  readonly taken: readonly number[];
  readonly score: number;
  /** Every choice was weighed, so none is better. */
  readonly exhaustive: boolean;
}

export interface ChoiceRequest {
  readonly candidates: number;
  readonly count: number;
  readonly score: (taken: readonly number[]) => number;
  readonly seed: number;
  /** Up to so many choices all are weighed; 2,000 by default. */
  readonly most?: number;
}

const STARTS = 3;
const PASSES = 20;
/** A change must gain more than rounding. */
const MORE = 1e-10;

/**
 * The choice of `count` candidates, repeats allowed, with the highest score: all choices where they are few, else a
 * greedy start and seeded random starts, each improved by exchanging one member at a time until none gains (Fedorov
 * 1972; Cook & Nachtsheim 1980, doi 10.1080/00401706.1980.10486162). Throws without candidates.
 *
 * @example
 * chooseBest({ candidates: 4, count: 2, score: ([a, b]) => a * b, seed: 1 }) // { taken: [3, 3], score: 9, exhaustive: true }
 * chooseBest({ candidates: 0, count: 2, score: () => 0, seed: 1 }) // throws a choice needs a candidate; found none
 */
export function chooseBest(request: ChoiceRequest): Choice {
  const { candidates, count, most = 2000 } = request;
  if (candidates < 1) throw new RequirementError('a choice needs a candidate; found none');
  if (multisetCount(candidates, count) <= most) return weighAll(request);
  const { uniform } = randomStream(request.seed);
  const random = () => Array.from({ length: count }, () => Math.floor(uniform() * candidates));
  const starts = [greedy(request), ...Array.from({ length: STARTS }, random)];
  return starts.map((start) => improve(start, request)).reduce((a, b) => (b.score > a.score + MORE ? b : a));
}

function multisetCount(n: number, k: number): number {
  let count = 1;
  for (let i = 1; i <= k; i++) count = (count * (n - 1 + i)) / i;
  return Math.round(count);
}

function* multisets(n: number, k: number, from = 0): Generator<number[]> {
  if (k === 0) {
    yield [];
    return;
  }
  for (let i = from; i < n; i++) for (const rest of multisets(n, k - 1, i)) yield [i, ...rest];
}

function weighAll({ candidates, count, score }: ChoiceRequest): Choice {
  let best: Choice = { taken: [], score: Number.NEGATIVE_INFINITY, exhaustive: true };
  for (const taken of multisets(candidates, count)) {
    const found = score(taken);
    if (found > best.score + MORE) best = { taken, score: found, exhaustive: true };
  }
  return best;
}

function greedy({ candidates, count, score }: ChoiceRequest): number[] {
  const taken: number[] = [];
  for (let i = 0; i < count; i++) {
    let best = { candidate: 0, score: Number.NEGATIVE_INFINITY };
    for (let c = 0; c < candidates; c++) {
      const found = score([...taken, c]);
      if (found > best.score + MORE) best = { candidate: c, score: found };
    }
    taken.push(best.candidate);
  }
  return taken;
}

function improve(start: readonly number[], { candidates, score }: ChoiceRequest): Choice {
  let taken = [...start];
  let now = score(taken);
  for (let pass = 0, changed = true; changed && pass < PASSES; pass++) {
    changed = false;
    for (let place = 0; place < taken.length; place++)
      for (let c = 0; c < candidates; c++) {
        const next = taken.with(place, c);
        const found = score(next);
        if (found <= now + MORE) continue;
        [taken, now, changed] = [next, found, true];
      }
  }
  return { taken: taken.toSorted((a, b) => a - b), score: now, exhaustive: false };
}
