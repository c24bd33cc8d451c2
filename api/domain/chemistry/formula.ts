import { RequirementError } from '../requirement.ts';
import { ATOMIC_WEIGHTS, atomicWeight } from './atomic-weights.ts';
import { plainFormula } from './plain-formula.ts';

/** A chemical formula in plain characters, and the atoms of each element in one formula unit. */
export interface Formula {
  readonly text: string;
  readonly elements: Readonly<Record<string, number>>;
}

type Counts = Map<string, number>;
interface Cursor {
  readonly text: string;
  at: number;
}

const CLOSING: Readonly<Record<string, string>> = { '(': ')', '[': ']', '{': '}' };
const COUNT = /\d+\/\d+|\d+(?:\.\d+)?|\.\d+/y;
const SYMBOL = /[A-Z][a-z]?/y;

/**
 * Reads a formula: brackets, hydrates (`·`, `.`, `*`), leading numbers with decimals or fractions, subscript digits.
 * Atoms keep the order in which their elements first occur. Throws, saying where, on unknown elements, charges,
 * brackets that do not match, zero counts, and shares left open such as `(Mg,Fe)` or `nH2O`.
 * @example
 * parseFormula('2PbCO3·Pb(OH)2').elements // { Pb: 3, C: 2, O: 8, H: 2 }
 * parseFormula('CaSO4.1/2H2O').elements.H // 1
 * parseFormula('(Mg,Fe)2SiO4') // throws write each share
 */
export function parseFormula(text: string): Formula {
  const plain = plainFormula(text);
  if (plain === '') throw new RequirementError('a formula needs at least one element; it is empty');
  const cursor: Cursor = { text: plain, at: 0 };
  const counts = readParts(cursor);
  if (cursor.at < plain.length) fail(cursor, 'a formula needs matching brackets');
  return { text: plain, elements: Object.fromEntries(counts) };
}

/**
 * Mass of one mole of a formula, g/mol, from IUPAC 2021 atomic weights (doi 10.1515/pac-2019-0603).
 * Throws as `parseFormula` does.
 * @example
 * molarMass('PbO') // 223.199
 */
export function molarMass(formula: Formula | string): number {
  const { elements } = typeof formula === 'string' ? parseFormula(formula) : formula;
  return Object.entries(elements).reduce((sum, [symbol, count]) => sum + count * atomicWeight(symbol), 0);
}

function readParts(cursor: Cursor): Counts {
  const total: Counts = new Map();
  do {
    const coefficient = readCount(cursor) ?? 1;
    addTo(total, readPart(cursor), coefficient);
  } while (take(cursor, '·'));
  return total;
}

function readPart(cursor: Cursor): Counts {
  const part: Counts = new Map();
  for (let unit = readUnit(cursor); unit; unit = readUnit(cursor)) addTo(part, unit, readCount(cursor) ?? 1);
  if (part.size === 0) fail(cursor, 'a formula needs an element in every part');
  return part;
}

function readUnit(cursor: Cursor): Counts | null {
  const closing = CLOSING[cursor.text[cursor.at] ?? ''];
  if (closing) {
    cursor.at++;
    const group = readParts(cursor);
    if (!take(cursor, closing)) fail(cursor, `a formula needs matching brackets; ${closing} is missing`);
    return group;
  }
  const symbol = match(cursor, SYMBOL);
  if (symbol === null) return readNothing(cursor);
  return new Map([[knownElement(symbol, cursor), 1]]);
}

function readNothing(cursor: Cursor): null {
  const next = cursor.text[cursor.at];
  if (next === ',')
    fail(cursor, 'a formula needs fixed counts; write each share, as in Mg1.8Fe0.2SiO4, not (Mg,Fe)2SiO4');
  if (next !== undefined && !/[·)\]}]/.test(next))
    fail(cursor, `a formula needs element symbols; ${next} is none`);
  return null;
}

/** Two letters that are no element may be a one-letter element followed by something that then fails by itself. */
function knownElement(symbol: string, cursor: Cursor): string {
  if (Object.hasOwn(ATOMIC_WEIGHTS, symbol)) return symbol;
  cursor.at -= symbol.length;
  return fail(cursor, `a formula needs elements with a standard atomic weight; ${symbol} is none`);
}

function readCount(cursor: Cursor): number | null {
  const found = match(cursor, COUNT);
  if (found === null) return null;
  if (/^0\d/.test(found))
    fail(cursor, `a formula needs counts without a leading zero; found ${found}: is a letter O meant?`);
  const [above, below] = found.split('/').map(Number);
  const count = below === undefined ? above! : above! / below;
  if (!(count > 0 && Number.isFinite(count)))
    fail(cursor, `a formula needs counts above zero; found ${found}`);
  return count;
}

function match(cursor: Cursor, pattern: RegExp): string | null {
  pattern.lastIndex = cursor.at;
  const found = pattern.exec(cursor.text)?.[0];
  if (found === undefined) return null;
  cursor.at += found.length;
  return found;
}

function take(cursor: Cursor, character: string): boolean {
  if (cursor.text[cursor.at] !== character) return false;
  cursor.at++;
  return true;
}

function addTo(total: Counts, part: Counts, times: number): void {
  for (const [symbol, count] of part) total.set(symbol, (total.get(symbol) ?? 0) + times * count);
}

function fail(cursor: Cursor, requirement: string): never {
  throw new RequirementError(`${requirement} (at character ${cursor.at + 1} of ${cursor.text})`);
}
