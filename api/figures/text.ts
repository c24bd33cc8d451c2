import { FONT_WIDTHS } from './font-widths.generated.ts';

export type Weight = keyof typeof FONT_WIDTHS;

/** What a letter the font lacks is taken to be: a full em, so that labels in other scripts still find room. */
const UNKNOWN = 1000;
const tables = new Map<Weight, Map<number, number>>();

function tableOf(weight: Weight): Map<number, number> {
  const kept = tables.get(weight);
  if (kept !== undefined) return kept;
  const table = new Map<number, number>();
  for (const [first, widths] of FONT_WIDTHS[weight])
    widths.forEach((width, i) => {
      table.set(first + i, width);
    });
  tables.set(weight, table);
  return table;
}

/** Width of a line of Source Sans 3 in px, from the font's own advance widths (kerning left out). */
export function textWidth(text: string, size: number, weight: Weight = 'regular'): number {
  const table = tableOf(weight);
  let thousandths = 0;
  for (const letter of text) thousandths += table.get(letter.codePointAt(0)!) ?? UNKNOWN;
  return (thousandths * size) / 1000;
}

/** The text, cut with an ellipsis where it is wider than there is room for. */
export function fitText(text: string, size: number, room: number, weight: Weight = 'regular'): string {
  if (textWidth(text, size, weight) <= room) return text;
  const letters = [...text];
  while (letters.length > 1 && textWidth(`${letters.join('').trimEnd()}…`, size, weight) > room)
    letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

/** A number as a figure's text has it: a true minus sign, no trailing noise. */
export const numeral = (value: number, decimals: number): string =>
  (Object.is(Number(value.toFixed(decimals)), -0) ? 0 : value).toFixed(decimals).replace('-', '−');

/** The text on at most so many lines, broken between words; the last is cut where it runs on. */
export function wrapText(
  text: string,
  size: number,
  {
    room,
    most,
    weight = 'regular',
  }: { readonly room: number; readonly most: number; readonly weight?: Weight },
): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ').filter(Boolean)) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && (lines.length === most || textWidth(longer, size, weight) <= room))
      lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines.map((line) => fitText(line, size, room, weight));
}
