import type { CurvePoint } from './types.ts';

/**
 * Temperature of a curve at a time, on a straight line between its points; null outside it.
 *
 * @example
 * celsiusAt([{ seconds: 0, celsius: 20 }, { seconds: 100, celsius: 120 }], 50) // 70
 * celsiusAt([{ seconds: 0, celsius: 20 }], 50) // null
 */
export function celsiusAt(curve: readonly CurvePoint[], seconds: number): number | null {
  const after = curve.findIndex((p) => p.seconds >= seconds);
  if (after < 0 || seconds < curve[0]!.seconds) return null;
  const b = curve[after]!;
  if (b.seconds === seconds) return b.celsius;
  const a = curve[after - 1]!;
  return a.celsius + ((b.celsius - a.celsius) * (seconds - a.seconds)) / (b.seconds - a.seconds);
}

/**
 * When a curve first reaches a temperature on the way up to its peak, or first falls to it after the peak; null where
 * it does not, or begins beyond it.
 *
 * @example
 * const curve = [{ seconds: 0, celsius: 20 }, { seconds: 100, celsius: 820 }, { seconds: 300, celsius: 420 }]
 * crossingTime(curve, 420, 'heating') // 50
 * crossingTime(curve, 620, 'cooling') // 200
 * crossingTime(curve, 900, 'heating') // null
 */
export function crossingTime(
  curve: readonly CurvePoint[],
  celsius: number,
  direction: 'heating' | 'cooling',
): number | null {
  const top = curve.reduce((best, p, i) => (p.celsius > curve[best]!.celsius ? i : best), 0);
  const part = direction === 'heating' ? curve.slice(0, top + 1) : curve.slice(top);
  const sign = direction === 'heating' ? 1 : -1;
  const past = (p: CurvePoint) => sign * (p.celsius - celsius) >= 0;
  if (part.length === 0 || past(part[0]!)) return null;
  const at = part.findIndex(past);
  if (at < 0) return null;
  const [a, b] = [part[at - 1]!, part[at]!];
  return a.seconds + ((b.seconds - a.seconds) * (celsius - a.celsius)) / (b.celsius - a.celsius);
}
