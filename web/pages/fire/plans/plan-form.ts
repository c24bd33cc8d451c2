import type { NewPlan } from '../../../../api/contract/plan.ts';
import type { Level, PlanKind, UnitOfChange } from '../../../../api/domain/trials/types.ts';
import { readNumber } from '../../../parts/numbers.ts';

export interface FactorForm {
  readonly name: string;
  readonly unit: string;
  readonly at: UnitOfChange;
  readonly levels: string;
}
export interface PlanForm {
  readonly name: string;
  readonly kind: PlanKind;
  readonly factors: readonly FactorForm[];
  readonly tiles: number;
  readonly rows: number;
  readonly columns: number;
  readonly firings: number;
  readonly replicates: number;
}
export const BLANK_FACTOR: FactorForm = { name: '', unit: '', at: 'tile', levels: '' };
export const LADDER: PlanForm = {
  ...{ name: 'Thickness ladder', kind: 'ladder' },
  factors: [{ name: 'coats', unit: 'coats', at: 'zone', levels: '1, 2, 3, 4, 5, 6' }],
  ...{ tiles: 1, rows: 2, columns: 3, firings: 1, replicates: 1 },
};

/** Levels as typed, parted by commas or semicolons: numbers where all of them are, else words. */
export function readLevels(text: string): Level[] {
  const words = text
    .split(/[;,]/)
    .map((word) => word.trim())
    .filter((word) => word !== '');
  const numbers = words.map(readNumber);
  return numbers.every((number) => number !== null) ? (numbers as number[]) : words;
}

export function readPlan({ name, factors, ...form }: PlanForm, seed: number): NewPlan {
  return {
    ...{ name, note: '' },
    request: {
      ...{ ...form, seed },
      factors: factors.map(({ unit, levels, ...factor }) => ({
        ...factor,
        unit: unit.trim() || null,
        levels: readLevels(levels),
      })),
    },
  };
}
