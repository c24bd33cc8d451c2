import { OXIDES } from '../domain/chemistry/oxides.ts';
import type { Unit } from '../domain/composition/types.ts';
import { readCell } from './cell.ts';
import type { Draft } from './columns.ts';
import type { DecimalMark } from './number.ts';
import { HOLDS_VALUES } from './roles.ts';

/** Units that no heading states. Oxides are read as wt%; elements by what their figures allow. */
export function settleUnits(drafts: Draft[], decimal: DecimalMark): void {
  const holders = drafts.filter((d) => HOLDS_VALUES.includes(d.role) || d.role === 'value');
  for (const d of holders)
    if (d.unit !== null && d.role === 'analyte') d.why += ` Unit ${d.unit}, from ${d.unitFrom}.`;
  const open = holders.filter((d) => d.unit === null);
  const oxides = holders.filter((d) => d.role === 'analyte' && OXIDES.includes(d.analyte!));
  const elements = open.filter((d) => d.role === 'analyte' && !OXIDES.includes(d.analyte!));
  const byElement = elementUnit(elements, oxides, decimal);
  for (const draft of open) {
    const isElement = elements.includes(draft);
    draft.unit = isElement ? byElement.unit : 'wt%';
    if (draft.role === 'value' && drafts.some((d) => d.role === 'unit')) draft.unit = null;
    draft.why += isElement
      ? ` ${byElement.why}`
      : draft.unit === null
        ? ''
        : ' No unit is stated; wt% is usual for it.';
    draft.sure = draft.sure && !isElement;
  }
}

function elementUnit(
  elements: readonly Draft[],
  oxides: readonly Draft[],
  decimal: DecimalMark,
): { unit: Unit; why: string } {
  const largest = Math.max(0, ...elements.flatMap((d) => d.cells.map((c) => amountIn(c, decimal))));
  if (largest > 100)
    return {
      unit: 'ppm',
      why: `No unit is stated; read as ppm, since the elements reach ${largest}, beyond 100 %.`,
    };
  if (
    oxides.length >= 3 &&
    !oxides.some((d) => d.unit !== null && d.unit !== 'wt%') &&
    typicalSum(oxides, decimal) > 80
  )
    return {
      unit: 'ppm',
      why: 'No unit is stated; read as ppm, since the oxides alone make up most of the whole.',
    };
  return { unit: 'wt%', why: 'No unit is stated; read as wt%. Check that it is not ppm.' };
}

function typicalSum(drafts: readonly Draft[], decimal: DecimalMark): number {
  return drafts.reduce((sum, d) => sum + median(d.cells.map((c) => amountIn(c, decimal))), 0);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
}

function amountIn(cell: string, decimal: DecimalMark): number {
  const reading = readCell(cell, decimal);
  return reading.kind === 'number' ? reading.value : 0;
}
