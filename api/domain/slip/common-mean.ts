/** A value with the variance of its error; `df` are that variance's degrees of freedom, null when it is known. */
export interface Weighed {
  readonly value: number;
  readonly variance: number;
  readonly df: number | null;
}

/** Whether values share one mean, and that mean. */
export interface CommonMean {
  readonly mean: number;
  /** Variance of the mean, raised for weights that were themselves estimated (Meier 1953, from memory). */
  readonly variance: number;
  /** Degrees of freedom of `variance`, and of the test's denominator; null when every variance is known. */
  readonly df: number | null;
  /** What is left over: χ² on one less than the number of values; over that number it is Welch's F. */
  readonly chiSquare: number;
}

/**
 * The mean of values weighed by the inverse of their variances, and Welch's test of whether they share it: with F =
 * χ²/(k − 1) on k − 1 and `df` degrees of freedom (Welch 1951, doi 10.2307/2332579; R's oneway.test). Where
 * all variances are known it is the plain χ². Takes two values or more, variances above zero.
 * @example
 * commonMean([{ value: 1, variance: 1, df: null }, { value: 3, variance: 1, df: null }]) // { mean: 2, variance: 0.5, df: null, chiSquare: 2 }
 * commonMean([{ value: 1, variance: 1, df: 4 }, { value: 3, variance: 1, df: 4 }]) // { mean: 2, variance: 0.75, df: 8, chiSquare: 2 }
 */
export function commonMean(values: readonly Weighed[]): CommonMean {
  const k = values.length;
  const total = values.reduce((sum, { variance }) => sum + 1 / variance, 0);
  const mean = values.reduce((sum, { value, variance }) => sum + value / variance, 0) / total;
  const left = values.reduce((sum, { value, variance }) => sum + (value - mean) ** 2 / variance, 0);
  const [rough, meier] = values.reduce(
    ([a, b], { variance, df }) => {
      const share = 1 / variance / total;
      const over = df === null ? 0 : 1 / df;
      return [a + (1 - share) ** 2 * over, b + share * (1 - share) * over];
    },
    [0, 0],
  );
  return {
    mean,
    variance: (1 + 4 * meier) / total,
    df: rough > 0 ? (k * k - 1) / (3 * rough) : null,
    chiSquare: left / (1 + (2 * (k - 2) * rough) / (k * k - 1)),
  };
}
