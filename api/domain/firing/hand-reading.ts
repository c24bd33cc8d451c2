import { RequirementError } from '../requirement.ts';
import { trueTemperature } from './infrared.ts';
import { boundsOf } from './thermocouple.ts';
import type { Bounded, HandReading } from './types.ts';

/**
 * A reading taken by hand as a temperature with bounds, °C. Thermocouple: its tolerance and half a step of the last
 * digit. Infrared: corrected for emissivity by Planck's law; bounds from the instrument's stated accuracy, half a step
 * and the bounds of the surface's emissivity, all at their worst together. Throws on bounds that are not in order, and
 * as `trueTemperature`.
 *
 * @example
 * readingBounds({ kind: 'thermocouple', celsius: 800, resolution: 1, sensor: { kind: 'class', type: 'K', class: 1 } }) // { value: 800, low: 796.3, high: 803.7 }
 * const surface = { value: 0.85, low: 0.8, high: 0.9 }
 * const shown = { kind: 'infrared', celsius: 767, resolution: 1, set: 0.95, emissivity: surface, micrometres: 3.9, accuracy: { celsius: 2, share: 0.01 } }
 * readingBounds(shown) // { value: 799.618, low: 774.215, high: 827.17 }
 */
export function readingBounds(reading: HandReading): Bounded {
  if (!(reading.resolution >= 0))
    throw new RequirementError(`a reading needs a step of 0 or more; found ${reading.resolution}`);
  if (reading.kind === 'thermocouple') return boundsOf(reading.celsius, reading);
  const { celsius, resolution, set, emissivity, micrometres, accuracy } = reading;
  if (!(emissivity.low <= emissivity.value && emissivity.value <= emissivity.high))
    throw new RequirementError(
      `an emissivity needs bounds around it; found ${emissivity.low}, ${emissivity.value}, ${emissivity.high}`,
    );
  const off = Math.max(accuracy.celsius, accuracy.share * Math.abs(celsius)) + resolution / 2;
  const at = (shown: number, e: number) => trueTemperature(shown, { emissivity: e, set, micrometres });
  return {
    value: at(celsius, emissivity.value),
    low: at(celsius - off, emissivity.high),
    high: at(celsius + off, emissivity.low),
  };
}
