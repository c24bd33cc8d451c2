import { RequirementError } from '../requirement.ts';
import { boxLeastSquares } from './box-least-squares.ts';

export interface NonNegativeFit {
  readonly x: readonly number[];
  readonly fitted: readonly number[];
  /** Sum of squared residuals, weighted if weights were given. */
  readonly residual: number;
  /** Indices of the unknowns above zero. */
  readonly passive: readonly number[];
}

export interface NnlsOptions {
  /** One weight a row (1/σ); residuals are multiplied by it. */
  readonly weights?: readonly number[];
  /** Makes the unknowns sum to this. */
  readonly sumTo?: number;
}

/**
 * Non-negative least squares, least ‖w(Ax − b)‖² with x ≥ 0, by the active-set method of Lawson & Hanson (1974,
 * ch. 23): `rows` is A, m × n. Throws on ragged or non-finite input and on weights that are not positive.
 * Agrees with R's nnls to 1e-9 in the tests.
 * @example
 * nnls([[1, 0], [0, 1], [1, 1]], [1, -1, 0]).x // [0.5, 0]
 * nnls([[1, 0], [0, 1]], [3, 1], { sumTo: 1 }).x // [1, 0]
 */
export function nnls(
  rows: readonly (readonly number[])[],
  b: readonly number[],
  { weights, sumTo }: NnlsOptions = {},
): NonNegativeFit {
  const n = rows[0]?.length ?? 0;
  checkSystem(rows, b, weights);
  const w = weights ?? b.map(() => 1);
  const x = boxLeastSquares({
    columns: Float64Array.from({ length: n * b.length }, (_, at) => {
      const i = at % b.length;
      return w[i]! * rows[i]![Math.floor(at / b.length)]!;
    }),
    right: Float64Array.from(b, (v, i) => w[i]! * v),
    lower: new Float64Array(n),
    upper: new Float64Array(n).fill(Number.POSITIVE_INFINITY),
    sum: sumTo === undefined ? null : { weights: new Float64Array(n).fill(1), total: sumTo },
  });
  const fitted = rows.map((row) => row.reduce((sum, a, j) => sum + a * x[j]!, 0));
  const residual = fitted.reduce((sum, y, i) => sum + (w[i]! * (y - b[i]!)) ** 2, 0);
  return { x: [...x], fitted, residual, passive: [...x.keys()].filter((j) => x[j]! > 0) };
}

function checkSystem(
  rows: readonly (readonly number[])[],
  b: readonly number[],
  weights?: readonly number[],
): void {
  const n = rows[0]?.length ?? 0;
  if (n === 0 || rows.length !== b.length || rows.some((row) => row.length !== n))
    throw new RequirementError(
      `least squares needs as many right-hand sides as rows, all of one length; found ${b.length} and ${rows.length}`,
    );
  if (![...rows.flat(), ...b].every(Number.isFinite))
    throw new RequirementError('least squares needs finite numbers; a row holds something else');
  if (weights && !(weights.length === b.length && weights.every((w) => w > 0 && Number.isFinite(w))))
    throw new RequirementError('least squares needs one positive weight a row');
}
