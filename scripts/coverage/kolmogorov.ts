/**
 * Kolmogorov–Smirnov test of some numbers against the uniform distribution on 0–1: largest distance between the two
 * distribution functions, and its p by the asymptotic series with Stephens' correction for n (Stephens 1970,
 * doi 10.1111/j.2517-6161.1970.tb00821.x).
 */
export function uniformity(values: readonly number[]): { d: number; p: number } {
  const sorted = [...values].sort((a, b) => a - b);
  const n = sorted.length;
  const d = Math.max(...sorted.map((x, i) => Math.max((i + 1) / n - x, x - i / n)));
  const lambda = (Math.sqrt(n) + 0.12 + 0.11 / Math.sqrt(n)) * d;
  let p = 0;
  for (let k = 1; k <= 100; k++) p += 2 * (-1) ** (k - 1) * Math.exp(-2 * k * k * lambda * lambda);
  return { d, p: Math.min(1, Math.max(0, p)) };
}
