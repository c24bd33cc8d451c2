import { ATOMIC_WEIGHTS } from './atomic-weights.ts';

/** Elements whose usual form is not the trivalent oxide; `null` where an analysis in oxides has no place for one. */
const USUAL: Readonly<Record<string, string | null>> = Object.fromEntries(
  [
    'SiO2 B2O3 PbO MnO CuO TiO2 CaO MgO K2O Na2O Li2O P2O5 SO3 SnO2 ZnO BaO SrO ZrO2 CoO NiO V2O5 Rb2O Cs2O BeO',
    'Ag2O CdO GeO2 Nb2O5 MoO3 WO3 HfO2 Ta2O5 CeO2 ThO2 UO2 Tl2O HgO SeO2 TeO2 H2O',
  ]
    .join(' ')
    .split(' ')
    .map((oxide) => [oxide.replace(/\d*O\d*$/, ''), oxide] as [string, string | null])
    .concat(['F', 'Cl', 'Br', 'I'].map((halogen) => [halogen, halogen]))
    .concat('O C N He Ne Ar Kr Xe Ru Rh Pd Re Os Ir Pt Au Pa'.split(' ').map((name) => [name, null])),
);

/**
 * The form in which analyses of silicates state an element: its usual oxide, or itself for halogens. Null for oxygen,
 * carbon and nitrogen, noble gases and noble metals, which no oxide of the fired ceramic stands for.
 * Common practice, no published source.
 * @example
 * usualForm('Si') // 'SiO2'
 * usualForm('Nd') // 'Nd2O3'
 * usualForm('Cl') // 'Cl'
 * usualForm('O') // null
 */
export function usualForm(element: string): string | null {
  if (!Object.hasOwn(ATOMIC_WEIGHTS, element)) return null;
  return Object.hasOwn(USUAL, element) ? USUAL[element]! : `${element}2O3`;
}
