import { RequirementError } from '../requirement.ts';
import { quantile } from '../statistics/moments.ts';
import { beliefFrom, type OptionTerm, rowFor } from './belief.ts';
import { nextTileReason } from './next-tile-words.ts';
import { optionTerms } from './option-terms.ts';
import { expectedShrinkage, proposalScore, type Rows } from './proposal-score.ts';
import { bestTile } from './proposal-search.ts';
import type { Settings } from './settings.ts';
import { type TrialTable, trialTable } from './trial-table.ts';
import type { Level, NextTile, NextTileRequest, PlannedFactor, Zone } from './types.ts';

/**
 * The next tile that would tell most: of all tile settings on offer, and zones with repeats, those with the greatest
 * mean log determinant of the information on the effects, over draws around the present Firth estimate (Bayesian
 * D-optimality; Chaloner & Verdinelli 1995, doi 10.1214/ss/1177009939); with `interest`, of the information on that
 * factor alone. Factors of zones are told of within tiles only, factors of tiles between tiles only, as in the
 * analysis. Factors without an option keep the middle or most frequent setting. Shrinkage is by that model, before
 * and after. Throws when nothing is on offer, when more is on offer than can be weighed, or for a share of glassy
 * area.
 *
 * @example
 * const zone = (coats, grade) => ({ id: `${coats}`, label: `${coats}`, tile: 't', tileLabel: 'T1', firing: null, factors: { coats }, grade, glassyShare: null })
 * const zones = [zone(1, 'matt'), zone(2, 'matt'), zone(3, 'glossy'), zone(4, 'matt'), zone(5, 'glossy'), zone(6, 'glossy')]
 * const asked = { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1, options: [{ name: 'coats', at: 'zone', values: [1, 2, 3, 4, 5, 6] }], zonesOnTile: 4 }
 * const next = proposeTile(zones, asked)
 * next.zones.length // 4
 * next.shrinkage[0].expected < next.shrinkage[0].now // true
 * proposeTile(zones, { ...asked, options: [] }) // throws a next tile needs a setting that can be chosen; found no options
 */
export function proposeTile(zones: readonly Zone[], request: NextTileRequest): NextTile {
  checkRequest(request);
  const outcome = request.outcome === 'grade' ? 'glossy' : request.outcome;
  const table = trialTable(zones, { ...request, outcome });
  const terms = optionTerms(table, request.factors, request.options);
  const model = { spread: request.tileSpread ?? 1, within: withinTiles(table, terms, request) };
  const belief = beliefFrom(table, terms, { model, seed: request.seed });
  const score = proposalScore(belief, interestPlaces(terms, request.interest));
  const held = heldSettings(table, request);
  const best = bestTile(request, { held, terms, score });
  const before = score([]);
  const repeat = bestRepeat(table, { terms, score, before });
  const proposal = {
    tile: best.tile,
    zones: best.zones,
    factors: plannedFactors(request, held),
    shrinkage: expectedShrinkage(belief, terms, { rows: best.rows, level: request.level ?? 0.95 }),
    gain: best.choice.score - before,
    gainOfRepeat: repeat.gain,
    candidates: best.candidates,
    exhaustive: best.choice.exhaustive,
  };
  return { ...proposal, ...nextTileReason(table, request, { proposal, repeat, belief, rows: best.rows }) };
}

function checkRequest({ options, zonesOnTile, outcome, interest, factors }: NextTileRequest): void {
  if (outcome === 'share')
    throw new RequirementError('a next tile needs gloss grades; a share of glassy area has none');
  if (!options.some((o) => o.values.length > 0))
    throw new RequirementError('a next tile needs a setting that can be chosen; found no options');
  if (!(Number.isInteger(zonesOnTile) && zonesOnTile >= 1 && zonesOnTile <= 60))
    throw new RequirementError(`a next tile needs 1 to 60 zones, a whole number; found ${zonesOnTile}`);
  if (interest !== undefined && !factors.some((f) => f.name === interest))
    throw new RequirementError(`the factor most wanted needs to be analysed; found ${interest}`);
}

/** Columns of factors that are compared within tiles: so far, or on the tile to come. */
function withinTiles(
  table: TrialTable,
  terms: readonly OptionTerm[],
  { options }: NextTileRequest,
): boolean[] {
  const names = new Set([
    ...table.terms.filter((t) => t.unitOfChange === 'zone').map((t) => t.factor.name),
    ...options.filter((o) => o.at === 'zone').map((o) => o.name),
  ]);
  return [false, ...terms.map((t) => names.has(t.factor.name))];
}

function heldSettings({ zones }: TrialTable, { factors, options }: NextTileRequest): Settings {
  const loose = factors.filter((f) => !options.some((o) => o.name === f.name));
  return Object.fromEntries(
    loose.map((f): [string, Level] => {
      const settings = zones.map((z) => z.factors[f.name]!);
      const count = (level: Level) => settings.filter((s) => s === level).length;
      if (f.kind === 'number') return [f.name, quantile(settings.map(Number), 0.5)];
      return [f.name, settings.reduce((a, b) => (count(b) > count(a) ? b : a))];
    }),
  );
}

function plannedFactors({ factors, options }: NextTileRequest, held: Settings): PlannedFactor[] {
  return factors.map((f) => {
    const option = options.find((o) => o.name === f.name);
    const unit = f.kind === 'number' ? f.unit : null;
    return { name: f.name, unit, at: option?.at ?? 'tile', levels: option?.values ?? [held[f.name]!] };
  });
}

function interestPlaces(terms: readonly OptionTerm[], interest: string | undefined): number[] {
  const all = terms.map((_, k) => k + 1);
  return interest === undefined ? all : all.filter((k) => terms[k - 1]!.factor.name === interest);
}

/** What the most telling of the tiles fired so far would tell if it were made again. */
function bestRepeat(
  table: TrialTable,
  { terms, score, before }: { terms: readonly OptionTerm[]; score: (rows: Rows) => number; before: number },
): { label: string; gain: number } {
  return table.tiles
    .map(({ label, rows }) => ({
      label,
      gain: score(rows.map((i) => rowFor(terms, table.zones[i]!.factors))) - before,
    }))
    .reduce((a, b) => (b.gain > a.gain ? b : a));
}
