import { elementOf } from '../chemistry/oxides.ts';

/** Lines too near each other for an energy-dispersive detector; energies in keV as in xraylib. */
const OVERLAPS = [
  { one: 'As', other: 'Pb', lines: 'As Kα 10.53 and Pb Lα 10.54 keV' },
  { one: 'S', other: 'Pb', lines: 'S Kα 2.31 and Pb Mα 2.35 keV' },
  { one: 'Ti', other: 'Ba', lines: 'Ti Kα 4.51 and Ba Lα 4.46 keV' },
] as const;

/**
 * Warns of elements that an energy-dispersive detector (XRF, SEM-EDS) can hardly tell apart, among oxides present.
 * @example
 * overlapWarnings(['PbO', 'As2O3', 'SiO2']) // ['As Kα 10.53 and Pb Lα 10.54 keV overlap: As and Pb can be taken for each other unless other lines were used.']
 * overlapWarnings(['SiO2', 'PbO']) // []
 */
export function overlapWarnings(oxides: readonly string[]): string[] {
  const present = new Set(oxides.map(elementOf));
  return OVERLAPS.filter(({ one, other }) => present.has(one) && present.has(other)).map(
    ({ one, other, lines }) =>
      `${lines} overlap: ${one} and ${other} can be taken for each other unless other lines were used.`,
  );
}
