import type { DecimalMark } from '../number.ts';
import { readNumber, tidyNumber } from '../number.ts';

const EMPTY =
  /^(?:|-+|\.+|—|–|nan|n\/?a|null|none|o\.?l\.?|open|err(?:or)?|fail|#n\/a|over(?:range|load)?|disconnected|----.*)$/i;
const WITH_UNIT = /^(.*?)\s*(?:°|º|deg\.?|degrees)?\s*[CF]?$/i;

/** A cell read as a number: NaN for an empty cell or an instrument's word for no reading; null for any other text. */
export function readTemperature(cell: string, decimal: DecimalMark): number | null {
  // Plain figures are nearly all of a log; the fast way is the same reading.
  const plain = decimal === '.' ? cell : cell.replace(',', '.');
  const quick = Number(plain);
  if (Number.isFinite(quick) && cell.trim() !== '' && !(decimal === ',' && cell.includes('.'))) return quick;
  const text = tidyNumber(cell);
  if (EMPTY.test(text)) return Number.NaN;
  const bare = WITH_UNIT.exec(text)?.[1] ?? text;
  return readNumber(bare, decimal)?.value ?? null;
}

/** Unit written in a heading or beside a figure; null where there is none. */
export function unitIn(text: string): '°C' | '°F' | null {
  if (/(?:°|º|deg\.?(?:rees?)?)\s*f\b|\bfahrenheit\b|[[(]\s*f\s*[\])]|[_\s]f$/i.test(text)) return '°F';
  if (/(?:°|º|deg\.?(?:rees?)?)\s*c\b|\bcelsius\b|℃|[[(]\s*c\s*[\])]|[_\s]c$/i.test(text)) return '°C';
  return null;
}
