import { RequirementError } from '../requirement.ts';
import { fQuantile } from '../statistics/distributions.ts';
import { FEWEST_SHERDS } from './choose-spread.ts';
import type { GroupModel } from './types.ts';

/** An ellipse on two components. */
export interface ConfidenceEllipse {
  readonly centre: readonly [number, number];
  /** Half lengths of the axes, longer first, in units of the scores. */
  readonly semiAxes: readonly [number, number];
  /** Angle of the longer axis from the first component, radians, −π/2 to π/2. */
  readonly angle: number;
  readonly level: number;
  /** Squared radius in units of the group's spread. */
  readonly c2: number;
}

/** Eigenvalues (larger first) of [[a, b], [b, d]], and the angle of the first eigenvector. */
function principalAxes(a: number, b: number, d: number) {
  const middle = (a + d) / 2;
  const half = Math.hypot((a - d) / 2, b);
  return {
    values: [middle + half, Math.max(middle - half, 0)] as const,
    angle: Math.atan2(2 * b, a - d) / 2,
  };
}

/**
 * The ellipse on two components in which a new member of a normal group falls with probability `level`: semi-axes
 * √(λ·c²) with λ the eigenvalues of the group's covariance of scores and c² = 2(n−1)(n+1)/(n(n−2))·F(level; 2, n−2),
 * Hotelling's limit for a new observation. Not the ellipse of the mean, and not χ²'s, which is too small for small
 * groups. `axes` are two component indices from 0. Throws with fewer than 4 sherds, or for a component not kept.
 *
 * @example
 * const group = { name: 'Red', n: 10, scoreMean: [1, 2], scoreCovariance: [[4, 0], [0, 1]] };
 * confidenceEllipse(group, [0, 1], 0.95).c2 // 11.035951
 * confidenceEllipse(group, [0, 1], 0.95).semiAxes // [6.644080, 3.322040]
 * confidenceEllipse({ ...group, n: 3 }, [0, 1], 0.95) // throws an ellipse needs at least 4 sherds; Red has 3
 */
export function confidenceEllipse(
  group: Pick<GroupModel, 'name' | 'n' | 'scoreMean' | 'scoreCovariance'>,
  axes: readonly [number, number],
  level: number,
): ConfidenceEllipse {
  const { n, name, scoreMean: mean, scoreCovariance: s } = group;
  if (n < FEWEST_SHERDS || !s)
    throw new RequirementError(`an ellipse needs at least ${FEWEST_SHERDS} sherds; ${name} has ${n}`);
  const [i, j] = axes;
  if (s[i] === undefined || s[j] === undefined || i === j)
    throw new RequirementError(
      `an ellipse needs two components out of ${mean.length}; asked for ${i + 1} and ${j + 1}`,
    );
  const c2 = ((2 * (n - 1) * (n + 1)) / (n * (n - 2))) * fQuantile(level, 2, n - 2);
  const { values, angle } = principalAxes(s[i][i]!, s[i][j]!, s[j][j]!);
  return {
    centre: [mean[i]!, mean[j]!],
    semiAxes: [Math.sqrt(values[0] * c2), Math.sqrt(values[1] * c2)],
    angle,
    level,
    c2,
  };
}
