import { closure } from '../composition/closure.ts';
import { RequirementError } from '../requirement.ts';

/** A composition in wt% with one standard deviation each; null where none is known. */
export interface Stated {
  readonly value: number;
  readonly sigma: number | null;
}
export type StatedParts = Readonly<Record<string, Stated>>;

/** A share of slip as estimated for the tile, 0 to below 1. */
export interface SlipShare {
  readonly f: number;
  readonly sigma: number;
}

export interface PredictionInput {
  /** Fired batch as predicted. */
  readonly predicted: StatedParts;
  /** The fired tile's paint as measured. */
  readonly measured: StatedParts;
  /** The slip beneath and its share in the reading; null when none is taken to show. */
  readonly slip: { readonly parts: StatedParts; readonly share: SlipShare } | null;
}

/**
 * Oxides that prediction, measurement and slip all have (lead may be absent from the slip). Throws when fewer than
 * two are shared, on a share of slip outside 0 to below 1, and on negative values.
 * @example
 * sharedParts({ predicted: { PbO: { value: 1, sigma: null } }, measured: {}, slip: null }) // throws at least two
 */
export function sharedParts({ predicted, measured, slip }: PredictionInput): string[] {
  const shared = Object.keys(predicted).filter(
    (o) => o in measured && (!slip || o in slip.parts || o === 'PbO'),
  );
  if (shared.length < 2)
    throw new RequirementError(
      `a comparison needs at least two oxides in prediction, measurement and slip; found ${shared.length}`,
    );
  if (slip && !(slip.share.f >= 0 && slip.share.f < 1))
    throw new RequirementError(`a share of slip needs 0 to below 1; found ${slip.share.f}`);
  const bad = [predicted, measured, slip?.parts ?? {}]
    .flatMap((parts) => Object.entries(parts))
    .find(([, s]) => !(s.value >= 0));
  if (bad)
    throw new RequirementError(`a comparison needs values of zero or more; ${bad[0]} is ${bad[1].value}`);
  return shared;
}

/** Figures with their standard deviations, in one list. */
export interface Vector {
  readonly values: readonly number[];
  readonly sigmas: readonly number[];
}

const NONE: Stated = { value: 0, sigma: 0 };

/**
 * Every uncertain figure of a comparison in one list: predicted, measured, slip, then the share of slip.
 * @example
 * vectorOf({ predicted: { PbO: { value: 6, sigma: 1 } }, measured: { PbO: { value: 5, sigma: null } }, slip: null }, ['PbO']) // { values: [6, 5, 0, 0], sigmas: [1, 0, 0, 0] }
 */
export function vectorOf({ predicted, measured, slip }: PredictionInput, oxides: readonly string[]): Vector {
  const all = [predicted, measured, slip?.parts ?? {}].flatMap((parts) =>
    oxides.map((o) => parts[o] ?? NONE),
  );
  return {
    values: [...all.map((s) => s.value), slip?.share.f ?? 0],
    sigmas: [...all.map((s) => s.sigma ?? 0), slip?.share.sigma ?? 0],
  };
}

/**
 * wt%: measured − predicted = slip + evaporation + unexplained; `lost` is the share of lead that left, 0 where there is
 * a surplus; `signed` is the same before it was cut off at 0.
 */
export interface DifferenceSplit {
  readonly predicted: readonly number[];
  readonly measured: readonly number[];
  readonly slip: readonly number[];
  readonly evaporation: readonly number[];
  readonly unexplained: readonly number[];
  readonly lost: number;
  readonly signed: number;
}

/**
 * The difference between measured and predicted, split, at a list of figures as `vectorOf` makes it. With `cut` false
 * a surplus of lead counts as a loss below nothing.
 * @example
 * splitAt({ values: [60, 40, 50, 50, 0, 100, 0.1] }, ['PbO', 'SiO2']).slip // [-6, 6]
 */
export function splitAt(
  { values }: Pick<Vector, 'values'>,
  oxides: readonly string[],
  { cut = true }: { readonly cut?: boolean } = {},
): DifferenceSplit {
  const D = oxides.length;
  const f = values[3 * D]!;
  const predicted = closure(values.slice(0, D));
  const measured = closure(values.slice(D, 2 * D));
  const beneath = values.slice(2 * D, 3 * D);
  const slipParts = beneath.some((v) => v > 0) ? closure(beneath) : predicted;
  const signed = lostShare({ predicted, measured, slip: slipParts, f }, oxides.indexOf('PbO'));
  const lost = cut ? Math.max(0, signed) : signed;
  const after = closure(predicted.map((p, j) => (oxides[j] === 'PbO' ? p * (1 - lost) : p)));
  const slip = predicted.map((p, j) => f * (slipParts[j]! - p));
  const evaporation = predicted.map((p, j) => (1 - f) * (after[j]! - p));
  const unexplained = measured.map((m, j) => m - predicted[j]! - slip[j]! - evaporation[j]!);
  return { predicted, measured, slip, evaporation, unexplained, lost, signed };
}

/** Share of lead that must have left for PbO over the rest to be as measured once the slip is drawn off. */
function lostShare(
  { predicted, measured, slip, f }: { predicted: number[]; measured: number[]; slip: number[]; f: number },
  lead: number,
): number {
  if (lead < 0 || !(predicted[lead]! > 0)) return 0;
  const alone = (measured[lead]! - f * slip[lead]!) / (1 - f);
  const ratio = alone / (100 - alone);
  const wanted = predicted[lead]! / (100 - predicted[lead]!);
  return 1 - Math.max(0, ratio) / wanted;
}

/** Variances below this (wt%²) are rounding: lead's rest is zero by construction where some of it was lost. */
const NOTHING = 1e-16;

/**
 * Standard deviations of the split by first-order propagation: each figure is nudged a hundredth of its σ up and
 * down (GUM, JCGM 100:2008, 5.1). The loss of lead is carried before it is cut off at nothing: a loss of nothing is no
 * surer than any other. Where it was cut off, a surplus counts with the unexplained.
 * @example
 * propagateSplit({ values: [60, 40, 50, 50, 0, 0, 0], sigmas: [0, 0, 0, 0, 0, 0, 0] }, ['PbO', 'SiO2']).lost // 0
 */
export function propagateSplit(start: Vector, oxides: readonly string[]) {
  const D = oxides.length;
  const [slip, evaporation, unexplained] = [0, 1, 2].map(() => new Array<number>(D).fill(0)) as [
    number[],
    number[],
    number[],
  ];
  let lost = 0;
  const surplus = splitAt(start, oxides).signed <= 0;
  const rest = (split: DifferenceSplit, j: number) =>
    split.unexplained[j]! + (surplus ? split.evaporation[j]! : 0);
  start.sigmas.forEach((sigma, i) => {
    if (!(sigma > 0)) return;
    const nudge = (by: number) => ({
      values: start.values.map((v, k) => (k === i ? Math.max(0, v + by) : v)),
    });
    const step = sigma / 100;
    const [up, down] = [step, -step].map((by) => splitAt(nudge(by), oxides, { cut: false })) as [
      DifferenceSplit,
      DifferenceSplit,
    ];
    const slope = (a: number, b: number) => (((a - b) / (2 * step)) * sigma) ** 2;
    for (let j = 0; j < D; j++) {
      slip[j]! += slope(up.slip[j]!, down.slip[j]!);
      evaporation[j]! += slope(up.evaporation[j]!, down.evaporation[j]!);
      unexplained[j]! += slope(rest(up, j), rest(down, j));
    }
    lost += slope(up.signed, down.signed);
  });
  const roots = (v: number[]) => v.map((variance) => (variance > NOTHING ? Math.sqrt(variance) : 0));
  return {
    slip: roots(slip),
    evaporation: roots(evaporation),
    unexplained: roots(unexplained),
    lost: Math.sqrt(lost),
  };
}
