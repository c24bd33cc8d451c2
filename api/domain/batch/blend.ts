import { RequirementError } from '../requirement.ts';
import { dryMass } from './line.ts';
import type { BatchLine } from './types.ts';

/** One batch of a series: its place, how much of each end batch it takes, and its own lines. */
export interface BlendPoint {
  /** Row letter and column number for a tile: A1, A2, … */
  readonly label: string;
  readonly shares: readonly number[];
  readonly lines: readonly BatchLine[];
}

export interface BlendPlan {
  /** Steps from one end to the other; `steps` + 1 batches on a side. */
  readonly steps: number;
  /** Dry grams of each batch of the series. */
  readonly grams: number;
}

/**
 * The series between two batches: `steps` + 1 mixtures by dry mass from all of the first to all of the second.
 * Throws when there are not two batches, or with steps that are no whole number from 1 to 50.
 * @example
 * const [a, b] = ['SiO2', 'PbO'].map((f) => [{ material: materialFromFormula({ id: f, name: f }, f), amount: 7 }])
 * blendSeries([a, b], { steps: 4, grams: 20 }).map((p) => p.shares[1]) // [0, 0.25, 0.5, 0.75, 1]
 * blendSeries([a, b], { steps: 4, grams: 20 })[1].lines.map((l) => l.amount) // [15, 5]
 * blendSeries([a], { steps: 4, grams: 20 }) // throws two, three or four
 */
export function blendSeries(batches: readonly (readonly BatchLine[])[], plan: BlendPlan): BlendPoint[] {
  if (!(Number.isInteger(plan.steps) && plan.steps >= 1 && plan.steps <= 50))
    throw new RequirementError(`a blend needs 1 to 50 whole steps; found ${plan.steps}`);
  if (!(plan.grams > 0)) throw new RequirementError(`a blend needs grams above zero; found ${plan.grams}`);
  return placesOf(batches.length, plan.steps).map(({ label, shares }) => ({
    label,
    shares,
    lines: mixBatches(batches, shares, plan.grams),
  }));
}

type Place = Pick<BlendPoint, 'label' | 'shares'>;

function placesOf(ends: number, steps: number): Place[] {
  if (ends === 2) return row(0, steps, (j) => [1 - j / steps, j / steps]);
  if (ends === 3) return triangle(steps);
  if (ends === 4) return square(steps);
  throw new RequirementError(`a blend needs two, three or four batches; found ${ends}`);
}

const letters = (i: number) =>
  (i < 26 ? '' : String.fromCharCode(64 + Math.floor(i / 26))) + String.fromCharCode(65 + (i % 26));

function row(i: number, count: number, shares: (j: number) => number[]): Place[] {
  return Array.from({ length: count + 1 }, (_, j) => ({ label: `${letters(i)}${j + 1}`, shares: shares(j) }));
}

/** Every mixture of three in `steps` equal parts. */
function triangle(steps: number): Place[] {
  return Array.from({ length: steps + 1 }, (_, i) =>
    row(i, i, (j) => [(steps - i) / steps, (i - j) / steps, j / steps]),
  ).flat();
}

/** Four corners of a square: across from the first to the second, down to the third and fourth. */
function square(steps: number): Place[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const down = i / steps;
    return row(i, steps, (j) => {
      const across = j / steps;
      return [(1 - across) * (1 - down), across * (1 - down), (1 - across) * down, across * down];
    });
  }).flat();
}

/**
 * One mixture of batches by dry mass: `shares` that sum to 1, `grams` of dry mixture. Lines of one material and one
 * water content run together. Throws on shares that are negative or do not sum to 1, and on an empty batch.
 * @example
 * const ends = ['SiO2', 'PbO'].map((f) => [{ material: materialFromFormula({ id: f, name: f }, f), amount: 7 }])
 * mixBatches(ends, [0.5, 0.6], 10) // throws sum to 1
 */
export function mixBatches(
  batches: readonly (readonly BatchLine[])[],
  shares: readonly number[],
  grams: number,
): BatchLine[] {
  const sum = shares.reduce((total, share) => total + share, 0);
  if (shares.length !== batches.length || shares.some((s) => !(s >= 0)) || Math.abs(sum - 1) > 1e-9)
    throw new RequirementError(
      `a mixture of batches needs shares of zero or more that sum to 1; found ${sum}`,
    );
  const lines = new Map<string, BatchLine>();
  batches.forEach((batch, i) => {
    const dry = batch.reduce((total, line) => total + dryMass(line), 0);
    if (!(dry > 0)) throw new RequirementError('a mixture of batches needs batches above zero; one is empty');
    if (shares[i] === 0) return;
    for (const line of batch) {
      const key = `${line.material.id} ${line.water ?? 0}`;
      const amount = (lines.get(key)?.amount ?? 0) + (line.amount / dry) * shares[i]! * grams;
      lines.set(key, { ...line, amount });
    }
  });
  return [...lines.values()].filter((line) => line.amount > 0);
}
