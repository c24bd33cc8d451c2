/** How often something may be tried: so many at once, and one more every so often. */
export interface Allowance {
  readonly burst: number;
  readonly perMinute: number;
  /** Addresses remembered; beyond it the one least lately seen is forgotten. */
  readonly most?: number;
}

/** Token buckets by address, in memory: each process of a service counts for itself. */
export function createThrottle({ burst, perMinute, most = 10_000 }: Allowance, now = Date.now) {
  const buckets = new Map<string, { left: number; at: number }>();
  const filled = (address: string) => {
    const { left, at } = buckets.get(address) ?? { left: burst, at: now() };
    return Math.min(burst, left + ((now() - at) * perMinute) / 60_000);
  };
  return {
    /** Whether another try is allowed; asking costs nothing. */
    allows: (address: string): boolean => filled(address) >= 1,
    /** Counts a try. */
    spend(address: string): void {
      const left = Math.max(0, filled(address) - 1);
      buckets.delete(address);
      buckets.set(address, { left, at: now() });
      const [oldest] = buckets.keys();
      if (buckets.size > most) buckets.delete(oldest!);
    },
  };
}
export type Throttle = ReturnType<typeof createThrottle>;
