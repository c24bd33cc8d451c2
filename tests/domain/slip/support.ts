import type { Amount, Amounts } from '../../../api/domain/composition/types.ts';
import type { Analysed } from '../../../api/domain/slip/types.ts';

/** An amount with a stated σ (wt%). */
export const amount = (
  value: number | null,
  sigma: number | null = null,
  limit: number | null = null,
): Amount => ({
  value,
  sigma,
  limit,
  sigmaBasis: sigma === null ? null : 'stated',
  resolution: null,
});

/** Amounts from plain numbers, σ by oxide or one relative σ for all. */
export function amounts(
  values: Readonly<Record<string, number>>,
  sigma: number | Readonly<Record<string, number>> | null = null,
): Amounts {
  return Object.fromEntries(
    Object.entries(values).map(([oxide, value]) => [
      oxide,
      amount(value, sigma === null ? null : typeof sigma === 'number' ? sigma * value : sigma[oxide]!),
    ]),
  );
}

export const analysed = (
  values: Readonly<Record<string, number>>,
  sigma: number | Readonly<Record<string, number>> | null = null,
  label = 'Tile 1',
): Analysed => ({ label, spots: 1, amounts: amounts(values, sigma) });

export const valuesOf = (a: Amounts) =>
  Object.fromEntries(Object.entries(a).map(([oxide, { value }]) => [oxide, value]));
