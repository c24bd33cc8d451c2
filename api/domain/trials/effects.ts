import { RequirementError } from '../requirement.ts';
import { centredTerms, takeOut } from './columns.ts';
import type { EffectNumbers, EffectOptions } from './effect-numbers.ts';
import { effectSentence } from './effect-words.ts';
import type { Term } from './terms.ts';
import { tilesInWords } from './tile-words.ts';
import type { TrialTable } from './trial-table.ts';
import type { Effect, EffectVerdict, Tangle } from './types.ts';
import { unitEffect } from './unit-effect.ts';
import { zoneEffect } from './zone-effect.ts';

/** What each of so many comparisons is held to. */
const PARTS: Readonly<Record<number, string>> = { 2: 'half', 3: 'a third', 4: 'a quarter', 5: 'a fifth' };

/** Rounding in sums of shares must not turn a p of exactly the limit into one above it. */
const ROUNDING = 1e-12;

/**
 * The effect of every term of a table, each with its interval, its p and a sentence. A factor is said to matter only
 * where p (twice the smaller tail; times the number of contrasts of a factor with several levels, after Bonferroni) is
 * at most 1 − level, the factor is not tied to another, and enough is left to compare once others are held. Terms that cannot be compared at all are
 * returned in `untold` with the reason.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const zones = ['matt', 'matt', 'matt', 'matt', 'glossy', 'glossy', 'glossy', 'glossy'].map((grade, i) => zone(i + 1, grade))
 * const table = trialTable(zones, { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1 })
 * trialEffects(table, [], { level: 0.95, seed: 1 }).effects[0] // { verdict: 'matters', high: null, separated: true, p: 0.0285714 }
 */
export function trialEffects(
  table: TrialTable,
  tangles: readonly Tangle[],
  options: EffectOptions,
): { effects: Effect[]; untold: string[] } {
  const effects: Effect[] = [];
  const untold: string[] = [];
  for (const term of table.terms) {
    try {
      effects.push(effectOf(table, { term, tangles }, options));
    } catch (error) {
      if (!(error instanceof RequirementError)) throw error;
      untold.push(`${term.factor.name}, ${term.contrast}: ${error.message}.`);
    }
  }
  return { effects, untold };
}

function effectOf(
  table: TrialTable,
  { term, tangles }: { term: Term; tangles: readonly Tangle[] },
  options: EffectOptions,
): Effect {
  const tie = tangles.find((t) => t.kind === 'same' && t.factors.includes(term.factor.name));
  const others = heldBeside(table, term, tie);
  const { tooFew, ...numbers } =
    term.unitOfChange === 'zone'
      ? zoneEffect(table, { term, others }, options)
      : unitEffect(table, { term, others }, options);
  const contrasts = table.terms.filter((t) => t.factor === term.factor).length;
  const verdict = tie || tooFew ? 'cannot tell' : verdictOf(numbers, contrasts, 1 - options.level);
  const effect = {
    ...numbers,
    factor: term.factor.name,
    contrast: term.contrast,
    unitOfChange: term.unitOfChange,
    level: options.level,
    zones: table.zones.length,
    tiles: table.tiles.length,
    adjustedFor: [...new Set(others.map((o) => o.factor.name))].filter((n) => n !== term.factor.name),
    verdict,
    cautions: [...numbers.cautions, ...cautionsOf(table, term, { tie, contrasts })],
  };
  return { ...effect, sentence: effectSentence(effect, table.outcome) };
}

/** Other terms compared in the same units, but for those tied to this one and those that follow from the rest. */
function heldBeside(table: TrialTable, term: Term, tie: Tangle | undefined): Term[] {
  const columns = centredTerms(table, term.unitOfChange);
  const own = columns.find((c) => c.term === term)!.column;
  const kept: { term: Term; column: number[] }[] = [];
  for (const other of columns) {
    if (
      other.term === term ||
      (tie && other.term.factor !== term.factor && tie.factors.includes(other.term.factor.name))
    )
      continue;
    if (takeOut(other.column, [...kept.map((k) => k.column), own]).share > 0) kept.push(other);
  }
  return kept.map((k) => k.term);
}

function verdictOf(
  { p, smallestP }: Pick<EffectNumbers, 'p' | 'smallestP'>,
  contrasts: number,
  alpha: number,
): EffectVerdict {
  const limit = alpha / contrasts + ROUNDING;
  if (p !== null && p <= limit) return 'matters';
  return smallestP !== null && smallestP > limit ? 'cannot tell' : 'no sign';
}

function cautionsOf(
  table: TrialTable,
  term: Term,
  { tie, contrasts }: { tie: Tangle | undefined; contrasts: number },
): string[] {
  const informative = table.tiles.filter((t) => new Set(t.rows.map((i) => term.values[i])).size > 1);
  const units = term.unitOfChange;
  return [
    ...(tie ? [tie.sentence] : []),
    ...(contrasts > 1
      ? [
          `${term.factor.name} has ${contrasts + 1} levels: each of its ${contrasts} comparisons is held to ${PARTS[contrasts] ?? `one part in ${contrasts}`} of the limit, since more comparisons bring more chance finds.`,
        ]
      : []),
    ...(units === 'zone' && informative.length === 1
      ? [`It varied on ${tilesInWords([informative[0]!.label])} alone, so this says nothing of other tiles.`]
      : []),
    ...(units === 'firing'
      ? ['It varied only between firings, so everything else that differed between them goes with it.']
      : []),
  ];
}
