const STEPS = [[1, 2, 5], [1, 3], [1]] as const;

/** Round numbers on a logarithmic axis, as dense as `most` allows: 1, 2, 5; else 1, 3; else powers of ten. */
export function logTicks([low, high]: readonly [number, number], most: number): number[] {
  const [first, last] = [Math.floor(Math.log10(low)), Math.ceil(Math.log10(high))];
  const powers = Array.from({ length: last - first + 1 }, (_, i) => first + i);
  let ticks: number[] = [];
  for (const steps of STEPS) {
    ticks = powers
      .flatMap((power) => steps.map((step) => Number(`${step}e${power}`)))
      .filter((tick) => tick >= low && tick <= high);
    if (ticks.length <= most) return ticks;
  }
  const every = Math.ceil(ticks.length / Math.max(1, most));
  return ticks.filter((_, i) => i % every === 0);
}
