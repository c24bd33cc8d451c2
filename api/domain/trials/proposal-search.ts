import { RequirementError } from '../requirement.ts';
import { type OptionTerm, rowFor } from './belief.ts';
import { type Choice, chooseBest } from './exchange.ts';
import type { Rows } from './proposal-score.ts';
import { everyCombination, type Settings } from './settings.ts';
import type { NextTileRequest, Option } from './types.ts';

const MOST_ZONE_SETTINGS = 400;
const MOST_TILE_SETTINGS = 60;
/** Fewer choices of zones than this are all weighed. */
const ALL = 500;

/** A tile filled as well as can be. */
export interface FilledTile {
  readonly tile: Settings;
  readonly zones: readonly Settings[];
  readonly rows: Rows;
  readonly choice: Choice;
  /** Settings of a zone and of the tile that were weighed together. */
  readonly candidates: number;
}

/** What the search needs beside the request. */
export interface SearchTools {
  /** Settings of factors that have no option. */
  readonly held: Settings;
  readonly terms: readonly OptionTerm[];
  readonly score: (rows: Rows) => number;
}

/**
 * The tile with the highest score: the best zones for every setting of the tile on offer, then the best of those.
 * Throws when more is on offer than can be weighed, or all of it is forbidden.
 *
 * @example
 * const request = { options: [{ name: 'coats', at: 'zone', values: [1, 2, 3] }], zonesOnTile: 2, seed: 1, forbidden: [{ coats: 3 }] }
 * const terms = [{ factor: { name: 'coats' }, column: (v) => v }]
 * bestTile(request, { held: {}, terms, score: (rows) => rows[0][1] * rows[1][1] }).zones // [{ coats: 2 }, { coats: 2 }]
 */
export function bestTile(request: NextTileRequest, tools: SearchTools): FilledTile {
  const at = (unit: Option['at']) => request.options.filter((o) => o.at === unit);
  const tiles = combinations(at('tile'), MOST_TILE_SETTINGS, 'the tile');
  const zones = combinations(at('zone'), MOST_ZONE_SETTINGS, 'a zone');
  const filled = tiles.flatMap((own) => fill({ ...tools.held, ...own }, { zones, request, tools }));
  if (filled.length === 0)
    throw new RequirementError('a next tile needs one setting that is not forbidden; found none');
  const best = filled.reduce((a, b) => (b.choice.score > a.choice.score + 1e-10 ? b : a));
  return { ...best, candidates: filled.reduce((sum, f) => sum + f.candidates, 0) };
}

function combinations(options: readonly Option[], most: number, what: string): Settings[] {
  const count = options.reduce((product, o) => product * o.values.length, 1);
  if (count > most)
    throw new RequirementError(`a next tile can weigh ${most} settings of ${what}; found ${count}`);
  return everyCombination(options.map(({ name, values }) => ({ name, levels: values })));
}

function allowed(settings: Settings, { forbidden = [] }: NextTileRequest): boolean {
  return !forbidden.some((f) => Object.entries(f).every(([name, level]) => settings[name] === level));
}

function fill(
  tile: Settings,
  { zones, request, tools }: { zones: readonly Settings[]; request: NextTileRequest; tools: SearchTools },
): FilledTile[] {
  const fits = zones.filter((z) => allowed({ ...tile, ...z }, request));
  if (fits.length === 0) return [];
  const rows = fits.map((z) => rowFor(tools.terms, { ...tile, ...z }));
  const choice = chooseBest({
    candidates: fits.length,
    count: request.zonesOnTile,
    score: (taken) => tools.score(taken.map((i) => rows[i]!)),
    seed: request.seed,
    most: ALL,
  });
  const of = <T>(all: readonly T[]) => choice.taken.map((i) => all[i]!);
  return [{ tile, zones: of(fits), rows: of(rows), choice, candidates: fits.length }];
}
