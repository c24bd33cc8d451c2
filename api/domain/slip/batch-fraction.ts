import { RequirementError } from '../requirement.ts';
import { closedCovariance } from './closed-covariance.ts';
import { effectiveDf } from './consistency.ts';
import { directionBetween, directionWords } from './direction.ts';
import { estimateFraction, tellsNothing } from './estimate.ts';
import { measurementOf, sharedOxides, weighable } from './measurement.ts';
import type { Analysed, Direction, FractionEstimate, Measurement, OxideWitness } from './types.ts';
import { dot, whiten } from './weighted.ts';

/** Settings of explaining a reading as target and slip. */
export interface BatchFractionOptions {
  /** Oxides used; by default all that paint, target and slip share. */
  readonly oxides?: readonly string[];
  /** What the target is, for the words: `batch` (predicted fired oxides) or `group` (a group's own paint). */
  readonly target?: 'batch' | 'group';
}

interface Problem {
  readonly oxides: readonly string[];
  readonly paint: readonly Measurement[];
  readonly target: readonly Measurement[];
  readonly slip: readonly Measurement[];
  readonly slipCovariance: readonly number[][];
}

/**
 * Slip fraction that best explains a measured paint as target plus slip: paint ∝ (1 − f)·target + f·slip in mass,
 * weighed by the uncertainties of all three. The paint's scale is left free, so its own closure, and oxides that it
 * was not measured for, do not matter; target and slip must each be closed to 100 over all that they hold. A target
 * oxide without an uncertainty is taken as exact. Throws when fewer than three oxides are shared.
 * @example
 * of = (value, sigma) => ({ value, limit: null, sigma, sigmaBasis: 'stated', resolution: null })
 * batch = { label: 'B3', spots: 1, amounts: { PbO: of(70, null), SiO2: of(25, null), Al2O3: of(5, null) } }
 * slip = { label: 'S', spots: 1, amounts: { PbO: of(0.1, 0.1), SiO2: of(69.9, 0.5), Al2O3: of(30, 0.3) } }
 * paint = { label: 'T1', spots: 1, amounts: { PbO: of(56.02, 0.5), SiO2: of(33.98, 0.5), Al2O3: of(10, 0.2) } }
 * fractionFromBatch(paint, batch, { slip }).f // 0.2
 */
export function fractionFromBatch(
  paint: Analysed,
  target: Analysed,
  { slip, ...options }: BatchFractionOptions & { readonly slip: Analysed },
): FractionEstimate {
  const word = options.target ?? 'batch';
  const problem = problemOf(paint, target, { slip, ...options });
  const chiSquare = (f: number) => unexplained(problem, f, bestScale(problem, f));
  const fitDf = problem.oxides.length - 2;
  const df = (f: number) => effectiveDf(shares(problem, f));
  const fitted = estimateFraction({ kind: word, chiSquare, fitDf, df });
  const direction = directionAt(problem, fitted.f);
  const words = directionWords(direction, `${word} and slip`);
  return {
    ...fitted,
    direction,
    cannotTell: tellsNothing(fitted, words.figures),
    witnesses: witnessesAt(problem, fitted.unbounded),
    assumptions: assumptionsOf(word, target, problem.oxides),
    warnings: [fitted.consistency?.agree === false ? misfit(word) : null, words.warning].filter(
      (w) => w !== null,
    ),
  };
}

function problemOf(
  paint: Analysed,
  target: Analysed,
  { slip, oxides = sharedOxides([paint, target, slip]) }: BatchFractionOptions & { slip: Analysed },
): Problem {
  if (oxides.length < 3)
    throw new RequirementError(
      `explaining a reading as target and slip needs at least three oxides; shared: ${oxides.join(', ') || 'none'}`,
    );
  return {
    oxides,
    paint: oxides.map((oxide) => weighable(paint, oxide)),
    target: oxides.map((oxide) => measurementOf(target, oxide)),
    slip: oxides.map((oxide) => weighable(slip, oxide)),
    slipCovariance: closedCovariance(slip, oxides),
  };
}

const explainedAt = ({ target, slip }: Problem, f: number) =>
  target.map((b, i) => (1 - f) * b.value + f * slip[i]!.value);

function covarianceAt({ paint, target, slipCovariance }: Problem, f: number, q: number): number[][] {
  return slipCovariance.map((row, i) =>
    row.map(
      (v, j) => f ** 2 * v + (i === j ? q ** 2 * paint[i]!.variance + (1 - f) ** 2 * target[i]!.variance : 0),
    ),
  );
}

/** χ² of q·paint − [(1 − f)·target + f·slip]. */
function unexplained(problem: Problem, f: number, q: number): number {
  const m = explainedAt(problem, f);
  const r = problem.paint.map((p, i) => q * p.value - m[i]!);
  const [white] = whiten([r], covarianceAt(problem, f, q));
  return dot(white!, white!);
}

/** The scale that leaves least unexplained: Newton's method on a curve that is all but a parabola. */
function bestScale(problem: Problem, f: number): number {
  const m = explainedAt(problem, f);
  let q = sum(m) / sum(problem.paint.map((p) => p.value));
  for (let i = 0; i < 4; i++) {
    const h = 1e-3 * q;
    const [below, at, above] = [q - h, q, q + h].map((x) => unexplained(problem, f, x)) as [
      number,
      number,
      number,
    ];
    const bend = above - 2 * at + below;
    if (!(bend > 0)) break;
    q -= Math.max(-100 * h, Math.min(100 * h, (h * (above - below)) / 2 / bend));
  }
  return q;
}

const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

function directionAt(problem: Problem, f: number): Direction {
  const columns = [problem.target, problem.slip].map((side) => side.map((m) => m.value));
  const [a, b] = whiten(columns, covarianceAt(problem, f, bestScale(problem, f)));
  return directionBetween(a!, b!);
}

function witnessesAt(problem: Problem, f: number): OxideWitness[] {
  const q = bestScale(problem, f);
  const [m, v] = [explainedAt(problem, f), covarianceAt(problem, f, q)];
  return problem.oxides.map((oxide, i) => {
    const [b, s, p] = [problem.target[i]!.value, problem.slip[i]!.value, problem.paint[i]!];
    const alone = s === b ? null : (q * p.value - b) / (s - b);
    return {
      oxide,
      alone,
      aloneSigma: alone === null ? null : Math.sqrt(v[i]![i]!) / Math.abs(s - b),
      measured: p.value,
      explained: m[i]! / q,
      z: (q * p.value - m[i]!) / Math.sqrt(v[i]![i]!),
    };
  });
}

/** Parts of the variance of f by oxide and side: weight of each oxide is its lever over its variance. */
function shares(problem: Problem, f: number) {
  const v = covarianceAt(problem, f, bestScale(problem, f));
  return problem.oxides.flatMap((_, i) => {
    const [b, s, p] = [problem.target[i]!, problem.slip[i]!, problem.paint[i]!];
    const weight = ((s.value - b.value) / v[i]![i]!) ** 2;
    return [
      { variance: weight * p.variance, df: p.df },
      { variance: weight * f ** 2 * s.variance, df: s.df },
      { variance: weight * (1 - f) ** 2 * b.variance, df: b.df },
    ];
  });
}

function assumptionsOf(word: string, target: Analysed, oxides: readonly string[]): string[] {
  const exact = oxides.filter((oxide) => measurementOf(target, oxide).variance === 0);
  return [
    `What was read is ${word} paint and slip, and nothing else, in these oxides: ${oxides.join(', ')}.`,
    ...(word === 'batch'
      ? [
          'Nothing left the batch in the fire but what its prediction allows for (lead evaporates, sulfur may stay).',
        ]
      : [
          'The group’s own centre stands for the paint: this f brings the reading as near to the group as slip can, so it must not be used to test membership of that group.',
        ]),
    ...(exact.length > 0 ? [`Taken as exact in the ${word}: ${exact.join(', ')}.`] : []),
    'Target and slip are closed to 100 over all that they hold; errors are independent before closure.',
  ];
}

const misfit = (word: string) =>
  `Slip and ${word} do not explain the reading within its uncertainties; see which oxides are off. Loss of lead, a wrong slip, or uncertainties stated too small would do this.`;
