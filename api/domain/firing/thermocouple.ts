import { RequirementError } from '../requirement.ts';
import type { Bounded, Sensor } from './types.ts';

/** IEC 60584-1:2013, types K and N: the greater of °C and share of |t|, and the range the class holds for. */
const CLASSES = {
  1: { celsius: 1.5, share: 0.004, from: -40, to: 1000 },
  2: { celsius: 2.5, share: 0.0075, from: -40, to: 1200 },
} as const;

/**
 * Largest error, ± °C, of a thermocouple at a temperature: its class by IEC 60584-1 (type K or N), or what was stated;
 * 0 where nothing is known of it (`toleranceInWords` says so). Beyond the range of its class the rule is continued.
 * Throws when a stated error is negative or no number.
 *
 * @example
 * thermocoupleTolerance(850, { kind: 'class', type: 'K', class: 2 }) // 6.375
 * thermocoupleTolerance(300, { kind: 'class', type: 'K', class: 2 }) // 2.5
 * thermocoupleTolerance(850, { kind: 'stated', celsius: -1 }) // throws a stated error needs 0 °C or more; found -1
 */
export function thermocoupleTolerance(celsius: number, sensor: Sensor): number {
  if (sensor.kind === 'unknown') return 0;
  if (sensor.kind === 'stated') {
    if (!(sensor.celsius >= 0 && Number.isFinite(sensor.celsius)))
      throw new RequirementError(`a stated error needs 0 °C or more; found ${sensor.celsius}`);
    return sensor.celsius;
  }
  const { celsius: least, share } = CLASSES[sensor.class];
  return Math.max(least, share * Math.abs(celsius));
}

/**
 * What the tolerance of a sensor rests on, and where it does not hold, up to the hottest reading.
 *
 * @example
 * toleranceInWords({ kind: 'class', type: 'K', class: 2 }, 850) // 'type K, class 2 (IEC 60584-1): ± 2.5 °C or 0.75 % of the reading, whichever is greater'
 * toleranceInWords({ kind: 'unknown' }, 850) // 'nothing known of the sensor’s error: bounds hold for the last digit only'
 */
export function toleranceInWords(sensor: Sensor, hottest: number): string {
  if (sensor.kind === 'unknown')
    return 'nothing known of the sensor’s error: bounds hold for the last digit only';
  if (sensor.kind === 'stated') return `stated error ± ${sensor.celsius} °C`;
  const { celsius, share, to } = CLASSES[sensor.class];
  const rule = `type ${sensor.type}, class ${sensor.class} (IEC 60584-1): ± ${celsius} °C or ${100 * share} % of the reading, whichever is greater`;
  return hottest > to ? `${rule}; the class ends at ${to} °C, beyond that the rule is only continued` : rule;
}

/**
 * A reading with the bounds of its sensor's tolerance and half a step of its last digit, °C.
 *
 * @example
 * boundsOf(850, { sensor: { kind: 'class', type: 'K', class: 2 }, resolution: 1 }) // { value: 850, low: 843.125, high: 856.875 }
 */
export function boundsOf(
  celsius: number,
  { sensor, resolution }: { sensor: Sensor; resolution: number },
): Bounded {
  const off = thermocoupleTolerance(celsius, sensor) + resolution / 2;
  return { value: celsius, low: celsius - off, high: celsius + off };
}
