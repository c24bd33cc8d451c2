/** Fractions a reader takes in at a glance. */
const FRACTIONS: readonly (readonly [number, string])[] = [
  [1 / 10, 'a tenth'],
  [1 / 5, 'a fifth'],
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
  [2 / 5, 'two fifths'],
  [1 / 2, 'half'],
  [3 / 5, 'three fifths'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
  [4 / 5, 'four fifths'],
  [9 / 10, 'nine tenths'],
  [1, 'almost all'],
];

/**
 * A share from 0 to 1 as the nearest plain fraction.
 *
 * @example
 * fractionInWords(0.79) // 'four fifths'
 * fractionInWords(0.97) // 'almost all'
 */
export function fractionInWords(share: number): string {
  const nearer = (a: readonly [number, string], b: readonly [number, string]) =>
    Math.abs(b[0] - share) < Math.abs(a[0] - share) ? b : a;
  return FRACTIONS.reduce(nearer)[1];
}

/** Beyond this the number would rest on the far tail of an assumed distribution. */
const LEAST = 1 / 1000;

/** `17`, `250`: two significant figures. */
const rounded = (n: number) => Number(n.toPrecision(2));

function greatestDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestDivisor(b, a % b);
}

/**
 * A probability as odds in plain words: tenths above 0.1, `1 in N` to two figures below, and no rarer than 1 in
 * 1,000, because rarer rests on the far tail of an assumed distribution.
 *
 * @example
 * oddsInWords(0.38) // 'about 2 in 5'
 * oddsInWords(0.004) // 'about 1 in 250'
 * oddsInWords(1e-9) // 'fewer than 1 in 1,000'
 */
export function oddsInWords(probability: number): string {
  if (probability < LEAST) return 'fewer than 1 in 1,000';
  if (probability < 0.1) return `about 1 in ${rounded(1 / probability).toLocaleString('en-GB')}`;
  if (probability >= 0.95) return 'nearly all';
  const tenths = Math.round(probability * 10);
  const shared = greatestDivisor(tenths, 10);
  return `about ${tenths / shared} in ${10 / shared}`;
}

/**
 * A factor as how many times too low or too high: one decimal below ten, two figures above.
 *
 * @example
 * factorInWords(0.5556) // '1.8 times too low'
 * factorInWords(12.34) // '12 times too high'
 */
export function factorInWords(factor: number): string {
  const off = factor < 1 ? 1 / factor : factor;
  const times = off < 1.1 ? off.toFixed(2) : off < 9.95 ? off.toFixed(1) : String(rounded(off));
  return `${times} times too ${factor < 1 ? 'low' : 'high'}`;
}

/**
 * A list in words: `a`, `a and b`, `a, b and c`.
 *
 * @example
 * listInWords(['lead', 'tin', 'iron']) // 'lead, tin and iron'
 */
export function listInWords(items: readonly string[], and = 'and'): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} ${and} ${items.at(-1)}`;
}
