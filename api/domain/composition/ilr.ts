import { RequirementError } from '../requirement.ts';
import { clrInverse, logsOf } from './log-ratio.ts';

/**
 * Orthonormal Helmert basis V of the clr plane, D rows (parts) by D − 1 columns: column k holds +1/√(k(k+1)) on
 * parts 1..k and −k/√(k(k+1)) on part k + 1. Throws when D is not a whole number of at least 2.
 * After Egozcue et al. 2003, doi 10.1023/A:1023818214614.
 * @example
 * helmertBasis(2) // [[Math.SQRT1_2], [-Math.SQRT1_2]]
 */
export function helmertBasis(D: number): number[][] {
  if (!Number.isInteger(D) || D < 2)
    throw new RequirementError(`an ilr basis needs at least 2 parts; there are ${D}`);
  return Array.from({ length: D }, (_, part) =>
    Array.from({ length: D - 1 }, (_, column) => {
      const k = column + 1;
      if (part > k) return 0;
      return (part < k ? 1 : -k) / Math.sqrt(k * (k + 1));
    }),
  );
}

/**
 * Isometric log-ratios in the Helmert basis, z = clr(x)·V: D − 1 numbers whose Euclidean geometry is the Aitchison
 * geometry of D parts. Throws when a part is not positive or there are fewer than 2.
 * @example
 * ilr([Math.E, 1]) // [0.7071068]
 * ilr([1, 1, 1]) // [0, 0]
 */
export function ilr(parts: readonly number[]): number[] {
  const logs = logsOf(parts, 'ilr');
  if (logs.length < 2) throw new RequirementError(`ilr needs at least 2 parts; there is ${logs.length}`);
  let sum = 0;
  return logs.slice(0, -1).map((log, at) => {
    const k = at + 1;
    sum += log;
    return (sum - k * logs[k]!) / Math.sqrt(k * (k + 1));
  });
}

/**
 * The composition with given isometric log-ratios (Helmert basis), closed to a total (100 by default).
 * Throws when a coordinate is not finite or there is none.
 * @example
 * ilrInverse(ilr([60, 30, 10])) // [60, 30, 10]
 */
export function ilrInverse(coordinates: readonly number[], total = 100): number[] {
  const D = coordinates.length + 1;
  const centred = new Array<number>(D).fill(0);
  for (const [at, z] of coordinates.entries()) {
    const k = at + 1;
    const step = z / Math.sqrt(k * (k + 1));
    for (let part = 0; part < k; part++) centred[part]! += step;
    centred[k]! -= k * step;
  }
  if (D < 2) throw new RequirementError('a composition needs at least one ilr coordinate; there is none');
  return clrInverse(centred, total);
}
