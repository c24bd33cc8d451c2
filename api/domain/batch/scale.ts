import { RequirementError } from '../requirement.ts';
import { fireBatch } from './batch.ts';
import type { Fire } from './fire.ts';
import { dryMass } from './line.ts';
import type { BatchLine } from './types.ts';

/** What the wanted amount is of: as weighed (water in), dry, or fired. */
export type AmountOf = 'weighed' | 'dry' | 'fired';

export interface WantedAmount {
  readonly grams: number;
  readonly of: AmountOf;
}

/**
 * A batch scaled to a wanted amount (grams) of weighed, dry or fired paint; parts become grams by it. Shares stay as
 * they are. Throws on an amount that is not above zero.
 * @example
 * scaleBatch([{ material: materialFromFormula({ id: 'c', name: 'calcite' }, 'CaCO3'), amount: 1 }], { grams: 56.0292, of: 'fired' }, fireAt({ celsius: 900 }))[0].amount // 100
 */
export function scaleBatch(batch: readonly BatchLine[], wanted: WantedAmount, fire: Fire): BatchLine[] {
  if (!(wanted.grams > 0 && Number.isFinite(wanted.grams)))
    throw new RequirementError(`a wanted amount needs grams above zero; found ${wanted.grams}`);
  const { totals } = fireBatch(batch, fire);
  const factor = wanted.grams / totals[wanted.of];
  return batch.map((line) => ({ ...line, amount: line.amount * factor }));
}

/** A line as it is weighed out: grams to the balance's last digit, and the running total on the pan. */
export interface SheetRow {
  readonly name: string;
  readonly grams: number;
  readonly running: number;
  /** wt% of the dry batch. */
  readonly dryPercent: number;
  readonly water: number;
  readonly handling: string;
  /** Money, where a price is known. */
  readonly cost: number | null;
  /** Grams missing on the shelf; 0 when enough, null when the stock is unknown. */
  readonly short: number | null;
}

export interface BenchSheet {
  readonly rows: readonly SheetRow[];
  readonly weighed: number;
  readonly dry: number;
  /** null when a price is missing. */
  readonly cost: number | null;
}

/**
 * A batch as a bench sheet: what to weigh in turn, to `digits` decimals of a gram, with running total, cost and
 * what is short on the shelf. Running totals add the rounded weights, as the pan does.
 * @example
 * benchSheet([{ material: materialFromFormula({ id: 'q', name: 'quartz', onHand: 5 }, 'SiO2'), amount: 12.345 }], 1).rows[0].short // 7.3
 */
export function benchSheet(batch: readonly BatchLine[], digits = 2): BenchSheet {
  const step = 10 ** digits;
  const round = (grams: number) => Math.round(grams * step) / step;
  const dry = batch.reduce((sum, line) => sum + dryMass(line), 0);
  const dryWeighed = batch.reduce((sum, line) => sum + dryMass({ ...line, amount: round(line.amount) }), 0);
  let running = 0;
  const rows = batch.map((line): SheetRow => {
    const { name, handling, pricePerKg, onHand } = line.material;
    const grams = round(line.amount);
    running = round(running + grams);
    return {
      name,
      handling,
      grams,
      running,
      dryPercent: (100 * dryMass(line)) / dry,
      water: line.water ?? 0,
      cost: pricePerKg === null ? null : (pricePerKg * line.amount) / 1000,
      short: onHand === null ? null : Math.max(0, round(grams - onHand)),
    };
  });
  const costs = rows.map((row) => row.cost);
  const known = costs.filter((cost) => cost !== null);
  return {
    rows,
    weighed: running,
    dry: round(dryWeighed),
    cost: known.length === costs.length ? known.reduce((sum, cost) => sum + cost, 0) : null,
  };
}
