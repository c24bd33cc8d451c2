import { atomicWeight } from '../chemistry/atomic-weights.ts';
import { RequirementError } from '../requirement.ts';
import { type Condition, type Corner, feasibleCorners } from './feasible-ranges.ts';
import { type Fire, fireAt } from './fire.ts';
import { type GasState, ROOM } from './gas.ts';
import { dryMass } from './line.ts';
import { expectedPhases, ROAST_PHASES } from './roast-phases.ts';
import {
  type RoastRanges,
  rangesOverCorners,
  roastInert,
  roastMass,
  spanOf,
  sulfurOf,
} from './roast-ranges.ts';
import {
  balanceConditions,
  cornerContent,
  massOutRow,
  type RoastSystem,
  roastSystem,
} from './roast-system.ts';
import type { BatchLine, Content, Span } from './types.ts';

/** One roast (or frit: a roast with silica in the charge). Masses in grams. */
export interface RoastRecord {
  readonly charge: readonly BatchLine[];
  readonly massOut: number;
  /** Largest error of `massOut`, ± grams. */
  readonly weighing: number;
  readonly celsius: number;
  readonly hours: number;
  /** Total sulfur read in the roasted charge, wt%, with one standard deviation. */
  readonly sulfur?: { readonly percent: number; readonly sigma: number };
}

export interface RoastResult extends RoastRanges {
  readonly record: RoastRecord;
  readonly massIn: number;
  /** Change of mass, wt% of the dry mass in; positive is a gain. */
  readonly change: number;
  /** Grams that are not lead or sulfur, as they come out. */
  readonly inert: Span;
  /** With only the phases seen at this temperature in ground galena, and galena as a core; null if impossible. */
  readonly expected: RoastRanges | null;
  readonly expectedPhases: readonly string[];
  /** What one gram holds with the least and with the most sulfur. */
  readonly contents: { readonly low: Content; readonly high: Content };
}

/**
 * What a roast made, by mass balance: the range of each lead phase, of sulfur kept and of SO2 given off, over every
 * mixture of galena, sulfate, basic sulfates and oxide that has the lead that went in and the mass that came out.
 * One weighing leaves a range; a sulfur reading (taken at ± 2σ) narrows it. Lead is taken as not evaporating; in a
 * frit, oxide dissolved in glass counts as oxide. SO2 litres at `state`. Throws on masses that no mixture explains,
 * such as a gain above full sulfate (1.2675 of the galena), and on a sulfur reading that contradicts the weighing.
 * @example
 * const galena = [{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 100 }]
 * analyseRoast({ charge: galena, massOut: 93.2867, weighing: 0.001, celsius: 1000, hours: 4 }).leadOxide.low // 99.9989
 * analyseRoast({ charge: galena, massOut: 140, weighing: 0.1, celsius: 800, hours: 4 }) // throws full sulfate
 */
export function analyseRoast(record: RoastRecord, state = ROOM): RoastResult {
  checkRecord(record);
  const fire = fireAt({ celsius: record.celsius });
  const system = roastSystem(record.charge, fire);
  if (!(system.base.lead > 0)) throw new RequirementError('a roast needs lead in its charge; found none');
  const corners = solveRoast(system, record);
  const massIn = record.charge.reduce((sum, line) => sum + dryMass(line), 0);
  const bySulfur = exactCorners(system, record, corners).sort(
    (a, b) => sulfurOf(system, a) - sulfurOf(system, b),
  );
  return {
    ...rangesOverCorners(system, { corners, massOut: record.massOut, state }),
    record,
    massIn,
    change: (100 * (record.massOut - massIn)) / massIn,
    inert: spanOf(corners.map((c) => roastInert(system, c))),
    expected: expectedRanges(record, { fire, state }),
    expectedPhases: expectedPhases(record.celsius),
    contents: { low: cornerContent(system, bySulfur[0]!), high: cornerContent(system, bySulfur.at(-1)!) },
  };
}

function checkRecord({ charge, massOut, weighing, hours, sulfur }: RoastRecord): void {
  const bad = charge.find((line) => !(line.amount >= 0));
  if (bad)
    throw new RequirementError(`a roast needs masses of zero or more; ${bad.material.name} is ${bad.amount}`);
  if (charge.length === 0) throw new RequirementError('a roast needs a charge; found no line');
  if (!(massOut > 0)) throw new RequirementError(`a roast needs a mass out above zero; found ${massOut}`);
  if (!(weighing >= 0 && hours >= 0))
    throw new RequirementError(
      `a roast needs a weighing error and hours of zero or more; found ${weighing} and ${hours}`,
    );
  if (sulfur && !(sulfur.percent >= 0 && sulfur.percent <= 100 && sulfur.sigma >= 0))
    throw new RequirementError(
      `a sulfur reading needs 0 to 100 wt%; found ${sulfur.percent} ± ${sulfur.sigma}`,
    );
}

function solveRoast(system: RoastSystem, record: RoastRecord): Corner[] {
  const unknowns = system.phases.length + system.moves.length;
  const always = balanceConditions(system);
  refuseImpossible(system, record, feasibleCorners(unknowns, always));
  const weighed = feasibleCorners(unknowns, [...always, massCondition(system, record)]);
  if (!record.sulfur) return weighed;
  const both = feasibleCorners(unknowns, [
    ...always,
    massCondition(system, record),
    sulfurCondition(system, record),
  ]);
  if (both.length === 0) {
    const { low, high } = spanOf(
      weighed.map((c) => (100 * sulfurOf(system, c) * atomicWeight('S')) / record.massOut),
    );
    throw new RequirementError(
      `a sulfur reading needs to agree with the weighing, which allows ${show(low)} to ${show(high)} wt%; found ${record.sulfur.percent} ± ${record.sulfur.sigma}`,
    );
  }
  return both;
}

/** Corners at the mass as weighed, so that a material made of them has the lead of the middle weighing. */
function exactCorners(system: RoastSystem, record: RoastRecord, corners: readonly Corner[]): Corner[] {
  const exact = { ...record, weighing: 0 };
  const conditions = [...balanceConditions(system), massCondition(system, exact)];
  if (record.sulfur) conditions.push(sulfurCondition(system, exact));
  const found = feasibleCorners(system.phases.length + system.moves.length, conditions);
  return found.length > 0 ? found : [...corners];
}

function refuseImpossible(
  system: RoastSystem,
  { massOut, weighing }: RoastRecord,
  corners: readonly Corner[],
): void {
  const { low, high } = spanOf(corners.map((c) => roastMass(system, c)));
  if (massOut - weighing > high * (1 + 1e-9))
    throw new RequirementError(
      `a roast needs a mass out of at most ${show(high)} g, full sulfate (1.2675 g for each gram of galena); ${massOut} g was weighed: a charge cannot gain more than that`,
    );
  if (massOut + weighing < low * (1 - 1e-9))
    throw new RequirementError(
      `a roast needs a mass out of at least ${show(low)} g, full oxide (0.9329 g for each gram of galena); ${massOut} g was weighed: some was spilled or evaporated, or the charge held less than stated`,
    );
}

const show = (x: number) => String(Number(x.toPrecision(4)));

function massCondition(system: RoastSystem, { massOut, weighing }: RoastRecord): Condition {
  const { row, constant } = massOutRow(system);
  return { row, low: massOut - weighing - constant, high: massOut + weighing - constant };
}

function sulfurCondition(system: RoastSystem, { massOut, sulfur }: RoastRecord): Condition {
  const perMole = (100 * atomicWeight('S')) / massOut;
  const row = [...system.phases.map((p) => p.sulfur * perMole), ...system.moves.map(() => 0)];
  const { percent, sigma } = sulfur!;
  return { row, low: Math.max(0, percent - 2 * sigma), high: percent + 2 * sigma };
}

function expectedRanges(
  record: RoastRecord,
  { fire, state }: { fire: Fire; state: GasState },
): RoastRanges | null {
  const allowed = expectedPhases(record.celsius);
  const system = roastSystem(
    record.charge,
    fire,
    ROAST_PHASES.filter((p) => allowed.includes(p.formula)),
  );
  const conditions = [...balanceConditions(system), massCondition(system, record)];
  if (record.sulfur) conditions.push(sulfurCondition(system, record));
  const corners = feasibleCorners(system.phases.length + system.moves.length, conditions);
  return corners.length === 0 ? null : rangesOverCorners(system, { corners, massOut: record.massOut, state });
}
