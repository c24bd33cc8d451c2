import { closure } from '../composition/closure.ts';
import { multiplicativeReplacement } from '../composition/replacement.ts';
import type { Amount, Sample } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import type { ModelSettings, Replaced } from './types.ts';

type Replacement = ModelSettings['replacement'];

/** A sample on a model's parts: closed wt%, and what was put in for values below detection. */
export interface Composed {
  readonly parts: number[];
  readonly replaced: Replaced[];
}

/**
 * Whether an amount stands for "less than the limit": below detection, or reported as zero.
 *
 * @example
 * isBelow({ value: null, limit: 0.02, sigma: null, sigmaBasis: null, resolution: null }) // true
 */
export function isBelow(amount: Amount): boolean {
  return amount.value === null || amount.value === 0;
}

/**
 * Detection limit that holds for one amount in wt%: the one set by hand for its oxide, else its own; null without
 * either.
 *
 * @example
 * limitFor('SnO2', { value: null, limit: 0.02, sigma: null, sigmaBasis: null, resolution: null }, {}) // 0.02
 */
export function limitFor(
  oxide: string,
  amount: Amount,
  byHand: Readonly<Record<string, number>>,
): number | null {
  return byHand[oxide] ?? amount.limit;
}

/**
 * A sample's composition on given oxides: values below detection replaced by `fraction` of their own limit (the
 * rest giving way in proportion), then closed to 100 wt%. Throws when an oxide is missing, negative, or below
 * detection without any limit, naming oxide and sample.
 *
 * @example
 * const amount = (value, limit) => ({ value, limit, sigma: null, sigmaBasis: null, resolution: null });
 * const sample = { id: 't', label: 'Tile 1', amounts: { PbO: amount(60, null), SnO2: amount(null, 0.1), SiO2: amount(40, null) } };
 * compose(sample, ['PbO', 'SnO2'], { fraction: 0.65, limits: {} }).parts // [99.891667, 0.1083333]
 * compose(sample, ['PbO', 'CuO'], { fraction: 0.65, limits: {} }) // throws CuO was not measured in Tile 1
 */
export function compose(sample: Sample, oxides: readonly string[], replacement: Replacement): Composed {
  const amounts = oxides.map((oxide) => amountOf(sample, oxide));
  const limits = oxides.map((oxide, j) => needLimit(sample, oxide, amounts[j]!, replacement.limits));
  const filled = multiplicativeReplacement(
    amounts.map((a) => a.value),
    limits,
    { fraction: replacement.fraction },
  );
  const parts = closure(filled);
  const replaced = oxides.flatMap((oxide, j) =>
    isBelow(amounts[j]!) ? [{ sample: sample.id, oxide, limit: limits[j]!, by: parts[j]! }] : [],
  );
  return { parts, replaced };
}

function amountOf(sample: Sample, oxide: string): Amount {
  const amount = sample.amounts[oxide];
  if (!amount)
    throw new RequirementError(
      `a comparison needs every oxide measured; ${oxide} was not measured in ${sample.label}`,
    );
  if (amount.value !== null && !(amount.value >= 0 && amount.value < Number.POSITIVE_INFINITY))
    throw new RequirementError(
      `a comparison needs amounts of zero or more; ${oxide} is ${amount.value} in ${sample.label}`,
    );
  return amount;
}

function needLimit(
  sample: Sample,
  oxide: string,
  amount: Amount,
  byHand: Replacement['limits'],
): number | null {
  const limit = limitFor(oxide, amount, byHand);
  if (isBelow(amount) && !(limit !== null && limit > 0))
    throw new RequirementError(
      `a value below detection needs a limit; ${oxide} has none in ${sample.label}: give one for ${oxide}`,
    );
  return limit;
}
