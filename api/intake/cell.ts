import type { UncertaintyBasis, Unit } from '../domain/composition/types.ts';
import { MAX_FIGURE_CHARACTERS } from './limits.ts';
import { type DecimalMark, type Figure, readNumber, tidyNumber } from './number.ts';
import { findUnit } from './units.ts';

/** What a cell of a number column holds. */
export type CellReading =
  | { readonly kind: 'empty' | 'notMeasured' | 'nd' | 'dash' | 'trace' | 'text' }
  | {
      readonly kind: 'number';
      readonly value: number;
      readonly resolution: number;
      readonly uncertainty: number | null;
      readonly basis: UncertaintyBasis | null;
      readonly unit: Unit | null;
    }
  | { readonly kind: 'below'; readonly limit: number | null; readonly unit: Unit | null };

const EMPTY: CellReading = { kind: 'empty' };
const NOT_MEASURED: CellReading = { kind: 'notMeasured' };
const ND: CellReading = { kind: 'nd' };
const DASH: CellReading = { kind: 'dash' };
const TRACE: CellReading = { kind: 'trace' };
const TEXT: CellReading = { kind: 'text' };

/** Spellings without blanks, full stops and capitals. Common practice, no published source. */
const set = (words: string) => new Set(words.split('|'));
const BELOW = set(
  'bdl|bd|bld|blod|bdlod|lod|<lod|<dl|<mdl|<lld|<llod|<ld|<d|<loq|<lq|<bdl|udl|belowdetection|belowdetectionlimit|belowlod|' +
    'notdetected|notdetectable|undetected|ndl|<nwg|unwg|uang|unternwg|nn|nichtnachweisbar|nichtnachgewiesen|nondetecte|nonrilevato|' +
    'nodetectado|<ldm|inf|<lr',
);
const NOT_MEASURED_WORDS = set(
  'na|n/a|#n/a|nan|null|none|notanalysed|notanalyzed|notmeasured|nm|nr|notreported|notdetermined|nb|nichtbestimmt|nondosé|nondetermine|' +
    'nondetermined|nondeterminato|nodeterminado|missing|missingvalue|.|..|…|?',
);
const DASHES = /^[-–—−‒―]{1,3}$/;
const BELOW_LIMIT = /^(?:<=?|≤|&lt;|‹)\s*(.+)$/;
const PLUS_MINUS = /^(.+?)\s*(?:±|\+\s?\/\s?-|\+-)\s*(.+)$/;
const CONCISE = /^([+-]?\d+(?:[.,]\d+)?)\s?\((\d{1,4})\)$/;

/** Reads one cell of a number column. Never throws: what is no figure and no known spelling is `text`. */
export function readCell(raw: string, decimal: DecimalMark): CellReading {
  if (raw === '') return EMPTY;
  const text = tidyNumber(raw);
  if (text === '') return EMPTY;
  if (text.length > MAX_FIGURE_CHARACTERS) return TEXT;
  const figure = readNumber(text, decimal);
  if (figure) return number(figure, null);
  if (DASHES.test(text)) return DASH;
  return wordOf(text) ?? belowOf(text, decimal) ?? inlineOf(text, decimal) ?? withUnit(text, decimal) ?? TEXT;
}

function wordOf(text: string): CellReading | null {
  if (text.length > 30) return null;
  const word = text
    .toLowerCase()
    .replace(/^[([](.*)[)\]]$/, '$1')
    .replace(/[\s_]|\.(?!$|\.)|(?<=[a-z])\.$|-/g, '');
  if (word === 'nd') return ND;
  if (word === 'tr' || word === 'trace' || word === 'traces') return TRACE;
  if (BELOW.has(word)) return { kind: 'below', limit: null, unit: null };
  return NOT_MEASURED_WORDS.has(word) ? NOT_MEASURED : null;
}

function belowOf(text: string, decimal: DecimalMark): CellReading | null {
  const rest = BELOW_LIMIT.exec(text)?.[1];
  if (rest === undefined) return null;
  const { unit, foreign, rest: figureText } = findUnit(rest);
  const limit = readNumber(figureText.trim(), decimal);
  return limit && limit.value > 0 && foreign === null ? { kind: 'below', limit: limit.value, unit } : null;
}

/** `12.3 ± 0.4`, and `12.3(4)`: the last digits are uncertain by 4. */
function inlineOf(text: string, decimal: DecimalMark): NumberCell | null {
  const concise = CONCISE.exec(text);
  if (concise) {
    const figure = readNumber(concise[1]!, decimal);
    const spread = figure && Number((Number(concise[2]) * figure.resolution).toPrecision(12));
    return figure && number(figure, spread, '1σ');
  }
  const [, before, after] = PLUS_MINUS.exec(text) ?? [];
  if (before === undefined || after === undefined) return null;
  const figure = readNumber(before.trim(), decimal);
  const spread = readNumber(after.trim(), decimal);
  return figure && spread && spread.value >= 0 ? number(figure, spread.value, 'unstated') : null;
}

/** A unit in the cell. `12.3 ± 3 %` stays text: per cent of what? */
function withUnit(text: string, decimal: DecimalMark): CellReading | null {
  const { unit, foreign, rest } = findUnit(text.normalize('NFKC'));
  if (unit === null || foreign !== null) return null;
  const body = rest.trim();
  const figure = readNumber(body, decimal);
  if (figure) return { ...number(figure, null), unit };
  if (/(?:±|\+\s?\/\s?-|\+-)[^%]*\d\s*%$/.test(text)) return null;
  const inline = inlineOf(body, decimal);
  return inline && { ...inline, unit };
}

export type NumberCell = Extract<CellReading, { kind: 'number' }>;

function number(
  figure: Figure,
  uncertainty: number | null,
  basis: UncertaintyBasis | null = null,
): NumberCell {
  return {
    kind: 'number',
    value: figure.value,
    resolution: figure.resolution,
    uncertainty,
    basis,
    unit: null,
  };
}
