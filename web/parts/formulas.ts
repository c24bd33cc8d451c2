import { OXIDES } from '../../api/domain/chemistry/oxides.ts';
import { chemical } from '../../api/figures/chemical.ts';

/** Salts that sentences name beside the oxides. */
const SALTS = ['PbSO4', 'PbCO3', 'CaCO3'];
const FORMULAS = new RegExp(
  `(?<![A-Za-z0-9])(\\d*)(${[...OXIDES, ...SALTS]
    .filter((name) => /\d/.test(name))
    .sort((one, other) => other.length - one.length)
    .join('|')})(?![A-Za-z0-9])`,
  'g',
);

/** A sentence with the counts in its formulas set low; other words that hold figures, such as labels, are left alone. */
export const withFormulas = (sentence: string): string =>
  sentence.replace(FORMULAS, (_, many: string, formula: string) => many + chemical(formula));
