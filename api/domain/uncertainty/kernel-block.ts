import type { Kernel } from './kernel.ts';

/**
 * Coordinates in the working scale of a block of closed compositions, laid out part by part (part j of draw i at
 * [j·size + i]), as `coordinatesOf` gives them one by one.
 * @example
 * blockCoordinates({ scale: 'log-ratio', mean: [0, 0], sd: null }, Float64Array.of(10, 90), 1) // [-1.0986123, 1.0986123]
 */
export function blockCoordinates(
  { scale, mean, sd }: Pick<Kernel, 'scale' | 'mean' | 'sd'>,
  parts: Float64Array,
  size: number,
): Float64Array {
  const out = new Float64Array(parts.length);
  if (scale === 'standardised') {
    for (let j = 0, k = 0; k < parts.length; j++)
      for (let i = 0; i < size; i++, k++) out[k] = (parts[k]! - mean[j]!) / sd![j]!;
    return out;
  }
  const unit = scale === 'log10' ? Math.LN10 : 1;
  for (let k = 0; k < parts.length; k++) out[k] = Math.log(parts[k]!) / unit;
  if (scale === 'log-ratio') centre(out, size);
  return out;
}

function centre(rows: Float64Array, size: number): void {
  const count = rows.length / size;
  for (let i = 0; i < size; i++) {
    let sum = 0;
    for (let k = i; k < rows.length; k += size) sum += rows[k]!;
    for (let k = i; k < rows.length; k += size) rows[k]! -= sum / count;
  }
}

/**
 * Products of a block with orthonormal rows: Σ_j row_r[j]·(y_j − origin_j), laid out row by row.
 * @example
 * blockProducts(Float64Array.of(3, 5), [Float64Array.of(0.6, 0.8)], Float64Array.of(1, 1)) // [4.4]
 */
export function blockProducts(
  y: Float64Array,
  rows: readonly Float64Array[],
  origin: Float64Array | null,
): Float64Array {
  const width = rows[0]?.length ?? 0;
  const size = width === 0 ? 0 : y.length / width;
  const out = new Float64Array(rows.length * size);
  rows.forEach((row, r) => {
    for (let j = 0; j < width; j++) {
      const [weight, from] = [row[j]!, origin ? origin[j]! : 0];
      for (let i = 0, k = j * size, to = r * size; i < size; i++) out[to++]! += weight * (y[k++]! - from);
    }
  });
  return out;
}
