import { ANALYTES, canonicalAnalyte, LOI } from '../domain/chemistry/analytes.ts';
import type { UncertaintyBasis, Unit } from '../domain/composition/types.ts';
import { MAX_HEADING_CHARACTERS } from './limits.ts';
import { findUnit } from './units.ts';

/** What one heading says, whatever decorates it. */
export interface HeaderReading {
  readonly analyte: string | null;
  readonly unit: Unit | null;
  /** A unit we do not hold (mol %, counts), as written. */
  readonly foreignUnit: string | null;
  /** The column holds the uncertainty or the detection limit rather than the value. */
  readonly statistic: 'uncertainty' | 'limit' | null;
  readonly basis: UncertaintyBasis | null;
  readonly relative: boolean;
  /** Nothing but a unit, a statistic or a word like "mean": belongs to the heading beside or above it. */
  readonly bare: boolean;
}

const B = '(?<![\\p{L}\\p{N}])';
const E = '(?![\\p{L}\\p{N}])';
const word = (pattern: string) => new RegExp(`${B}(?:${pattern})${E}`, 'iu');

const RELATIVE = word(
  '%?\\s?rsd|%?\\s?cv|rel(?:ative|\\.)?\\s?(?:%|s\\.?d\\.?|err(?:or)?\\.?|unc(?:ertainty)?\\.?|fehler)|r\\.?s\\.?d\\.?',
);
const NINETY_FIVE = word(
  '95\\s?%?\\s?(?:c\\.?\\s?i\\.?|conf(?:idence)?\\.?(?:\\s(?:interval|level))?)?|ci\\s?95\\s?%?|u\\s?95',
);
const TWO =
  /(?<![\p{L}\p{N}])(?:2|two)\s?-?\s?(?:σ|sigma|s\.?\s?d\.?|s(?![\p{L}\p{N}])|s\.?e\.?(?![\p{L}]))/iu;
const ONE =
  /(?<![\p{L}\p{N}])(?:1|one)\s?-?\s?(?:σ|sigma|s\.?\s?d\.?|s(?![\p{L}\p{N}])|s\.?e\.?(?![\p{L}]))|[σ]|(?<![\p{L}])(?:sigma|s\.?\s?d\.?|stdev\.?|std\.?(?:\s?dev\.?)?|st\.?\s?d(?:ev)?\.?|standard\sdeviation|(?<=[\p{L}\p{N})]\s)s\.?e\.?(?:m\.?)?|standard\serror|stabw\.?|standardabweichung|[eé]cart[\s-]type|deviazione\sstandard|desviaci[oó]n(?:\sest[aá]ndar)?|τυπικ[ηή]\sαπ[οό]κλιση)(?![\p{L}])/iu;
const UNSTATED =
  /±|\+\s?\/\s?-|\+-|(?<![\p{L}])(?:err(?:or|s)?\.?|unc(?:ert(?:ainty)?)?\.?|fehler|unsicherheit|erreur|incertitude|errore|incertezza|incertidumbre|σφάλμα)(?![\p{L}])|^[uΔδ](?=[\s_(])|^[Δδ](?=\p{Lu})/iu;
const LIMIT = word(
  '(?:i|l|m)?lod|ll?od|lld|mdl|dl|ld|loq|d\\.l\\.|l\\.o\\.d\\.|det(?:ection)?\\.?\\s?lim(?:it)?s?\\.?|limits?\\s(?:of\\s)(?:detection|quantification)|' +
    'nachweisgrenze|nwg|limite\\s(?:de\\sd[eé]tection|di\\srivelabilit[aà])|l[ií]mite\\sde\\sdetecci[oó]n|όριο\\sανίχνευσης',
);
const FILLER = word(
  'mean|average|avg|conc(?:entration)?s?\\.?|content|value|result|mittelwert|moyenne|media|norm(?:ali[sz]ed|\\.)?|raw|as\\s?reported|oxides?|elements?|major|minor|trace|dry|in',
);
/** Loss on ignition by its initials in other languages, which would be no analyte elsewhere. */
const LOSS =
  /^(?:g\.?v\.?|p\.?f\.?|p\.?p\.?c\.?|perte au feu|perdita al fuoco|p[eé]rdida (?:por|al) (?:calcinaci[oó]n|fuego)|απ[ωώ]λεια π[υύ]ρωσης)$/iu;
const LINE_UNSPACED = /^([A-Z][a-z])[KLM]$/;
const ISOTOPE = /^(?:(\d{1,3})([A-Z][a-z]?)|([A-Z][a-z]?)[\s-]?(\d{2,3}))$/;

/** Reads a heading: `SiO2 (wt%)`, `Pb ppm`, `± SiO2`, `Fe2O3T`, `Al2O3 2σ`, `LOD Cu [mg/kg]`, `Si K`, `Atomic %`. */
export function readHeader(raw: string): HeaderReading {
  if (raw.length > MAX_HEADING_CHARACTERS) return NOTHING;
  const text = plain(raw);
  const whole = known(text);
  if (whole !== null) return { ...NOTHING, analyte: whole };
  const statistic = findStatistic(text);
  const { unit, foreign, rest } = findUnit(statistic.rest);
  const name = bareName(rest);
  const analyte = name === '' ? null : analyteIn(name);
  const bare =
    name === '' && (unit !== null || foreign !== null || statistic.statistic !== null || text !== '');
  return {
    analyte,
    unit,
    foreignUnit: foreign,
    statistic: statistic.statistic,
    basis: statistic.basis,
    relative: statistic.relative,
    bare,
  };
}

const NOTHING: HeaderReading = {
  analyte: null,
  unit: null,
  foreignUnit: null,
  statistic: null,
  basis: null,
  relative: false,
  bare: false,
};

function plain(raw: string): string {
  return raw
    .replace(/<\/?(?:sub|sup|b|i|em|strong)>/gi, '')
    .normalize('NFKC')
    .replace(/[−–‒]/g, '-')
    .replace(/[_\s]+/g, ' ')
    .replace(/ series$/i, '')
    .trim();
}

interface StatisticFound {
  readonly statistic: HeaderReading['statistic'];
  readonly basis: UncertaintyBasis | null;
  readonly relative: boolean;
  readonly rest: string;
}

function findStatistic(text: string): StatisticFound {
  const limit = LIMIT.exec(text);
  if (limit)
    return {
      statistic: 'limit',
      basis: null,
      relative: false,
      rest: text.replace(LIMIT, ' ').replace(/[<>]/g, ' '),
    };
  const steps: readonly (readonly [UncertaintyBasis, boolean, RegExp])[] = [
    ['1σ', true, RELATIVE],
    ['95 %', false, NINETY_FIVE],
    ['2σ', false, TWO],
    ['1σ', false, ONE],
    ['unstated', false, UNSTATED],
  ];
  const found = steps.find(([, , pattern]) => pattern.test(text));
  if (!found) return { statistic: null, basis: null, relative: false, rest: text };
  const [basis, relative, pattern] = found;
  const rest = [pattern, UNSTATED].reduce((left, p) => left.replace(p, ' '), text);
  return { statistic: 'uncertainty', basis, relative, rest: relative ? rest.replace('%', ' ') : rest };
}

/** The text without brackets, separators and words that add nothing. */
function bareName(text: string): string {
  let name = text.replace(/[[\]{}]/g, ' ').replace(/\(\s*\)/g, ' ');
  for (let shorter = name.replace(FILLER, ' '); shorter !== name; shorter = name.replace(FILLER, ' '))
    name = shorter;
  return name
    .replace(/\(\s*\)/g, ' ')
    .replace(/^[\s,;:./|-]+|[\s,;:./|-]+$/g, '')
    .replace(/\s+/g, ' ');
}

/** Blanks inside a name count only where an oxide or X-ray line is meant: “R B” is no rubidium, “SiO2 1” no oxide. */
function known(name: string): string | null {
  const found = canonicalAnalyte(name);
  if (found === null || !name.includes(' ')) return found;
  return /^[A-Z] [A-Z]$/i.test(name) && found.length === 2 ? null : symbol(found);
}

function analyteIn(name: string): string | null {
  const found = known(name) ?? known(name.replace(/^\((.*)\)$/, '$1'));
  if (found !== null) return found;
  if (LOSS.test(name)) return LOI;
  const line = LINE_UNSPACED.exec(name)?.[1];
  if (line !== undefined) return symbol(line);
  const isotope = ISOTOPE.exec(name);
  if (isotope) return symbol(isotope[2] ?? isotope[3] ?? '');
  if (/[/+:]/.test(name)) return null;
  const inBrackets = /^[\p{L}\s.-]+\(([A-Z][A-Za-z0-9]*)\)$/u.exec(name)?.[1];
  const asForm = /\bas ([A-Z][A-Za-z0-9]*)\)?$/.exec(name)?.[1];
  return symbol(inBrackets ?? asForm ?? '');
}

function symbol(text: string): string | null {
  return ANALYTES.includes(text) ? text : null;
}
