import { expect } from 'vitest';

type Nested = number | readonly Nested[];

function worst(found: Nested, wanted: Nested, floor: number, at: string): { off: number; at: string } {
  if (typeof wanted === 'number') {
    if (typeof found !== 'number') return { off: Number.POSITIVE_INFINITY, at };
    const off = Math.abs(found - wanted) / Math.max(Math.abs(wanted), floor);
    return { off: Number.isNaN(off) ? Number.POSITIVE_INFINITY : off, at: `${at}: ${found} for ${wanted}` };
  }
  if (typeof found === 'number' || found.length !== wanted.length)
    return { off: Number.POSITIVE_INFINITY, at: `${at}: another shape` };
  return wanted
    .map((w, i) => worst(found[i]!, w, floor, `${at}[${i}]`))
    .reduce((a, b) => (b.off > a.off ? b : a), { off: 0, at });
}

/**
 * Asserts that two numbers, rows or tables agree to a relative tolerance; `floor` is the size below which a
 * difference counts as absolute (numbers that are zero but for rounding).
 */
export function expectClose(found: Nested, wanted: Nested, { relative = 1e-9, floor = 1e-6 } = {}): void {
  const { off, at } = worst(found, wanted, floor, '');
  expect(off, `relative difference ${off} at ${at}`).toBeLessThanOrEqual(relative);
}
