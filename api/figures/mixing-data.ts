import type { Amount, Amounts } from '../domain/composition/types.ts';
import { RequirementError } from '../domain/requirement.ts';
import { drawOff } from '../domain/slip/mixing.ts';
import type { Analysed } from '../domain/slip/types.ts';

/** wt% with one standard uncertainty to either side. */
export interface MixingValue {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}
export interface MixingPoint {
  readonly label: string;
  readonly x: MixingValue;
  readonly y: MixingValue;
}
export interface MixingData {
  readonly id: string;
  readonly title: string;
  /** Across, up. */
  readonly oxides: readonly [string, string];
  readonly slip: MixingPoint;
  readonly paint: MixingPoint;
  /** The paint with its slip drawn off; null where none is. */
  readonly drawnOff: MixingPoint | null;
  readonly f: number;
  /** Where the line ends beyond it, because one of the two would be negative, or far enough off. */
  readonly end: { readonly f: number; readonly x: number; readonly y: number };
  readonly others: readonly MixingPoint[];
  readonly spots: { readonly slip: number; readonly paint: number };
}

export interface MixingSides {
  readonly paint: Pick<Analysed, 'label' | 'spots' | 'amounts'>;
  readonly slip: Pick<Analysed, 'label' | 'spots' | 'amounts'>;
  readonly f: number;
  readonly others: readonly { readonly label: string; readonly amounts: Amounts }[];
}

const FRACTION = 0.65;

/** A paint, the slip beneath it and what is left with slip drawn off, on two oxides. Slip and paint mix along a line. */
export function mixingData(
  { paint, slip, f, others }: MixingSides,
  { id, oxides }: { readonly id: string; readonly oxides: readonly string[] | null },
): MixingData {
  const pair = pairOf(paint.amounts, slip.amounts, oxides);
  const at = (label: string, amounts: Amounts) => pointOf(label, amounts, pair);
  const [paintAt, slipAt] = [at(paint.label, paint.amounts), at(slip.label, slip.amounts)];
  const { amounts: left } = drawOff(paint.amounts, slip.amounts, f);
  return {
    ...{ id, title: `Slip and paint of ${paint.label}`, oxides: pair, f, slip: slipAt, paint: paintAt },
    drawnOff: f === 0 ? null : at(`${paint.label}, slip drawn off`, left),
    end: endOf(paintAt, slipAt, f),
    others: others
      .filter(({ amounts }) => pair.every((oxide) => amounts[oxide] !== undefined))
      .map(({ label, amounts }) => at(label, amounts)),
    spots: { slip: slip.spots, paint: paint.spots },
  };
}

/** The two asked for; where none were, those in which paint and slip lie furthest apart. */
function pairOf(paint: Amounts, slip: Amounts, wanted: readonly string[] | null): [string, string] {
  const apart = (oxide: string) => Math.abs(shownOf(paint[oxide]!).value - shownOf(slip[oxide]!).value);
  const both = Object.keys(paint).filter((oxide) => oxide in slip);
  const [x, y, ...more] = wanted ?? both.sort((a, b) => apart(b) - apart(a)).slice(0, 2);
  if (x === undefined || y === undefined || x === y || more.length > 0)
    throw new RequirementError(
      `a mixing line shows two different oxides; ${(wanted ?? both).join(', ') || 'none'} ${wanted ? 'were asked for' : 'were measured in paint and slip'}`,
    );
  const lacking = [x, y].find((oxide) => !both.includes(oxide));
  if (lacking !== undefined)
    throw new RequirementError(
      `a mixing line shows oxides measured in both paint and slip; ${lacking || 'nothing'} is not one`,
    );
  return [x, y];
}

/** Below detection stands at a share of the limit, between nothing and the limit. */
function shownOf({ value, limit, sigma }: Amount): MixingValue {
  if (value === null) return { value: FRACTION * (limit ?? 0), low: 0, high: limit ?? 0 };
  return { value, low: Math.max(0, value - (sigma ?? 0)), high: value + (sigma ?? 0) };
}

const pointOf = (label: string, amounts: Amounts, [x, y]: readonly [string, string]): MixingPoint => ({
  ...{ label, x: shownOf(amounts[x]!), y: shownOf(amounts[y]!) },
});

/** How far beyond what is drawn off the line still leads. */
const BEYOND = 0.15;

function endOf(paint: MixingPoint, slip: MixingPoint, f: number): MixingData['end'] {
  const most = [paint.x.value / slip.x.value, paint.y.value / slip.y.value].filter((share) => share < 1);
  const last = Math.max(f, Math.min(0.95, f + BEYOND, ...most));
  const left = (p: MixingValue, s: MixingValue) => (p.value - last * s.value) / (1 - last);
  return { f: last, x: left(paint.x, slip.x), y: left(paint.y, slip.y) };
}
