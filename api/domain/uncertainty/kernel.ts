import { surroundingsOf } from '../placement/surroundings.ts';
import type { ReferenceModel } from '../reference/types.ts';

/** One group laid out flat. */
export interface KernelGroup {
  readonly mean: Float64Array;
  /** Which set of axes D² is taken on; −1 where D² is refused. */
  readonly axes: number;
  readonly p: number;
  /** Axes times mean. */
  readonly centre: Float64Array;
  /** L⁻¹ times that: what to take off L⁻¹ times the axes times a draw. */
  readonly shift: Float64Array;
  readonly inverseCholesky: Float64Array;
  /** Which set of axes the distance off is taken from, −1 where nothing lies off; those axes times mean. */
  readonly offAxes: number;
  readonly offCentre: Float64Array;
}

/** A model laid out flat, to place many compositions fast. Groups share axes wherever they can. */
export interface Kernel {
  readonly scale: ReferenceModel['settings']['scale'];
  /** Of the references, before standardising. */
  readonly mean: Float64Array;
  readonly sd: Float64Array | null;
  /** Where scores are zero, in the working scale. */
  readonly origin: Float64Array;
  readonly axes: readonly Float64Array[];
  readonly loadings: readonly Float64Array[];
  readonly groups: readonly KernelGroup[];
}

/**
 * Lays a model out flat as one sample sees it: a member's own group without it. Pure; shares nothing with the model.
 * @example
 * group = { id: 'g', n: 3, mean: [0, 0], deviation: null, spread: null, refusal: 'too few', memberIds: [], memberD2: null, memberOff: null }
 * kernelOf({ settings: { scale: 'log-ratio' }, mean: [0, 0], sd: null, pca: { loadings: [] }, groups: [group], members: [] }, 'tile').groups[0].axes // -1
 */
export function kernelOf(model: ReferenceModel, sampleId: string): Kernel {
  const axes: Float64Array[] = [];
  const groups = model.groups.map((group): KernelGroup => {
    const { mean, spread, off } = surroundingsOf(group, model, sampleId);
    const centre = centreOn(spread?.axes, mean);
    const inverseCholesky = Float64Array.from(spread?.inverseCholesky ?? []);
    return {
      mean: Float64Array.from(mean),
      axes: spread ? shared(axes, spread.axes) : -1,
      p: spread?.p ?? 0,
      centre,
      shift: throughTriangle(inverseCholesky, centre),
      inverseCholesky,
      offAxes: off ? shared(axes, off.axes) : -1,
      offCentre: centreOn(off?.axes, mean),
    };
  });
  return {
    scale: model.settings.scale,
    mean: Float64Array.from(model.mean),
    sd: model.sd && Float64Array.from(model.sd),
    origin: Float64Array.from(model.sd ? model.mean.map(() => 0) : model.mean),
    axes,
    loadings: model.pca.loadings.map((row) => Float64Array.from(row)),
    groups,
  };
}

function throughTriangle(packed: Float64Array, vector: Float64Array): Float64Array {
  let at = 0;
  return vector.map((_, i) => {
    let sum = 0;
    for (let j = 0; j <= i; j++) sum += packed[at++]! * vector[j]!;
    return sum;
  });
}

type Rows = readonly (readonly number[])[];

function centreOn(axes: Rows | undefined, mean: readonly number[]): Float64Array {
  return Float64Array.from(axes ?? [], (row) => row.reduce((sum, a, j) => sum + a * mean[j]!, 0));
}

function shared(axes: Float64Array[], rows: Rows): number {
  const own = Float64Array.from(rows.flat());
  const found = axes.findIndex((a) => a.length === own.length && a.every((x, k) => x === own[k]));
  return found >= 0 ? found : axes.push(own) - 1;
}
