import type { Tile, ZoneRecord } from '../contract/tile.ts';
import type { FoundFactor } from '../contract/trial.ts';
import type { Factor, Level, Zone } from '../domain/trials/types.ts';
import { type FiringHeat, heatFactors, heatNotes, isOfFire, unitOfHeat } from './trial-heat.ts';

/** Names under which what every tile has is analysed; settings of one's own stand beside them. */
export const COATS = 'coats';
export const THICKNESS = 'thickness';
const BATCH = 'batch';
const PLACE = 'place in the fire';
const UNITS: Readonly<Record<string, string>> = { [COATS]: 'coats', [THICKNESS]: 'µm' };

/** The zones of tiles as the domain takes them: settings of zone, tile and fire side by side. */
export function trialZones(tiles: readonly Tile[], firings: readonly FiringHeat[]): Zone[] {
  const used = firings.filter((one) => tiles.some((tile) => tile.firing === one.id));
  const heat = heatFactors(used);
  return tiles.flatMap((tile) => {
    const whole = { ...(heat.get(tile.firing ?? '') ?? {}), ...ofTile(tile) };
    return tile.zones.map((zone) => ({
      id: zone.id,
      label: zone.label,
      tile: tile.id,
      tileLabel: tile.label,
      firing: tile.firing,
      factors: { ...whole, ...ofZone(zone) },
      grade: zone.grade,
      glassyShare: zone.glassyShare,
    }));
  });
}

type Noted = Record<string, Level>;

function ofZone({ coats, micrometres, settings }: ZoneRecord): Noted {
  return {
    ...settings,
    ...(coats === null ? {} : { [COATS]: coats }),
    ...(micrometres === null ? {} : { [THICKNESS]: micrometres }),
  };
}

function ofTile({ settings, batchName, place }: Tile): Noted {
  return {
    ...settings,
    ...(batchName === null ? {} : { [BATCH]: batchName }),
    ...(place === '' ? {} : { [PLACE]: place }),
  };
}

/** Factors that the zones hold, numbers with a step that suits their range. */
export function factorsIn(zones: readonly Zone[], firings: readonly FiringHeat[]): FoundFactor[] {
  const names = [...new Set(zones.flatMap((zone) => Object.keys(zone.factors)))];
  return names
    .map((name) => {
      const noted = zones.flatMap((zone) => zone.factors[name] ?? []);
      const values = [...new Set(noted)].sort(inOrder);
      return {
        ...{ factor: factorOf(name, values), values, zones: noted.length, from: levelOf(name, zones) },
        notes: heatNotes(name, zones, firings),
      };
    })
    .sort((a, b) => ORDER.indexOf(a.from) - ORDER.indexOf(b.from));
}

const ORDER = ['zone', 'tile', 'firing'] as const;

const inOrder = (a: Level, b: Level): number =>
  typeof a === 'number' && typeof b === 'number' ? a - b : String(a) < String(b) ? -1 : 1;

function factorOf(name: string, values: readonly Level[]): Factor {
  const numbers = values.filter((value) => typeof value === 'number');
  if (numbers.length < values.length) return { name, kind: 'category', base: null };
  const range = Math.max(...numbers) - Math.min(...numbers);
  return {
    name,
    kind: 'number',
    unit: UNITS[name] ?? unitOfHeat(name) ?? unitIn(name),
    step: stepFor(range),
  };
}

/** `PbO as weighed (wt%)` → `wt%`. */
const unitIn = (name: string): string => /\(([^()]{1,20})\)$/.exec(name)?.[1] ?? '';

/** A round number of at most the range: an effect per step should be one that a potter could set. */
const stepFor = (range: number): number => (range > 0 ? 10 ** Math.floor(Math.log10(range)) : 1);

function levelOf(name: string, zones: readonly Zone[]): FoundFactor['from'] {
  if (isOfFire(name)) return 'firing';
  const tiles = [...new Set(zones.map((zone) => zone.tile))];
  const several = tiles.some(
    (tile) => new Set(zones.filter((z) => z.tile === tile).map((z) => z.factors[name])).size > 1,
  );
  return several ? 'zone' : 'tile';
}
