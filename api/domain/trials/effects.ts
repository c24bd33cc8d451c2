import { RequirementError } from '../requirement.ts';
import { centredTerms, takeOut } from './columns.ts';
import type { EffectNumbers, EffectOptions } from './effect-numbers.ts';
import { effectSentence } from './effect-words.ts';
import { type Joint, jointEffects, type TestedTerm, tiedWith } from './jointly.ts';
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
 * at most 1 − level, the factor is not tied to another, and enough is left to compare once others are held. Of tied factors
 * `joint` says where one of them at least matters. Terms that cannot be compared at all are returned in `untold` with
 * the reason.
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
): { effects: Effect[]; joint: Joint[]; untold: string[] } {
  const tested: (TestedTerm & { readonly asked: Asked; readonly found: EffectNumbers })[] = [];
  const untold: string[] = [];
  for (const term of table.terms) {
    const tied = tiedWith(term.factor.name, tangles);
    const asked = { term, tied, others: heldBeside(table, term, tied) };
    try {
      const effect = term.unitOfChange === 'zone' ? zoneEffect : unitEffect;
      tested.push({ term, asked, found: effect(table, asked, options) });
    } catch (error) {
      if (!(error instanceof RequirementError)) throw error;
      untold.push(`${term.factor.name}, ${term.contrast}: ${error.message}.`);
    }
  }
  const joint = jointEffects(table, tangles, { tested, level: options.level });
  const words = [...tangles.filter((t) => t.kind === 'same'), ...joint];
  const effects = tested.map(({ asked, found }) => {
    const ties = words.filter((t) => t.factors.includes(asked.term.factor.name)).map((t) => t.sentence);
    return effectOf(table, { ...asked, ties }, { found, level: options.level });
  });
  return { effects, joint, untold };
}

interface Asked {
  readonly term: Term;
  /** Names of factors tied to it, its own among them. */
  readonly tied: readonly string[];
  readonly others: readonly Term[];
}

function effectOf(
  table: TrialTable,
  { term, others, ties }: Asked & { readonly ties: readonly string[] },
  { found: { tooFew, ...numbers }, level }: { found: EffectNumbers; level: number },
): Effect {
  const contrasts = table.terms.filter((t) => t.factor === term.factor).length;
  const untold = ties.length > 0 || tooFew;
  const effect = {
    ...numbers,
    factor: term.factor.name,
    contrast: term.contrast,
    unitOfChange: term.unitOfChange,
    level,
    zones: table.zones.length,
    tiles: table.tiles.length,
    adjustedFor: [...new Set(others.map((o) => o.factor.name))].filter((n) => n !== term.factor.name),
    verdict: untold ? ('cannot tell' as const) : verdictOf(numbers, contrasts, 1 - level),
    cautions: [...numbers.cautions, ...ties, ...cautionsOf(table, term, contrasts)],
  };
  return { ...effect, sentence: effectSentence(effect, table.outcome) };
}

/** Other terms compared in the same units, but for those tied to this one and those that follow from the rest. */
function heldBeside(table: TrialTable, term: Term, tied: readonly string[]): Term[] {
  const columns = centredTerms(table, term.unitOfChange);
  const own = columns.find((c) => c.term === term)!.column;
  const kept: { term: Term; column: number[] }[] = [];
  for (const other of columns) {
    const together = other.term.factor !== term.factor && tied.includes(other.term.factor.name);
    if (other.term === term || together) continue;
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

function cautionsOf(table: TrialTable, term: Term, contrasts: number): string[] {
  const informative = table.tiles.filter((t) => new Set(t.rows.map((i) => term.values[i])).size > 1);
  const units = term.unitOfChange;
  return [
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
