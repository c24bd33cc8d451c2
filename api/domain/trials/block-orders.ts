import { randomStream } from '../statistics/random.ts';
import { distinctOrders, shuffled } from './orders.ts';

/** Orders of rows, each a list of the row that comes to each place; the rows as they are come first. */
export interface BlockOrders {
  readonly orders: readonly (readonly number[])[];
  /** How many orders there are, listed or not. */
  readonly arrangements: number;
  readonly sampled: boolean;
}

export interface OrderOptions {
  /** More orders than this are drawn, not listed. */
  readonly most: number;
  readonly draws: number;
  readonly seed: number;
}

/**
 * Every order of rows that keeps each row in its block; or the rows as they are and seeded draws, where there are more
 * orders than `most`.
 *
 * @example
 * blockOrders(['a', 'a', 'b'], { most: 10, draws: 5, seed: 1 }) // { orders: [[0, 1, 2], [1, 0, 2]], arrangements: 2, sampled: false }
 * blockOrders(['a', 'a', 'b'], { most: 1, draws: 5, seed: 1 }).orders.length // 6
 */
export function blockOrders(
  blocks: readonly (string | number)[],
  { most, draws, seed }: OrderOptions,
): BlockOrders {
  const groups = [...new Set(blocks)].map((block) => blocks.flatMap((b, i) => (b === block ? [i] : [])));
  const arrangements = groups.reduce((product, rows) => product * factorial(rows.length), 1);
  const still = blocks.map((_, i) => i);
  const sampled = arrangements > most;
  return { orders: sampled ? drawn() : listed(), arrangements, sampled };

  function listed(): number[][] {
    return groups.reduce<number[][]>(
      (orders, rows) => {
        const own = distinctOrders(rows);
        return orders.flatMap((order) => own.map((to) => placed(order, rows, to)));
      },
      [still],
    );
  }

  function drawn(): number[][] {
    const { uniform } = randomStream(seed);
    const draw = () =>
      groups.reduce<number[]>((order, rows) => placed(order, rows, shuffled(rows, uniform)), still);
    return [still, ...Array.from({ length: draws }, draw)];
  }
}

function factorial(n: number): number {
  return n < 2 ? 1 : n * factorial(n - 1);
}

function placed(order: readonly number[], rows: readonly number[], to: readonly number[]): number[] {
  const out = [...order];
  rows.forEach((row, k) => {
    out[row] = to[k]!;
  });
  return out;
}
