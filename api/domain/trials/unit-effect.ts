import { listInWords } from '../placement/words.ts';
import { centredTerms, centreWithin, takeOut, unitMeans, unitsOf } from './columns.ts';
import type { EffectNumbers, EffectOptions } from './effect-numbers.ts';
import { permutedEffect } from './permuted-effect.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';

/** Means of a zone's factor are taken as alike between tiles within this share of its range. */
const ALIKE = 1e-9;

/**
 * The effect of a factor that varies only between tiles (compared within firings) or only between firings: each tile,
 * or firing, is one unit with its mean outcome (the share of its zones that are glossy, the mean grade, or the mean
 * glassy share), however many zones it has; the settings are permuted among units within blocks. Where zones of
 * different tiles had different settings of factors that vary within tiles, their straight-line effect within tiles
 * is taken out first; likewise other factors of the same unit (`heldSlope`); p is then approximate. Throws where no
 * block has two settings left.
 *
 * @example
 * const zone = (tile, roast, grade) => ({ id: tile, label: 'A1', tile, tileLabel: tile, firing: 'F1', factors: { roast }, grade, glassyShare: null })
 * const zones = [zone('1', 'short', 'matt'), zone('2', 'short', 'matt'), zone('3', 'long', 'glossy'), zone('4', 'long', 'glossy')]
 * const table = trialTable(zones, { factors: [{ name: 'roast', kind: 'category', base: 'short' }], outcome: 'glossy', seed: 1 })
 * unitEffect(table, { term: table.terms[0], others: [] }, { level: 0.95, seed: 1 }) // { scale: 'share', estimate: 1, low: null, high: null, p: 0.33333, arrangements: 6 }
 */
export function unitEffect(
  table: TrialTable,
  { term, others }: { term: Term; others: readonly Term[] },
  options: EffectOptions,
): EffectNumbers {
  const { blocks, rows } = unitsOf(table, term.unitOfChange);
  const { scores, taken } = withoutZoneFactors(table);
  const found = permutedEffect(
    {
      units: { blocks, x: unitMeans(term.values, rows), y: unitMeans(scores, rows) },
      term,
      others: others.map((o) => ({ term: o, values: unitMeans(o.values, rows) })),
      scale: table.outcome === 'grade' ? 'grades' : 'share',
    },
    options,
  );
  if (taken.length === 0) return found;
  const already = found.method === 'approximate-permutation';
  const caution = `Tiles differed in ${listInWords(taken)}; ${taken.length === 1 ? 'its straight-line effect' : 'their straight-line effects'} within tiles ${taken.length === 1 ? 'was' : 'were'} taken out${already ? ' too' : ', so p is approximate'}.`;
  return { ...found, method: 'approximate-permutation', cautions: [...found.cautions, caution] };
}

/** Scores with the within-tile effects of unevenly spread zone factors taken out, and the names of these. */
function withoutZoneFactors(table: TrialTable): { scores: readonly number[]; taken: string[] } {
  const uneven = centredTerms(table, 'zone').filter(({ term }) => isUneven(table, term));
  if (uneven.length === 0) return { scores: table.scores, taken: [] };
  const { blocks } = unitsOf(table, 'zone');
  const within = centreWithin(table.scores, blocks);
  const slopes = slopesOf(
    within,
    uneven.map((u) => u.column),
  );
  const scores = table.scores.map((s, i) =>
    uneven.reduce((left, { term }, k) => left - slopes[k]! * term.values[i]!, s),
  );
  return { scores, taken: [...new Set(uneven.map(({ term }) => term.factor.name))] };
}

function isUneven({ tiles }: TrialTable, { values }: Term): boolean {
  const means = unitMeans(
    values,
    tiles.map((t) => t.rows),
  );
  const range = Math.max(...values) - Math.min(...values);
  return Math.max(...means) - Math.min(...means) > ALIKE * range;
}

/** Least-squares slopes: each on what the other columns leave of its own. A column tied to others gets none. */
function slopesOf(y: readonly number[], columns: readonly (readonly number[])[]): number[] {
  const taken: number[] = [];
  return columns.map((column, k) => {
    const others = columns.filter((_, j) => j !== k && (j > k || taken.includes(j)));
    const { left, share } = takeOut(column, others);
    if (share === 0) return 0;
    taken.push(k);
    const own = left.reduce((sum, v) => sum + v * v, 0);
    return left.reduce((sum, v, i) => sum + v * y[i]!, 0) / own;
  });
}
