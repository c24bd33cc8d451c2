/** Shortest of several runs of a piece of work, in ms: what it takes when nothing else is in the way. */
export async function bestTime(runs: number, work: () => unknown): Promise<number> {
  let best = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    await work();
    best = Math.min(best, performance.now() - start);
  }
  return best;
}

/** `12.3 ms`. */
export const ms = (time: number): string => `${time.toFixed(time < 100 ? 1 : 0)} ms`;

/** One line of a benchmark. */
export const report = (what: string, answer: string): void => console.log(`  ${what.padEnd(58)} ${answer}`);
