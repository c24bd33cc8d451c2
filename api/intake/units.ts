import type { Unit } from '../domain/composition/types.ts';

/** How laboratories write units; the first that matches counts. Text is NFKC, with plain minus signs. */
const SPELLINGS: readonly (readonly [Unit, RegExp])[] = [
  [
    'ppb',
    /\bppb\b|(?<![a-z])(?:[μu]g|mcg)\s?(?:\/\s?kg\b|[·.\s]?kg\s?-1)|(?<![a-z])ng\s?(?:\/\s?g\b|[·.\s]?g\s?-1)/i,
  ],
  [
    'ppm',
    /\bppm[wm]?\b|(?<![a-z])mg\s?(?:\/\s?kg\b|[·.\s]?kg\s?-1)|(?<![a-z])(?:[μu]g|mcg)\s?(?:\/\s?g\b|[·.\s]?g\s?-1)/i,
  ],
  [
    'at%',
    /(?<![a-z])at(?:omic|oms?|omar)?[.\s_-]*(?:%|pct\b|per\s?cent|perc\b)|%\s?(?:at(?:omic|om)?\b|atomico|atomique|atomar)|atom-?\s?%/i,
  ],
  [
    'wt%',
    /(?<![a-z])(?:wt|weight|mass|gew|gewichts?|massen?|masse?|ma|peso|poids|wgt)[.\s_-]*(?:%|pct\b|per\s?cent|percent\b|prozent)|%\s?(?:(?:en|in)\s)?(?:wt|weight|mass|w\/w|m\/m|peso|poids|masse|massa|κ\.?\s?β\.?)\b\.?|(?<![a-z])[mw](?:\/[mw])?\s?%|(?<![a-z])w\/w\b|(?<![a-z0-9])(?:wt|wgt)\.?(?![a-z])/i,
  ],
];

/** Quantities that no unit of ours holds; a column in them cannot be used as it is. */
const OTHER =
  /(?<![a-z])mol(?:e|ar)?\.?\s?(?:%|pct)|\bcps\b|\bcounts?\b|\bk-?ratio\b|\bg\s?\/\s?kg\b|\bmg\s?\/\s?g\b|‰/i;

/** A title may be a sentence; a page is none. */
const MAX_UNIT_TEXT = 500;

export interface UnitFound {
  readonly unit: Unit | null;
  /** A unit we do not hold, as written. */
  readonly foreign: string | null;
  /** Found by a per cent sign alone. */
  readonly signOnly: boolean;
  /** The text without the unit. */
  readonly rest: string;
}

/** Finds a unit in a header or a cell. `%` alone counts as wt%. */
export function findUnit(text: string): UnitFound {
  if (text.length > MAX_UNIT_TEXT) return { unit: null, foreign: null, signOnly: false, rest: text };
  const foreign = OTHER.exec(text);
  if (foreign) return { unit: null, foreign: foreign[0], signOnly: false, rest: cut(text, foreign) };
  for (const [unit, spelling] of SPELLINGS) {
    const found = spelling.exec(text);
    if (found) return { unit, foreign: null, signOnly: false, rest: cut(text, found) };
  }
  const percent = /%/.exec(text);
  return percent
    ? { unit: 'wt%', foreign: null, signOnly: true, rest: cut(text, percent) }
    : { unit: null, foreign: null, signOnly: false, rest: text };
}

function cut(text: string, found: RegExpExecArray): string {
  return `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`;
}
