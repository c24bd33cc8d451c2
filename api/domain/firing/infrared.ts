import { RequirementError } from '../requirement.ts';

/** Second radiation constant hc/k, µm·K (SI 2019, exact to the digits given). */
const C2 = 14_387.768775;
const ZERO_CELSIUS = 273.15;

/** An infrared thermometer on a surface. */
export interface InfraredView {
  /** Of the surface. */
  readonly emissivity: number;
  /** What the instrument was set to. */
  readonly set: number;
  /** Wavelength it works at, µm. */
  readonly micrometres: number;
}

/**
 * True temperature, °C, of a surface whose emissivity is not what an infrared thermometer was set to, by Planck's law
 * at its wavelength: set·L(shown) = emissivity·L(true). What the surface reflects of flames and walls is not in it.
 * Throws unless both emissivities are above 0 and at most 1, the wavelength is 0.5–20 µm and the reading is above
 * absolute zero.
 *
 * @example
 * trueTemperature(767, { emissivity: 0.85, set: 0.95, micrometres: 3.9 }) // 799.618
 * trueTemperature(767, { emissivity: 0, set: 0.95, micrometres: 3.9 }) // throws an emissivity needs more than 0 and at most 1; found 0
 */
export function trueTemperature(shown: number, { emissivity, set, micrometres }: InfraredView): number {
  return atRadiance(shown, set / emissivity, checked({ emissivity, set, micrometres }));
}

/**
 * What an infrared thermometer shows, °C, on a surface of a true temperature: the reverse of `trueTemperature`.
 *
 * @example
 * shownTemperature(800, { emissivity: 0.85, set: 0.95, micrometres: 1 }) // 791.177
 * shownTemperature(800, { emissivity: 0.85, set: 0.95, micrometres: 10 }) // 737.227
 */
export function shownTemperature(actual: number, { emissivity, set, micrometres }: InfraredView): number {
  return atRadiance(actual, emissivity / set, checked({ emissivity, set, micrometres }));
}

/** The temperature whose radiance is `times` that of another, at one wavelength. */
function atRadiance(celsius: number, times: number, { micrometres }: InfraredView): number {
  const kelvin = celsius + ZERO_CELSIUS;
  if (!(kelvin > 0 && Number.isFinite(kelvin)))
    throw new RequirementError(`a temperature needs more than −273.15 °C; found ${celsius}`);
  const scale = C2 / micrometres;
  return scale / Math.log1p(Math.expm1(scale / kelvin) / times) - ZERO_CELSIUS;
}

function checked(view: InfraredView): InfraredView {
  for (const e of [view.emissivity, view.set])
    if (!(e > 0 && e <= 1))
      throw new RequirementError(`an emissivity needs more than 0 and at most 1; found ${e}`);
  if (!(view.micrometres >= 0.5 && view.micrometres <= 20))
    throw new RequirementError(`a wavelength needs 0.5 to 20 µm; found ${view.micrometres}`);
  return view;
}
