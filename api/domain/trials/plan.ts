import { RequirementError } from '../requirement.ts';
import { randomStream } from '../statistics/random.ts';
import { intoFirings, smallestTileP } from './blocks.ts';
import { shuffled } from './orders.ts';
import { checkPlan } from './plan-check.ts';
import { type Settings, settingsFor } from './settings.ts';
import type { Plan, PlannedTile, PlannedZone, PlanRequest, UnitOfChange } from './types.ts';

/** Letters of a tile's columns. */
const COLUMNS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';

/**
 * A plan: the settings of factors that change within a tile on the zones of every tile, those that change from tile
 * to tile over the tiles of each firing, those of firings over firings; zones at random on each tile, tiles at random
 * on the places of the fire, by a seed. States in words what cannot be told apart. Throws when there are more factors
 * than tiles or zones can tell, naming what would be needed.
 *
 * @example
 * const coats = { name: 'coats', unit: 'coats', at: 'zone', levels: [1, 2, 3, 4, 5, 6] }
 * const asked = { kind: 'ladder', factors: [coats], tiles: 4, rows: 2, columns: 3, firings: 1, replicates: 1, seed: 7 }
 * const plan = planTrial(asked)
 * plan.tiles.length // 4
 * plan.tiles[0].zones.map((z) => z.settings.coats).sort() // [1, 2, 3, 4, 5, 6]
 * planTrial({ ...asked, rows: 1 }) // throws 6 settings of zones, each 1 time, need 6 zones on a tile; found 3
 */
export function planTrial(request: PlanRequest): Plan {
  checkPlan(request);
  const { kind, factors, tiles, firings, replicates, seed } = request;
  const zonesOnTile = request.rows * request.columns;
  const { uniform } = randomStream(seed);
  const at = (unit: UnitOfChange) => factors.filter((f) => f.at === unit);
  const generators = request.generators ? { generators: request.generators } : {};
  const lists = {
    zone: settingsFor(kind, at('zone'), { room: Math.floor(zonesOnTile / replicates), ...generators }),
    tile: settingsFor(kind, at('tile'), { room: Math.floor(tiles / firings), ...generators }),
    firing: settingsFor(kind, at('firing'), { room: firings, ...generators }),
  };
  const wanted = lists.zone.settings.length * replicates;
  if (wanted > zonesOnTile)
    throw new RequirementError(
      `${lists.zone.settings.length} settings of zones, each ${replicates} ${replicates === 1 ? 'time' : 'times'}, need ${wanted} zones on a tile; found ${zonesOnTile}`,
    );
  const fires = firingSettings(lists.firing.settings, firings, uniform);
  const blocks = intoFirings(lists.tile, { tiles, firings, tileFactors: at('tile'), uniform });
  const planned = blocks.firings.flatMap((list, f) =>
    tilesOfFiring(list, { request, uniform, firing: f, fire: fires[f]!, zones: lists.zone.settings }),
  );
  return {
    kind,
    factors,
    tiles: planned.map((tile, i) => ({ ...tile, label: `T${i + 1}` })),
    runs: lists.zone.settings.length * lists.tile.settings.length * lists.firing.settings.length,
    seed,
    resolution: lowest([lists.zone.resolution, lists.tile.resolution, lists.firing.resolution]),
    generators: [...lists.zone.generators, ...lists.tile.generators, ...lists.firing.generators],
    aliases: [...lists.zone.aliases, ...lists.tile.aliases, ...lists.firing.aliases, ...blocks.aliases],
    notes: notesOf(request, blocks.firings, wanted),
  };
}

function lowest(values: readonly (number | null)[]): number | null {
  const known = values.filter((v) => v !== null);
  return known.length === 0 ? null : Math.min(...known);
}

function firingSettings(settings: readonly Settings[], firings: number, uniform: () => number): Settings[] {
  if (firings % settings.length !== 0)
    throw new RequirementError(
      `${settings.length} settings of firings need a whole multiple of ${settings.length} firings; found ${firings}`,
    );
  return shuffled(
    Array.from({ length: firings }, (_, i) => settings[i % settings.length]!),
    uniform,
  );
}

interface FiringRequest {
  readonly request: PlanRequest;
  readonly uniform: () => number;
  readonly firing: number;
  readonly fire: Settings;
  readonly zones: readonly Settings[];
}

function tilesOfFiring(
  list: readonly Settings[],
  { request, uniform, firing, fire, zones }: FiringRequest,
): Omit<PlannedTile, 'label'>[] {
  const names = request.places ?? list.map((_, i) => `${i + 1}`);
  const places = shuffled(names, uniform);
  return list.map((own, i) => {
    const settings = { ...fire, ...own };
    return {
      firing: firing + 1,
      place: places[i]!,
      settings,
      zones: zonesOfTile(zones, { ...request, settings, uniform }),
    };
  });
}

/**
 * Puts settings on random cells of a tile's grid, each `replicates` times; cells that are left over stay empty. In
 * order of the cells.
 *
 * @example
 * const zones = zonesOfTile([{ coats: 1 }], { rows: 1, columns: 2, replicates: 2, settings: { roast: 'long' }, uniform: () => 0 })
 * zones[1] // { label: 'B1', row: 1, column: 2, settings: { roast: 'long', coats: 1 } }
 */
export function zonesOfTile(
  settings: readonly Settings[],
  tile: Pick<PlanRequest, 'rows' | 'columns' | 'replicates'> & { settings: Settings; uniform: () => number },
): PlannedZone[] {
  const { rows, columns, replicates, uniform } = tile;
  const cells = shuffled(
    Array.from({ length: rows * columns }, (_, i) => i),
    uniform,
  );
  return Array.from({ length: replicates }, (_, r) => settings.map((s, run) => ({ s, run, r })))
    .flat()
    .map(({ s, run, r }, i) => ({ cell: cells[i]!, s, run, r }))
    .sort((a, b) => a.cell - b.cell)
    .map(({ cell, s, run, r }) => {
      const [row, column] = [Math.floor(cell / columns) + 1, (cell % columns) + 1];
      const label = `${COLUMNS[column - 1]}${row}`;
      return { label, row, column, run: run + 1, replicate: r + 1, settings: { ...tile.settings, ...s } };
    });
}

function notesOf(request: PlanRequest, firings: readonly (readonly Settings[])[], wanted: number): string[] {
  const left = request.rows * request.columns - wanted;
  const byTile = request.factors.filter((f) => f.at === 'tile');
  return [
    ...(left > 0 ? [`${left} of ${request.rows * request.columns} places on each tile stay empty.`] : []),
    ...byTile.map((f) => {
      const p = smallestTileP(firings, f.name);
      const can = p <= 0.05 ? 'so that it can be settled' : 'so that this plan by itself cannot settle it';
      return `${f.name} changes only from tile to tile: tiles are what is compared, and no outcome could give a p below ${p.toPrecision(2)}, ${can} at .05.`;
    }),
    ...request.factors
      .filter((f) => f.at === 'firing')
      .map(
        (f) =>
          `${f.name} changes only from firing to firing: whatever else differs between firings goes with it.`,
      ),
    ...(request.firings > 1 ? ['Tiles are compared within their firing.'] : []),
  ];
}
