/** What does not belong in a name: control characters, invisible ones, and those that turn writing direction. */
const UNSEEN =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: finding them is the point
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g;
const LOOK_AT = 500;
const MARKUP = /<[a-z!/][^>]*>/i;
const FORMULA = /^(?:[=@]|[+-](?!\s*[\d.,]))\S/;

export interface CleanText {
  readonly text: string;
  /** Invisible characters were taken out. */
  readonly stripped: boolean;
  /** Looks like HTML or like a spreadsheet formula; kept as text all the same. */
  readonly suspicious: 'markup' | 'formula' | null;
}

/** A name or note as plain text in one line, in composed Unicode. */
export function cleanText(raw: string): CleanText {
  const seen = raw.replace(UNSEEN, '');
  const text = seen.normalize('NFC').replace(/\s+/g, ' ').trim();
  const start = text.slice(0, LOOK_AT);
  const suspicious = MARKUP.test(start) ? 'markup' : FORMULA.test(start) ? 'formula' : null;
  return { text, stripped: seen.length !== raw.length, suspicious };
}

/** Lower case without accents, punctuation as blanks: what synonyms are compared in. */
export function plainWords(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}°#%±]+/gu, ' ')
    .trim();
}
