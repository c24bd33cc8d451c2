import { molarMass } from '../chemistry/formula.ts';
import { RequirementError } from '../requirement.ts';

/** Molar gas constant, J/(mol·K), exact in the SI since 2019. */
const R = 8.314462618;

/** The state at which a gas volume is given. */
export interface GasState {
  readonly celsius: number;
  readonly kilopascal: number;
}
export const ROOM: GasState = { celsius: 25, kilopascal: 101.325 };

/**
 * Litres that a mass (grams) of gas takes up as an ideal gas, at 25 °C and 101.325 kPa unless stated. Throws on a
 * negative mass and on a state that no gas has.
 * @example
 * gasLitres('SO2', 64.058) // 24.4654
 * gasLitres('SO2', -1) // throws zero or more
 */
export function gasLitres(formula: string, grams: number, state = ROOM): number {
  const kelvin = state.celsius + 273.15;
  if (!(grams >= 0)) throw new RequirementError(`a gas volume needs grams of zero or more; found ${grams}`);
  if (!(kelvin > 0 && state.kilopascal > 0))
    throw new RequirementError(
      'a gas volume needs a temperature above absolute zero and a pressure above zero',
    );
  return ((grams / molarMass(formula)) * R * kelvin) / state.kilopascal;
}

/**
 * Cubic metres of air that a mass (grams) of gas fills to a limit given in parts per million by volume: how far a
 * release must be thinned before the air is back at that limit.
 * @example
 * airForLimit('SO2', 26.77, 2) // 5112.05
 */
export function airForLimit(formula: string, grams: number, ppm: number): number {
  if (!(ppm > 0)) throw new RequirementError(`a limit needs parts per million above zero; found ${ppm}`);
  return gasLitres(formula, grams) / 1000 / (ppm * 1e-6);
}
