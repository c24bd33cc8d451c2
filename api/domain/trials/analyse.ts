import { listInWords } from '../placement/words.ts';
import { answerInWords } from './answer-words.ts';
import { trialEffects } from './effects.ts';
import { fittedModels } from './fitted-models.ts';
import { findTangles } from './tangles.ts';
import { NO_FIRING, type TrialTable, trialTable } from './trial-table.ts';
import type { Grade, TrialAnalysis, TrialRequest, Zone } from './types.ts';

/**
 * What mattered, from the zones of chosen tiles. Factors that vary within tiles are compared within tiles only;
 * factors that vary only between tiles with each tile as one unit, within its firing; so zones of one tile never count
 * as independent tiles. Each effect has an interval by inverting a permutation test: exact, sampled, or approximate
 * where other factors of the same units are taken out first; or, for two grades, by penalised likelihood where that is
 * too large to count. Factors that moved together are named with their tiles, and where one of them at least mattered that is said; the regression fits stand beside. Coverage by simulation: docs/coverage-trials.md. Throws as `trialTable`.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: 'F1', factors: { coats, air: 'smoky' }, grade, glassyShare: null })
 * const zones = ['matt', 'matt', 'matt', 'matt', 'glossy', 'glossy', 'glossy', 'glossy'].map((grade, i) => zone(i + 1, grade))
 * const factors = [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }, { name: 'air', kind: 'category', base: null }]
 * const found = analyseTrial(zones, { factors, outcome: 'glossy', seed: 1 })
 * found.effects.map((e) => e.verdict) // ['matters']
 * found.tangles[0].sentence // 'air was smoky in every zone of tile T1, so nothing can be said of it.'
 */
export function analyseTrial(zones: readonly Zone[], request: TrialRequest): TrialAnalysis {
  const table = trialTable(zones, request);
  const level = request.level ?? 0.95;
  const tangles = findTangles(table);
  const { effects, joint, untold } = trialEffects(table, tangles, { level, seed: request.seed });
  const { models, unfitted } = fittedModels(table, tangles, level);
  return {
    outcome: request.outcome,
    zones: table.zones.length,
    tiles: table.tiles.length,
    firings: new Set(table.tiles.map((t) => t.firing).filter((f) => f !== NO_FIRING)).size,
    counts: countGrades(table),
    leftOut: table.leftOut,
    effects,
    tangles,
    models,
    sentence: answerInWords(table, { effects, joint, tangles }),
    cautions: [...untold, ...unfitted, ...cautions(table)],
  };
}

function countGrades({ zones }: TrialTable): Record<Grade, number> {
  const count = (grade: Grade) => zones.filter((z) => z.grade === grade).length;
  return { matt: count('matt'), satin: count('satin'), glossy: count('glossy') };
}

function cautions({ tiles, leftOut }: TrialTable): string[] {
  const unknown = tiles.filter((t) => t.firing === NO_FIRING).map((t) => t.label);
  return [
    ...(unknown.length > 1
      ? [`No firing is noted for ${listInWords(unknown)}: they are compared as if fired together.`]
      : unknown.length === 1 && tiles.length > 1
        ? [`No firing is noted for ${unknown[0]}: as a whole tile it is compared with no other.`]
        : []),
    ...(leftOut.length > 0
      ? [
          `${leftOut.length === 1 ? 'One zone was' : `${leftOut.length} zones were`} left out, listed with the reason.`,
        ]
      : []),
  ];
}
