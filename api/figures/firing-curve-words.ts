import { openInWords } from '../domain/firing/stages.ts';
import type { FiringCurveData } from './firing-curve-data.ts';
import { numeral } from './text.ts';

const degrees = (celsius: number) => numeral(celsius, 0);
const minute = (seconds: number) => numeral(seconds / 60, 0);

/** What a firing's curve shows, for those who cannot see it. */
export function describeFiring({ curves, readings, stages, open, gaps = [] }: FiringCurveData): string {
  const logged = curves.map(({ name, points, peak }) => {
    const top = peak ?? null;
    if (top)
      return `${name}: peak ${degrees(top.value)} °C (${degrees(top.low)} to ${degrees(top.high)}) at minute ${minute(top.seconds)}.`;
    const hottest = points.reduce((best, one) => (one.celsius > best.celsius ? one : best), points[0]!);
    return points.length === 0
      ? `${name}: nothing.`
      : `${name}: up to ${degrees(hottest.celsius)} °C at minute ${minute(hottest.seconds)}.`;
  });
  const air = stages.map((s) => `${s.air} to minute ${minute(s.to)}`).join(', ');
  const lost = gaps.map(({ from, to }) => `minute ${minute(from)} to ${minute(to)}`).join(', ');
  return [
    ...logged,
    ...(readings.length > 0 || curves.length === 0 ? [byHand(readings)] : []),
    ...(air ? [`Air: ${air}.`] : []),
    ...(open ? [`Not drawn: ${openInWords(open)}.`] : []),
    ...(lost ? [`No readings from ${lost}.`] : []),
  ].join(' ');
}

function byHand(readings: FiringCurveData['readings']): string {
  const hottest = readings.reduce<(typeof readings)[number] | null>(
    (best, one) => (best === null || one.bounds.value > best.bounds.value ? one : best),
    null,
  );
  if (hottest === null) return 'No reading by hand.';
  const { value, low, high } = hottest.bounds;
  return `Hottest reading by hand ${degrees(value)} °C (${degrees(low)} to ${degrees(high)}) at minute ${minute(hottest.seconds)}.`;
}
