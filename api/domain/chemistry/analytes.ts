import { ELEMENTS } from './atomic-weights.ts';
import { elementOf, OXIDES } from './oxides.ts';

/** Analytes that are no substance: loss on ignition, and the total that the laboratory printed. */
export const LOI = 'LOI';
export const TOTAL = 'Total';

/** Every analyte that can be stored, in display order: oxides, elements, then LOI and Total. */
export const ANALYTES: readonly string[] = [...OXIDES, ...ELEMENTS, LOI, TOTAL];

const BY_LOWER_CASE = new Map([...OXIDES, ...ELEMENTS].map((name) => [name.toLowerCase(), name]));
const NAMED = new Map([
  ['silica', 'SiO2'],
  ['alumina', 'Al2O3'],
  ['h2o+', 'H2O'],
  ['h2o-', 'H2O'],
  ['water', 'H2O'],
]);
const LOSS = /^(loi|loss on ignition|ignition loss|ign loss|glühverlust)( ?@? ?\(?\d{3,4} ?(°? ?c)?\)?)?$/;
const SUM = /^((analytical|raw|oxide|grand) )?(total|totals|tot|sum|summe|gesamt|somme|σ)( oxides)?$/;
const TOTAL_IRON = /^(?:total |tot |t|σ)?(fe2o3|feo|fe)(?: ?\(?(?:t|tot|total)\)?)?$/;
const XRAY_LINE = /^([A-Z][a-z]?)(?:[ _-](?:series )?[KLM]|[ _-]?[KLM][αβab]\d?)$/;

/**
 * The stored spelling of an analyte however a laboratory writes it: any case, subscript digits, footnote marks,
 * total iron (`Fe2O3T`, `FeO*`, `Fe2O3 tot`), X-ray lines (`Si K`, `Pb Lα`), a zero typed for the letter O in
 * oxides of two-letter elements (`Al203`), LOI and Total. Null when unknown. One-letter elements count only as
 * capitals, since `n`, `y` and `k` head columns of other things. Units are not part of an analyte's name.
 * @example
 * canonicalAnalyte('sio₂') // 'SiO2'
 * canonicalAnalyte('Fe2O3T') // 'Fe2O3'
 * canonicalAnalyte('FeO*') // 'FeO'
 * canonicalAnalyte('L.O.I.') // 'LOI'
 * canonicalAnalyte('colour') // null
 */
export function canonicalAnalyte(text: string): string | null {
  const plain = plainName(text);
  const lower = plain.toLowerCase();
  if (LOSS.test(lower.replaceAll('.', ''))) return LOI;
  if (SUM.test(lower.replace(/[.:]$/, ''))) return TOTAL;
  return NAMED.get(lower) ?? knownSymbol(plain) ?? totalIron(lower) ?? lineOf(plain) ?? typedZero(lower);
}

function plainName(text: string): string {
  return text
    .normalize('NFKC')
    .replace(/[\u200b\u2060\ufeff]/g, '')
    .replace(/[–−‒]/g, '-')
    .replace(/∑/g, 'Σ')
    .replace(/[*†‡#]+$/, '')
    .replace(/\s+/g, ' ')
    .trim();
}

function knownSymbol(plain: string): string | null {
  const compact = plain.replace(/[ _]/g, '');
  if (/^[a-z]$/.test(compact)) return null;
  const known = BY_LOWER_CASE.get(compact.toLowerCase());
  return known ?? (/O\d*$/.test(compact) && elementOf(compact) !== null ? compact : null);
}

function totalIron(lower: string): string | null {
  const form = TOTAL_IRON.exec(lower.replace(/[_-]/g, ' ').replace(/[*†]/g, ''))?.[1];
  return form === undefined ? null : BY_LOWER_CASE.get(form)!;
}

function lineOf(plain: string): string | null {
  const symbol = XRAY_LINE.exec(plain)?.[1];
  return symbol === undefined ? null : (BY_LOWER_CASE.get(symbol.toLowerCase()) ?? null);
}

function typedZero(lower: string): string | null {
  const [, element, atoms, oxygens] = /^([a-z]{2})(\d?)0(\d?)$/.exec(lower) ?? [];
  return element === undefined ? null : (BY_LOWER_CASE.get(`${element}${atoms}o${oxygens}`) ?? null);
}
