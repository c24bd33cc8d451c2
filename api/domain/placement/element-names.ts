/** Plain names of the elements met in paints, slips and clays. */
const NAMES: Readonly<Record<string, string>> = {
  Ag: 'silver',
  Al: 'aluminium',
  As: 'arsenic',
  B: 'boron',
  Ba: 'barium',
  Bi: 'bismuth',
  Ca: 'calcium',
  Cd: 'cadmium',
  Ce: 'cerium',
  Cl: 'chlorine',
  Co: 'cobalt',
  Cr: 'chromium',
  Cs: 'caesium',
  Cu: 'copper',
  F: 'fluorine',
  Fe: 'iron',
  Ga: 'gallium',
  K: 'potassium',
  La: 'lanthanum',
  Li: 'lithium',
  Mg: 'magnesium',
  Mn: 'manganese',
  Na: 'sodium',
  Nb: 'niobium',
  Ni: 'nickel',
  P: 'phosphorus',
  Pb: 'lead',
  Rb: 'rubidium',
  S: 'sulfur',
  Sb: 'antimony',
  Si: 'silicon',
  Sn: 'tin',
  Sr: 'strontium',
  Th: 'thorium',
  Ti: 'titanium',
  U: 'uranium',
  V: 'vanadium',
  Y: 'yttrium',
  Zn: 'zinc',
  Zr: 'zirconium',
};

/**
 * Plain name of what an oxide or element is of; the spelling itself when there is no plain name for it.
 *
 * @example
 * plainName('PbO') // 'lead'
 * plainName('Fe2O3') // 'iron'
 * plainName('Nd2O3') // 'Nd2O3'
 */
export function plainName(analyte: string): string {
  const symbol = /^[A-Z][a-z]?/.exec(analyte)?.[0] ?? '';
  return NAMES[symbol] ?? analyte;
}
