import { molarMass } from '../chemistry/formula.ts';
import { sulfurOutlook } from './sulfur.ts';

/** A lead compound that a roasted galena charge can hold. */
export interface RoastPhase {
  readonly formula: string;
  readonly name: string;
  readonly lead: number;
  readonly sulfur: number;
  readonly mass: number;
}

const phase = (formula: string, name: string, [lead, sulfur]: readonly [number, number]): RoastPhase => ({
  formula,
  name,
  lead,
  sulfur,
  mass: molarMass(formula),
});

/** Sulfide, sulfate, basic sulfates and oxide, in the order in which a roast passes through them. */
export const ROAST_PHASES: readonly RoastPhase[] = [
  phase('PbS', 'galena', [1, 1]),
  phase('PbSO4', 'sulfate (anglesite)', [1, 1]),
  phase('PbO·PbSO4', 'basic sulfate (lanarkite)', [2, 1]),
  phase('2PbO·PbSO4', 'dibasic sulfate', [3, 1]),
  phase('4PbO·PbSO4', 'tetrabasic sulfate', [5, 1]),
  phase('PbO', 'oxide (litharge)', [1, 0]),
];

/**
 * The phases that a temperature (°C) leads one to expect in a roasted charge: those seen when ground galena was
 * heated in air (doi 10.1007/s10973-005-6785-6), and galena itself as a core that air did not reach.
 * @example
 * expectedPhases(800) // ['PbS', 'PbO·PbSO4', '2PbO·PbSO4', '4PbO·PbSO4']
 */
export function expectedPhases(celsius: number): string[] {
  return [...new Set(['PbS', ...sulfurOutlook(celsius).phases])];
}
