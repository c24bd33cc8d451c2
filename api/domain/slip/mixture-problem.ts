import { RequirementError } from '../requirement.ts';
import { closedCovariance } from './closed-covariance.ts';
import { measurementOf, sharedOxides, weighable } from './measurement.ts';
import type { Analysed, Measurement } from './types.ts';
import { dot, whiten } from './weighted.ts';

/** A measured paint to be explained as target and slip. */
export interface MixtureProblem {
  readonly oxides: readonly string[];
  readonly paint: readonly Measurement[];
  readonly target: readonly Measurement[];
  readonly slip: readonly Measurement[];
  readonly slipCovariance: readonly number[][];
}

/** The problem at one slip fraction: scale·paint is held against `explained` with `covariance`. */
export interface MixtureAt {
  readonly scale: number;
  readonly explained: readonly number[];
  readonly covariance: readonly number[][];
  readonly chiSquare: number;
}

/**
 * Gathers values and variances of paint, target and slip on given oxides (those shared by all three unless given).
 * Throws when there are fewer than three, or paint or slip lacks an uncertainty.
 * @example
 * mixtureProblem({ amounts: { PbO: {} } }, { amounts: { PbO: {} } }, { slip: { amounts: { PbO: {} } } }) // throws at least three oxides; shared: PbO
 */
export function mixtureProblem(
  paint: Analysed,
  target: Analysed,
  {
    slip,
    oxides = sharedOxides([paint, target, slip]),
  }: { slip: Analysed; oxides?: readonly string[] | undefined },
): MixtureProblem {
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

/**
 * The problem at slip fraction f, with the paint's scale q that leaves least unexplained:
 * χ² of q·paint − [(1 − f)·target + f·slip], weighed by the errors of all three.
 * @example
 * m = (value, variance) => ({ value, variance, df: null })
 * zero = [[0, 0, 0], [0, 0, 0], [0, 0, 0]]
 * problem = { oxides: ['a', 'b', 'c'], paint: [m(1, 1), m(2, 1), m(3, 1)], target: [m(2, 0), m(4, 0), m(6, 0)], slip: [m(1, 0), m(1, 0), m(1, 0)], slipCovariance: zero }
 * mixtureAt(problem, 0).scale // 2
 */
export function mixtureAt(problem: MixtureProblem, f: number): MixtureAt {
  const { target, slip } = problem;
  const explained = target.map((b, i) => (1 - f) * b.value + f * slip[i]!.value);
  const scale = bestScale(problem, explained, f);
  const covariance = covarianceAt(problem, f, scale);
  return { scale, explained, covariance, chiSquare: unexplained(problem, explained, { f, q: scale }) };
}

function covarianceAt({ paint, target, slipCovariance }: MixtureProblem, f: number, q: number): number[][] {
  const own = paint.map((p, i) => q ** 2 * p.variance + (1 - f) ** 2 * target[i]!.variance);
  return slipCovariance.map((row, i) => row.map((v, j) => f ** 2 * v + (i === j ? own[i]! : 0)));
}

function unexplained(
  problem: MixtureProblem,
  explained: readonly number[],
  at: { f: number; q: number },
): number {
  const r = problem.paint.map((p, i) => at.q * p.value - explained[i]!);
  const [white] = whiten([r], covarianceAt(problem, at.f, at.q));
  return dot(white!, white!);
}

/** Newton's method on a curve that is all but a parabola. */
function bestScale(problem: MixtureProblem, explained: readonly number[], f: number): number {
  let q = sum(explained) / sum(problem.paint.map((p) => p.value));
  for (let i = 0; i < 4; i++) {
    const h = 1e-3 * q;
    const cost = (x: number) => unexplained(problem, explained, { f, q: x });
    const [below, at, above] = [cost(q - h), cost(q), cost(q + h)];
    const bend = above - 2 * at + below;
    if (!(bend > 0)) break;
    q -= Math.max(-100 * h, Math.min(100 * h, (h * (above - below)) / 2 / bend));
  }
  return q;
}

const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
