import { RequirementError } from '../requirement.ts';
import {
  invertSystem,
  type LineData,
  type LineState,
  lineCost,
  lineSystem,
  nearPositions,
} from './mixing-line-system.ts';

/** A fitted mixing line: near end (paint without slip), far end (slip), and where each point lies. */
export interface MixingLine extends LineState {
  readonly chiSquare: number;
  readonly df: number;
  /** Standard uncertainties from the curvature of χ² at its least; 0 for an amount that is known. */
  readonly nearSigma: readonly number[];
  readonly farSigma: readonly number[];
  readonly fractionSigma: readonly number[];
}

const ROUNDS = 200;

/**
 * Fits a straight mixing line with errors on both sides: point i lies at near + f_i·(far − near), the slips at far.
 * Least squares over all oxides at once, residuals weighed by their own covariance, by Gauss–Newton with halved
 * steps (York's problem in many dimensions: in two it gives York's line, doi 10.1119/1.1632486; with equal errors
 * total least squares). At least one amount of the near end must be known, or f has no zero.
 * Throws when nothing anchors the near end, when points are too few, or when the ends cannot be told apart.
 * @example
 * at = (f) => ({ values: [60 - 60 * f, 40 + 39 * f, f], precision: [[1, 0, 0], [0, 1, 0], [0, 0, 1]] })
 * line = fitMixingLine({ points: [at(0.1), at(0.2), at(0.4)], ends: [at(1)], known: [null, null, 0] })
 * line.fractions // [0.1, 0.2, 0.4]
 * line.near // [60, 40, 0]
 */
export function fitMixingLine(data: LineData): MixingLine {
  need(data);
  let state = startAt(data);
  let change = Number.POSITIVE_INFINITY;
  for (let round = 0; round < ROUNDS && change > 1e-11; round++) {
    const next = stepFrom(data, state);
    change = Math.max(...next.fractions.map((f, i) => Math.abs(f - state.fractions[i]!)));
    state = next;
  }
  if (change > 1e-6)
    throw new RequirementError(
      `a mixing line needs data on which the fit settles; after ${ROUNDS} rounds a fraction still moves by ${change.toPrecision(2)}`,
    );
  return describe(data, state);
}

function need({ points, ends, known }: LineData): void {
  if (!known.some((k) => k !== null))
    throw new RequirementError(
      'a mixing line needs at least one oxide whose amount in the pure paint is known; none is given',
    );
  if (points.length < 2 || ends.length < 1)
    throw new RequirementError(
      `a mixing line needs at least two paints and one slip; there are ${points.length} and ${ends.length}`,
    );
}

/** Fractions from the known oxides alone, near end by regression on them, far end the mean slip. */
function startAt({ points, ends, known }: LineData): LineState {
  const far = known.map((_, j) => ends.reduce((sum, e) => sum + e.values[j]!, 0) / ends.length);
  const fractions = points.map(({ values, precision }) => {
    let [above, below] = [0, 0];
    known.forEach((a, j) => {
      if (a === null) return;
      above += precision[j]![j]! * (values[j]! - a) * (far[j]! - a);
      below += precision[j]![j]! * (far[j]! - a) ** 2;
    });
    return below > 0 ? Math.min(0.95, above / below) : 0;
  });
  const rest = fractions.reduce((sum, f) => sum + (1 - f) ** 2, 0);
  const near = known.map(
    (a, j) =>
      a ??
      points.reduce((sum, p, i) => {
        const f = fractions[i]!;
        return sum + ((1 - f) * (p.values[j]! - f * far[j]!)) / rest;
      }, 0),
  );
  return { fractions, near, far };
}

function stepFrom(data: LineData, state: LineState): LineState {
  const system = lineSystem(data, state);
  const covariance = invertSystem(system);
  const step = covariance
    .to2DArray()
    .map((row) => row.reduce((sum, c, k) => sum + c * system.gradient[k]!, 0));
  for (let length = 1; length > 1e-8; length /= 2) {
    const next = moved(data, state, (k) => length * step[k]!);
    if (lineCost(data, next) <= system.cost * (1 + 1e-14)) return next;
  }
  return state;
}

function moved(data: LineData, state: LineState, by: (at: number) => number): LineState {
  const nearAt = nearPositions(data);
  const firstFar = data.points.length + nearAt.filter((at) => at !== null).length;
  return {
    fractions: state.fractions.map((f, i) => f + by(i)),
    near: state.near.map((x, j) => (nearAt[j] === null ? x : x + by(nearAt[j]!))),
    far: state.far.map((x, j) => x + by(firstFar + j)),
  };
}

function describe(data: LineData, state: LineState): MixingLine {
  const covariance = invertSystem(lineSystem(data, state));
  const zero = {
    fractions: state.fractions.map(() => 0),
    near: data.known.map(() => 0),
    far: data.known.map(() => 0),
  };
  const sigmas = moved(data, zero, (at) => Math.sqrt(covariance.get(at, at)));
  return {
    ...state,
    chiSquare: lineCost(data, state),
    df: (data.points.length + data.ends.length) * data.known.length - covariance.rows,
    nearSigma: sigmas.near,
    farSigma: sigmas.far,
    fractionSigma: sigmas.fractions,
  };
}
