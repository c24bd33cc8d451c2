import { RequirementError } from '../requirement.ts';
import { fitLikelihood, type LikelihoodFit } from './likelihood.ts';
import { profileLimits } from './profile-limits.ts';
import type { Term } from './terms.ts';
import type { TrialTable } from './trial-table.ts';
import type { FittedModel, ModelTerm, Tangle } from './types.ts';
import { type TrialModel, termName, withinTilesModel } from './within-tiles.ts';

/** With more constants than this a regression is slow, and biased by their number. */
const MOST_TILES = 30;

/**
 * The regressions that stand beside the permutation answers: Firth's logistic regression for two outcomes,
 * proportional odds for three grades (maximum likelihood; with Jeffreys' penalty where grades are separated). With
 * factors that vary within tiles: those factors, one constant a tile, profile limits. Without: the tiles' factors
 * without any limits, since zones of one tile are not independent. Fits that fail are named in `unfitted`.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const table = trialTable([zone(1, 'matt'), zone(2, 'glossy'), zone(3, 'glossy')], { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1 })
 * fittedModels(table, [], 0.95).models[0] // { kind: 'firth-logistic', separated: true, n: 3, parameters: 2 }
 */
export function fittedModels(
  table: TrialTable,
  tangles: readonly Tangle[],
  level: number,
): { models: FittedModel[]; unfitted: string[] } {
  if (table.outcome === 'share' || new Set(table.scores).size === 1) return { models: [], unfitted: [] };
  if (table.tiles.length > MOST_TILES)
    return {
      models: [],
      unfitted: [
        `No regression stands beside: one constant for each of ${table.tiles.length} tiles would be too many.`,
      ],
    };
  const tied = tangles.flatMap((t) => (t.kind === 'same' ? t.factors.slice(1) : []));
  const free = table.terms.filter((t) => !tied.includes(t.factor.name));
  const within = free.filter((t) => t.unitOfChange === 'zone');
  try {
    return {
      models: [within.length > 0 ? withinTiles(table, within, level) : betweenTiles(table, free)],
      unfitted: [],
    };
  } catch (error) {
    if (!(error instanceof RequirementError)) throw error;
    return { models: [], unfitted: [`No regression could be fitted: ${error.message}.`] };
  }
}

function kindOf({ model, separated }: TrialModel): { kind: FittedModel['kind']; penalised: boolean } {
  if (!model.names[0]!.startsWith('threshold')) return { kind: 'firth-logistic', penalised: true };
  return separated.length > 0
    ? { kind: 'penalised-proportional-odds', penalised: true }
    : { kind: 'proportional-odds', penalised: false };
}

function withinTiles(table: TrialTable, terms: readonly Term[], level: number): FittedModel {
  const fitted = withinTilesModel(table, terms);
  const { kind, penalised } = kindOf(fitted);
  const fit = fitLikelihood(fitted.model, { penalised });
  const asked = new Set(terms.map(termName));
  return {
    ...shared(table, fitted, kind),
    terms: fitted.model.names.map((name, place) =>
      asked.has(name)
        ? { name, ...profileLimits(fitted.model, fit, { place, penalised, level }) }
        : bare(name, fit, place),
    ),
    note: `One constant a tile, so that only zones of one tile are compared with each other.${separationNote(fitted)}`,
  };
}

function betweenTiles(table: TrialTable, terms: readonly Term[]): FittedModel {
  const fitted = withinTilesModel(table, terms, { tileConstants: false });
  const { kind, penalised } = kindOf(fitted);
  const fit = fitLikelihood(fitted.model, { penalised });
  return {
    ...shared(table, fitted, kind),
    terms: fitted.model.names.map((name, place) => ({ ...bare(name, fit, place), se: null })),
    note: `No limits: the factors vary only between tiles, and zones of one tile are not independent; see the permutation of tiles.${separationNote(fitted)}`,
  };
}

const shared = (table: TrialTable, { model, separated }: TrialModel, kind: FittedModel['kind']) => ({
  kind,
  separated: separated.length > 0,
  n: table.zones.length,
  parameters: model.names.length,
});

const bare = (name: string, fit: LikelihoodFit, place: number): ModelTerm => ({
  name,
  estimate: fit.at[place]!,
  se: Math.sqrt(fit.covariance[place]![place]!),
  low: null,
  high: null,
  p: null,
});

const separationNote = ({ separated }: TrialModel) =>
  separated.length > 0
    ? ` The grades follow wholly, or nearly so, from ${separated.join('; ')}: plain maximum likelihood has no answer there, and the penalty (Firth 1993) keeps the estimate finite.`
    : '';
