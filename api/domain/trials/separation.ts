import { nnls } from '../batch/nnls.ts';
import type { Design } from './logistic-model.ts';

/** What is left of a sum of unit vectors counts as nothing below this. */
const NOTHING = 1e-7;

/**
 * The columns whose maximum-likelihood effects do not exist, because some combination of columns puts all higher
 * grades on one side (complete or quasi-complete separation; Albert & Anderson 1984, doi 10.1093/biomet/71.1.1).
 * There is none exactly when the rows, turned towards their own grade, can be weighted (each weight ≥ 1) to cancel:
 * non-negative least squares finds the weights, or leaves the separating combination as its residual. Grades are
 * 0 … K − 1; the thresholds of an ordinal model take part and are never named.
 *
 * @example
 * separatedColumns({ names: ['a', 'b'], rows: [[1, -1], [1, -2], [1, 2], [1, 1]] }, [0, 0, 1, 1], { ordinal: false }) // ['b']
 * separatedColumns({ names: ['a', 'b'], rows: [[1, -1], [1, 2], [1, -2], [1, 1]] }, [0, 0, 1, 1], { ordinal: false }) // []
 */
export function separatedColumns(
  { names, rows }: Design,
  grades: readonly number[],
  { ordinal }: { ordinal: boolean },
): string[] {
  const top = Math.max(...grades);
  const turned = ordinal
    ? rows.flatMap((row, i) => cutsTurned(row, grades[i]!, top))
    : rows.map((row, i) => (grades[i] === 1 ? [...row] : row.map((v) => -v)));
  const size = turned[0]!.length;
  const scale = Array.from({ length: size }, (_, k) => Math.max(...turned.map((r) => Math.abs(r[k]!))) || 1);
  const units = turned.map((r) => r.map((v, k) => v / scale[k]!));
  const equations = Array.from({ length: size }, (_, k) => units.map((r) => r[k]!));
  const wanted = equations.map((e) => -e.reduce((a, b) => a + b, 0));
  const { fitted } = nnls(equations, wanted);
  const left = wanted.map((w, k) => w - fitted[k]!);
  const size2 = Math.sqrt(left.reduce((sum, v) => sum + v * v, 0));
  if (size2 < NOTHING * rows.length) return [];
  return names.filter((_, k) => Math.abs(left[size - names.length + k]!) > 1e-3 * size2);
}

/** The cuts above and below a row's grade, as directions in (thresholds, effects) that favour the grade. */
function cutsTurned(row: readonly number[], grade: number, top: number): number[][] {
  const cut = (at: number, sign: 1 | -1) => [
    ...Array.from({ length: top }, (_, j) => (j === at ? sign : 0)),
    ...row.map((v) => -sign * v),
  ];
  return [...(grade < top ? [cut(grade, 1)] : []), ...(grade > 0 ? [cut(grade - 1, -1)] : [])];
}
