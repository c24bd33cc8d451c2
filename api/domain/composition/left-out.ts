import { oxideFactor } from '../chemistry/oxides.ts';
import { figureText } from './amount.ts';
import type { Reading } from './mass-fractions.ts';
import { chosenForm } from './oxide-forms.ts';
import type { NormalisationSettings } from './types.ts';

/**
 * Sentences about readings that an analysis in oxides leaves out: oxygen, which the oxides already hold (said with
 * how much of it they need), and carbon, nitrogen and coating metals.
 * @example
 * of = (analyte, value) => ({ analyte, element: analyte, amount: { value, limit: null, sigma: null, sigmaBasis: null, resolution: null } })
 * leftOut([of('O', 53.3), of('Si', 46.7)], {})[0] // 'Oxygen (53.3 wt%) is left out: the oxides bring their own (53.21 wt%).'
 * leftOut([of('C', 4)], {}).length // 1
 */
export function leftOut(readings: readonly Reading[], settings: NormalisationSettings): string[] {
  const without = readings.filter(
    ({ element }) => element !== null && chosenForm(element, settings) === null,
  );
  const oxygen = without.find(({ analyte }) => analyte === 'O');
  const others = without
    .filter(({ analyte }) => analyte !== 'O' && analyte !== 'CO2')
    .map(({ analyte }) => analyte);
  return [
    ...(oxygen ? [oxygenSentence(oxygen, readings, settings)] : []),
    ...(others.length === 0
      ? []
      : [`${others.join(', ')} left out: coating, carbon or a metal that no oxide here stands for.`]),
  ];
}

function oxygenSentence(
  oxygen: Reading,
  readings: readonly Reading[],
  settings: NormalisationSettings,
): string {
  const needed = readings.reduce((sum, { analyte, element, amount }) => {
    const form = element === null ? null : chosenForm(element, settings);
    return form === null ? sum : sum + ((amount.value ?? 0) / oxideFactor(analyte)) * (oxideFactor(form) - 1);
  }, 0);
  const found = oxygen.amount.value === null ? 'below detection' : `${figureText(oxygen.amount.value)} wt%`;
  return `Oxygen (${found}) is left out: the oxides bring their own (${figureText(needed)} wt%).`;
}
