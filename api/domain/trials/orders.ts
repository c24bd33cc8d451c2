/**
 * The number of distinct orders of some values, n!/∏ repeats!.
 *
 * @example
 * orderCount([1, 1, 0, 0]) // 6
 */
export function orderCount(values: readonly number[]): number {
  const seen = new Map<number, number>();
  const count = values.reduce((product, v, i) => {
    const n = (seen.get(v) ?? 0) + 1;
    seen.set(v, n);
    return (product * (i + 1)) / n;
  }, 1);
  return Math.round(count);
}

/**
 * Every distinct order of some values, smallest first.
 *
 * @example
 * distinctOrders([1, 0, 1]) // [[0, 1, 1], [1, 0, 1], [1, 1, 0]]
 */
export function distinctOrders(values: readonly number[]): number[][] {
  const at = values.toSorted((a, b) => a - b);
  const orders = [[...at]];
  while (advance(at)) orders.push([...at]);
  return orders;
}

/** Turns an order into the next in lexicographic order, in place; false after the last. */
function advance(order: number[]): boolean {
  let turn = order.length - 2;
  while (turn >= 0 && order[turn]! >= order[turn + 1]!) turn--;
  if (turn < 0) return false;
  let next = order.length - 1;
  while (order[next]! <= order[turn]!) next--;
  [order[turn], order[next]] = [order[next]!, order[turn]!];
  const rest = order.splice(turn + 1).reverse();
  order.push(...rest);
  return true;
}

/**
 * The values in a random order (Fisher and Yates), by a source of uniform numbers on [0, 1).
 *
 * @example
 * shuffled([1, 2, 3], () => 0) // [2, 3, 1]
 */
export function shuffled<T>(values: readonly T[], uniform: () => number): T[] {
  const out = [...values];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(uniform() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}
