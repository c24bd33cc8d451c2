import { atomicWeight } from '../chemistry/atomic-weights.ts';
import { molarMass } from '../chemistry/formula.ts';
import type { Corner } from './feasible-ranges.ts';
import { type GasState, gasLitres } from './gas.ts';
import { massOutRow, type RoastSystem } from './roast-system.ts';
import type { Span } from './types.ts';

export interface PhaseRange {
  readonly formula: string;
  readonly name: string;
  readonly grams: Span;
  /** wt% of the mass out. */
  readonly percent: Span;
}

/** What the weighing (and the sulfur reading, if any) leaves open. */
export interface RoastRanges {
  readonly phases: readonly PhaseRange[];
  /** wt% of the mass out; known from the weighing alone as long as no lead leaves. */
  readonly leadOxide: Span;
  readonly sulfur: { readonly grams: Span; readonly percent: Span; readonly perLead: Span };
  readonly dioxide: { readonly grams: Span; readonly litres: Span; readonly state: GasState };
}

const along = (corner: Corner, row: readonly number[]) => row.reduce((sum, a, j) => sum + a * corner[j]!, 0);
const leadOf = (s: RoastSystem, c: Corner) => s.phases.reduce((sum, p, i) => sum + p.lead * c[i]!, 0);

/**
 * Grams that come out at a corner of a roast's mass balance.
 * @example
 * roastMass(roastSystem([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 239.26 }], fireAt({ celsius: 800 })), [1, 0, 0, 0, 0, 0]) // 239.26
 */
export function roastMass(system: RoastSystem, corner: Corner): number {
  const { row, constant } = massOutRow(system);
  return along(corner, row) + constant;
}

/**
 * Grams at a corner that are neither lead nor sulfur compounds.
 * @example
 * roastInert(roastSystem([{ material: materialFromFormula({ id: 'q', name: 'quartz' }, 'SiO2'), amount: 5 }], fireAt({ celsius: 800 })), [0, 0, 0, 0, 0, 0]) // 5
 */
export function roastInert(s: RoastSystem, corner: Corner): number {
  return s.moves.reduce((sum, move, k) => sum + move.inert * corner[s.phases.length + k]!, s.base.inert);
}

/** Sulfur that came in, at the same point of every range. */
function broughtOf(s: RoastSystem, corner: Corner): number {
  return s.moves.reduce((sum, move, k) => sum + move.sulfur * corner[s.phases.length + k]!, s.base.sulfur);
}

/**
 * Ranges of phases, sulfur and SO2 over the corners of a roast's mass balance; `massOut` in grams.
 * @example
 * rangesOverCorners(roastSystem([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 239.26 }], fireAt({ celsius: 800 })), { corners: [[0, 0, 0, 0, 0, 1]], massOut: 223.199, state: ROOM }).dioxide.grams.high // 64.058
 */
export function rangesOverCorners(
  system: RoastSystem,
  { corners, massOut, state }: { corners: readonly Corner[]; massOut: number; state: GasState },
): RoastRanges {
  const share = (grams: Span) => ({
    low: (100 * grams.low) / massOut,
    high: (100 * grams.high) / massOut,
  });
  const over = (quantity: (c: Corner) => number) => spanOf(corners.map(quantity));
  const phases = system.phases.map(({ formula, name, mass }, i) => {
    const grams = over((c) => c[i]! * mass);
    return { formula, name, grams, percent: share(grams) };
  });
  const sulfur = over((c) => sulfurOf(system, c) * atomicWeight('S'));
  const gone = over((c) => Math.max(0, broughtOf(system, c) - sulfurOf(system, c)) * molarMass('SO2'));
  return {
    phases,
    leadOxide: share(over((c) => leadOf(system, c) * molarMass('PbO'))),
    sulfur: {
      grams: sulfur,
      percent: share(sulfur),
      perLead: over((c) => sulfurOf(system, c) / leadOf(system, c)),
    },
    dioxide: {
      grams: gone,
      litres: { low: gasLitres('SO2', gone.low, state), high: gasLitres('SO2', gone.high, state) },
      state,
    },
  };
}

/**
 * Least and greatest of some values.
 * @example
 * spanOf([3, 1, 2]) // { low: 1, high: 3 }
 */
export function spanOf(values: readonly number[]): Span {
  return { low: Math.min(...values), high: Math.max(...values) };
}

/**
 * Moles of sulfur kept at a corner of a roast's mass balance.
 * @example
 * sulfurOf(roastSystem([{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 239.26 }], fireAt({ celsius: 800 })), [1, 0, 0, 0, 0, 0]) // 1
 */
export function sulfurOf(system: RoastSystem, corner: Corner): number {
  return system.phases.reduce((sum, phase, i) => sum + phase.sulfur * corner[i]!, 0);
}
