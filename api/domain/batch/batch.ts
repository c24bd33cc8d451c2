import { RequirementError } from '../requirement.ts';
import { type Fire, fireContent } from './fire.ts';
import { firedLoss } from './fired-loss.ts';
import { type FiredOxide, firedOxides } from './fired-oxides.ts';
import { dryMass } from './line.ts';
import { type SulfurAccount, sulfurAccount } from './sulfur-account.ts';
import { type BatchLine, GASES, type Gas, type Hazard, type Span } from './types.ts';

/** One line's mass balance, grams: dry = fired + gases + unreported, where O2 is negative when taken up. */
export interface FiredLine {
  readonly id: string;
  readonly name: string;
  readonly weighed: number;
  readonly water: number;
  readonly dry: number;
  readonly fired: number;
  readonly oxides: Readonly<Record<string, number>>;
  readonly gases: Readonly<Record<Gas, number>>;
  readonly unreported: number;
}

type Totals = Omit<FiredLine, 'id' | 'name'>;

export interface FiredBatch {
  readonly lines: readonly FiredLine[];
  readonly totals: Totals;
  readonly oxides: readonly FiredOxide[];
  /** wt% of the dry batch lost; negative is a gain. The range holds what is not known of sulfur, purity and analyses. */
  readonly loss: Span & { readonly percent: number };
  readonly sulfur: SulfurAccount;
  readonly hazards: readonly Hazard[];
  readonly warnings: readonly string[];
}

/** One standard deviation of a weighing, grams. */
export const BALANCE = 0.01;

/**
 * What a batch becomes in a fire: each line's mass balance, oxides in grams, wt% and mole %, loss on ignition, and
 * where sulfur and carbon go. wt% is closed to 100 in `REPORTED_FORMS`; masses follow the forms of the fire.
 * `balance` is one standard deviation of a weighing (g). Throws without lines, on negative amounts, on water of
 * 100 wt% or more.
 * @example
 * fireBatch([{ material: materialFromFormula({ id: 'c', name: 'calcite' }, 'CaCO3'), amount: 100 }], fireAt({ celsius: 900 })).loss.percent // 43.9708
 * fireBatch([], fireAt({ celsius: 900 })) // throws at least one line
 */
export function fireBatch(batch: readonly BatchLine[], fire: Fire, balance = BALANCE): FiredBatch {
  checkLines(batch);
  const lines = batch.map((line) => fireLine(line, fire));
  const totals = addUp(lines);
  return {
    lines,
    totals,
    oxides: firedOxides(batch, fire, balance),
    loss: firedLoss(batch, fire),
    sulfur: sulfurAccount(batch, fire),
    hazards: [...new Set(batch.flatMap((line) => line.material.hazards))],
    warnings: batch.flatMap((line) => line.material.warnings.map((w) => `${line.material.name}: ${w}`)),
  };
}

function checkLines(batch: readonly BatchLine[]): void {
  for (const { material, amount, water = 0 } of batch) {
    if (!(amount >= 0 && Number.isFinite(amount)))
      throw new RequirementError(`a batch needs amounts of zero or more; ${material.name} is ${amount}`);
    if (!(water >= 0 && water < 100))
      throw new RequirementError(
        `a batch needs a water content from 0 to below 100 wt%; ${material.name} has ${water}`,
      );
  }
  if (!batch.some((line) => line.amount > 0))
    throw new RequirementError('a batch needs at least one line with an amount above zero; found none');
}

function fireLine(line: BatchLine, fire: Fire): FiredLine {
  const { material, amount } = line;
  const dry = dryMass(line);
  const y = fireContent(material.content, fire);
  const scale = <K extends string>(shares: Readonly<Record<K, number>>) =>
    Object.fromEntries(Object.entries<number>(shares).map(([k, g]) => [k, g * dry])) as Record<K, number>;
  const oxides = scale(y.oxides);
  const fired = Object.values(oxides).reduce((sum, g) => sum + g, 0);
  const { id, name } = material;
  const rest = { gases: scale(y.gases), unreported: y.unreported * dry };
  return { id, name, weighed: amount, water: amount - dry, dry, fired, oxides, ...rest };
}

function addUp(lines: readonly FiredLine[]): Totals {
  const oxides: Record<string, number> = {};
  const gases = Object.fromEntries(GASES.map((gas) => [gas, 0])) as Record<Gas, number>;
  const sum = (pick: (line: FiredLine) => number) => lines.reduce((total, line) => total + pick(line), 0);
  for (const line of lines) {
    for (const [oxide, g] of Object.entries(line.oxides)) oxides[oxide] = (oxides[oxide] ?? 0) + g;
    for (const gas of GASES) gases[gas] += line.gases[gas];
  }
  return {
    weighed: sum((l) => l.weighed),
    water: sum((l) => l.water),
    dry: sum((l) => l.dry),
    fired: sum((l) => l.fired),
    oxides,
    gases,
    unreported: sum((l) => l.unreported),
  };
}
