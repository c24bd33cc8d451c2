import { listInWords } from '../placement/words.ts';
import { centredTerms, takeOut } from './columns.ts';
import type { EffectNumbers } from './effect-numbers.ts';
import { pInWords } from './effect-words.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';
import type { Tangle } from './types.ts';

/** A term of tied factors, tested with nothing held that it is tied to. */
export interface TestedTerm {
  readonly term: Term;
  readonly found: Pick<EffectNumbers, 'p' | 'tooFew' | 'method'>;
}

/** Tied factors of which one at least made a difference. */
export interface Joint {
  readonly factors: readonly string[];
  readonly sentence: string;
}

/**
 * A factor and all that it is tied to exactly, straight or through another; empty where it is tied to nothing.
 *
 * @example
 * tiedWith('lead', [{ kind: 'same', factors: ['lead', 'roast'] }, { kind: 'same', factors: ['roast', 'sieve'] }]) // ['lead', 'roast', 'sieve']
 * tiedWith('air', [{ kind: 'partly', factors: ['air', 'roast'] }]) // []
 */
export function tiedWith(factor: string, tangles: readonly Pick<Tangle, 'kind' | 'factors'>[]): string[] {
  const ties = tangles.filter((t) => t.kind === 'same');
  let known = [factor];
  for (;;) {
    const more = ties.filter((t) => t.factors.some((f) => known.includes(f))).flatMap((t) => t.factors);
    const next = [...new Set([...known, ...more])];
    if (next.length === known.length) return more.length > 0 ? next : [];
    known = next;
  }
}

/**
 * Tied factors that together made a difference: were all of them without effect, the outcome would have nothing to do
 * with what they share, so the test of that column (others held) is a test of all of them at once. Each is tested
 * with nothing held that it is tied to; where they are tied through several columns, each is held to its part of the
 * limit (Bonferroni), and a column that also follows from factors outside the tie tells nothing. Which of them it was
 * is never said. Never throws.
 *
 * @example
 * const zone = (tile, lead, roast) => ({ id: tile, label: 'A1', tile, tileLabel: tile, firing: 'F1', factors: { lead, roast }, grade: 'matt', glassyShare: null })
 * const factors = [{ name: 'lead', kind: 'number', unit: '%', step: 10 }, { name: 'roast', kind: 'category', base: 'short' }]
 * const table = trialTable([zone('T1', 30, 'short'), zone('T2', 40, 'long')], { factors, outcome: 'glossy', seed: 1 })
 * const tested = table.terms.map((term) => ({ term, found: { p: 0.03, method: 'exact-permutation' } }))
 * jointEffects(table, findTangles(table), { tested, level: 0.95 })[0].sentence // 'lead or roast made a difference, or both did (p = .030), but these 2 tiles cannot tell which.'
 */
export function jointEffects(
  table: TrialTable,
  tangles: readonly Tangle[],
  { tested, level }: { tested: readonly TestedTerm[]; level: number },
): Joint[] {
  const names = [...new Set(table.terms.map((t) => t.factor.name))];
  const ties = [
    ...new Set(names.map((name) => names.filter((f) => tiedWith(name, tangles).includes(f)).join('\n'))),
  ]
    .filter((tie) => tie !== '')
    .map((tie) => tie.split('\n'));
  return ties.flatMap((factors) => {
    const columns = sharedColumns(table, factors);
    const limit = (1 - level) / columns.length + ROUNDING;
    const told = tested.filter(
      ({ term, found }) => found.p !== null && !found.tooFew && columns.some((c) => c.term === term && c.own),
    );
    const least = told.sort((a, b) => a.found.p! - b.found.p!)[0]?.found;
    if (least === undefined || least.p! > limit) return [];
    return [{ factors, sentence: jointSentence(factors, least, table) }];
  });
}

/** Rounding in sums of shares must not turn a p of exactly the limit into one above it. */
const ROUNDING = 1e-12;

/** The columns of some factors, those that lie along one another once; `own`: none follows from other factors. */
function sharedColumns(table: TrialTable, factors: readonly string[]): { term: Term; own: boolean }[] {
  const unit = table.terms.find((t) => t.factor.name === factors[0])!.unitOfChange;
  const all = centredTerms(table, unit);
  const outside = all.filter((c) => !factors.includes(c.term.factor.name)).map((c) => c.column);
  const kept: typeof all = [];
  for (const one of all.filter((c) => factors.includes(c.term.factor.name)))
    if (kept.every((k) => takeOut(one.column, [k.column]).share > 0)) kept.push(one);
  return kept.map(({ term, column }) => ({ term, own: takeOut(column, outside).share > 0 }));
}

function jointSentence(
  factors: readonly string[],
  { p, method }: TestedTerm['found'],
  { tiles }: TrialTable,
): string {
  const words =
    method === 'approximate-permutation' ? pInWords(p!).replace(/^p = /, 'p about ') : pInWords(p!);
  const those = tiles.length === 1 ? 'this tile' : `these ${tiles.length} tiles`;
  const more = factors.length === 2 ? 'both' : 'more than one of them';
  return `${listInWords(factors, 'or')} made a difference, or ${more} did (${words}), but ${those} cannot tell which.`;
}
