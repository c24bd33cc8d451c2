import type { FiredBatch } from '../domain/batch/batch.ts';
import type { Amounts } from '../domain/composition/types.ts';
import { RequirementError } from '../domain/requirement.ts';
import { chemical } from './chemical.ts';

/** wt% with its bounds; `below` where it was not detected and stands for what lies between nothing and the limit. */
export interface BatchValue {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly below: boolean;
}
export interface BatchRow {
  readonly oxide: string;
  readonly name: string;
  readonly predicted: BatchValue;
  readonly target: number | null;
  /** In the order of the tiles. */
  readonly tiles: readonly BatchValue[];
}
export interface BatchData {
  readonly id: string;
  readonly title: string;
  readonly batch: string;
  readonly celsius: number;
  readonly rows: readonly BatchRow[];
  readonly tiles: readonly { readonly label: string; readonly spots: number }[];
  readonly target: string | null;
  /** Oxides that were predicted and are not measured on every tile. */
  readonly leftOut: readonly string[];
  readonly hiddenRows: number;
}

export interface BatchSides {
  readonly name: string;
  readonly celsius: number;
  readonly fired: Pick<FiredBatch, 'oxides'>;
  readonly target: { readonly name: string; readonly parts: Readonly<Record<string, number>> } | null;
  readonly tiles: readonly { readonly label: string; readonly spots: number; readonly amounts: Amounts }[];
}

/** Share of a detection limit that stands for a value below it. */
const FRACTION = 0.65;

/** A batch as predicted beside tiles made of it and its target, all closed to 100 on the oxides that can be compared. */
export function batchData(
  { name, celsius, fired, target, tiles }: BatchSides,
  { id, most = Number.POSITIVE_INFINITY }: { readonly id: string; readonly most?: number },
): BatchData {
  if (tiles.length === 0 && target === null)
    throw new RequirementError(
      'a figure of a batch sets its prediction beside a tile whose paint was analysed or beside a target; this batch has neither',
    );
  const predicted = new Map(fired.oxides.map((one) => [one.oxide, predictedOf(one)]));
  const measured = tiles.map(({ amounts }) => measuredOf(amounts));
  const [first, ...rest] = measured;
  const oxides = first
    ? [...first.keys()].filter((oxide) => rest.every((one) => one.has(oxide)))
    : [...predicted.keys()];
  if (oxides.length < 2)
    throw new RequirementError(
      `a figure of a batch shows at least two oxides that every tile has; found ${oxides.length}`,
    );
  const closed = closedOn(oxides, predicted);
  const sides = measured.map((one) => closedOn(oxides, one));
  const aims = target ? scaledTo(closed, target.parts) : new Map<string, number>();
  const rows = oxides
    .map((oxide) => ({
      ...{ oxide, name: chemical(oxide), predicted: closed.get(oxide)! },
      target: aims.get(oxide) ?? null,
      tiles: sides.map((side) => side.get(oxide)!),
    }))
    .sort((a, b) => largest(b) - largest(a));
  return {
    ...{ id, title: `${name}, predicted and fired`, batch: name, celsius, target: target?.name ?? null },
    ...{ rows: rows.slice(0, most), hiddenRows: Math.max(0, rows.length - most) },
    tiles: tiles.map(({ label, spots }) => ({ label, spots })),
    leftOut: [...predicted.keys()].filter((oxide) => !oxides.includes(oxide)),
  };
}

const largest = ({ predicted, tiles }: BatchRow) =>
  Math.max(predicted.value, ...tiles.map(({ value }) => value));

/** What sulfur, purity and roast leave open, and one standard deviation of weighing and analyses beyond. */
function predictedOf({ percent, low, high, sigma }: FiredBatch['oxides'][number]): BatchValue {
  return {
    ...{ value: percent, low: Math.max(0, Math.min(low, percent) - sigma) },
    ...{ high: Math.max(high, percent) + sigma, below: false },
  };
}

function measuredOf(amounts: Amounts): Map<string, BatchValue> {
  const values = new Map<string, BatchValue>();
  for (const [oxide, { value, limit, sigma }] of Object.entries(amounts)) {
    if (value !== null) {
      const [at, error] = [Math.max(0, value), sigma ?? 0];
      values.set(oxide, { value: at, low: Math.max(0, at - error), high: at + error, below: false });
    } else if (limit !== null)
      values.set(oxide, { value: FRACTION * limit, low: 0, high: limit, below: true });
  }
  return values;
}

const NONE: BatchValue = { value: 0, low: 0, high: 0, below: false };

/** Closed to 100 on some oxides, bounds alike; what is not known to be there counts as none. */
function closedOn(oxides: readonly string[], side: ReadonlyMap<string, BatchValue>): Map<string, BatchValue> {
  const kept = oxides.map((oxide) => [oxide, side.get(oxide) ?? NONE] as const);
  const factor = 100 / kept.reduce((sum, [, { value }]) => sum + value, 0);
  const by = ({ value, low, high, below }: BatchValue) => ({
    ...{ value: factor * value, low: factor * low, high: factor * high, below },
  });
  return new Map(kept.map(([oxide, value]) => [oxide, by(value)]));
}

/** A target, which may name few oxides, brought to what the prediction holds of those. */
function scaledTo(
  closed: ReadonlyMap<string, BatchValue>,
  parts: Readonly<Record<string, number>>,
): Map<string, number> {
  const shared = Object.entries(parts).filter(([oxide]) => closed.has(oxide));
  const sum = shared.reduce((total, [, value]) => total + value, 0);
  const has = shared.reduce((total, [oxide]) => total + closed.get(oxide)!.value, 0);
  return new Map(sum > 0 ? shared.map(([oxide, value]) => [oxide, (value * has) / sum]) : []);
}
