import { RequirementError } from '../domain/requirement.ts';
import type { Grade } from '../domain/trials/types.ts';

type Setting = number | string;
/** A zone as it is kept: where it lies and what came of it. */
export interface LyingZone {
  readonly label: string;
  readonly row: number | null;
  readonly column: number | null;
  readonly picture: string | null;
  readonly outline: readonly (readonly [number, number])[] | null;
  readonly coats: number | null;
  readonly micrometres: number | null;
  readonly grade: Grade | null;
  readonly glassyShare: number | null;
}
export interface LyingTile {
  readonly label: string;
  readonly firing: string | null;
  readonly firingName: string | null;
  readonly rows: number;
  readonly columns: number;
  readonly settings: Readonly<Record<string, Setting>>;
  readonly zones: readonly LyingZone[];
  readonly pictures: readonly { readonly id: string; readonly width: number; readonly height: number }[];
}

export interface ShownZone {
  readonly label: string;
  /** Corners, shares of the panel's width and height. */
  readonly corners: readonly (readonly [number, number])[];
  readonly grade: Grade | null;
  /** `3 coats`, and where room is short `3`; empty where it was not noted. */
  readonly thickness: string;
  readonly short: string;
  /** The grade, or the share that is glassy, in a word or two. */
  readonly outcome: string;
}
export interface ZonesPanel {
  readonly title: string;
  /** What the whole tile was set to, one thing each. */
  readonly under: readonly string[];
  /** Zones across and up: a grid may be stretched. Of a picture only its width over its height. */
  readonly grid: readonly [columns: number, rows: number] | null;
  readonly ratio: number | null;
  readonly zones: readonly ShownZone[];
}
export interface ZonesData {
  readonly id: string;
  readonly title: string;
  readonly panels: readonly ZonesPanel[];
  readonly thickness: 'coats' | 'micrometres';
  readonly tiles: number;
  readonly firings: readonly string[];
  /** Tiles without a firing; where zones were judged all the same, only its note is missing. */
  readonly unfired: readonly { readonly label: string; readonly judged: boolean }[];
  /** Zones with neither a place on a grid nor an outline in a picture that is there. */
  readonly unplaced: number;
}

/** The tiles as they lie: each with its grid, and each picture that zones are drawn on. */
export function zonesData(tiles: readonly LyingTile[], id: string): ZonesData {
  const all = tiles.flatMap((tile) => tile.zones);
  const noted = (of: 'coats' | 'micrometres') => all.filter((zone) => zone[of] !== null).length;
  const thickness = noted('micrometres') >= noted('coats') ? 'micrometres' : 'coats';
  const panels = tiles.flatMap((tile) => panelsOf(tile, thickness));
  if (panels.length === 0)
    throw new RequirementError(
      'a figure of zones shows zones with a place on a grid or on a picture; the tiles chosen have none',
    );
  const shown = panels.reduce((sum, panel) => sum + panel.zones.length, 0);
  const firings = [...new Set(tiles.flatMap(({ firingName }) => firingName ?? []))];
  return {
    ...{ id, title: 'Gloss of the zones, as the tiles lie', panels, thickness },
    ...{ tiles: tiles.length, firings, unfired: unfiredOf(tiles), unplaced: all.length - shown },
  };
}

const unfiredOf = (tiles: readonly LyingTile[]): ZonesData['unfired'] =>
  tiles
    .filter(({ firing }) => firing === null)
    .map(({ label, zones }) => ({
      label,
      judged: zones.some(({ grade, glassyShare }) => grade !== null || glassyShare !== null),
    }));

function panelsOf(tile: LyingTile, thickness: ZonesData['thickness']): ZonesPanel[] {
  const under = Object.entries(tile.settings).map(([name, value]) => `${name} ${value}`);
  const shown = (zone: LyingZone, corners: ShownZone['corners']) => shownZone(zone, corners, thickness);
  const { rows, columns, zones, label } = tile;
  const onGrid = zones.filter((zone) => zone.row !== null && zone.column !== null);
  const grid: ZonesPanel = {
    ...{ title: label, under, grid: [columns, rows], ratio: null },
    zones: onGrid.map((zone) => shown(zone, cell(zone, { rows, columns }))),
  };
  const pictures = tile.pictures.map((picture, i, { length }): ZonesPanel => {
    const drawn = zones.filter((zone) => !onGrid.includes(zone) && zone.picture === picture.id);
    return {
      ...{ title: length > 1 ? `${label}, picture ${i + 1}` : label, under },
      ...{ grid: null, ratio: picture.width / picture.height },
      zones: drawn.flatMap((zone) => (zone.outline === null ? [] : [shown(zone, zone.outline)])),
    };
  });
  return [grid, ...pictures].filter((panel) => panel.zones.length > 0);
}

function cell({ row, column }: LyingZone, grid: { readonly rows: number; readonly columns: number }) {
  const [left, right] = [(column! - 1) / grid.columns, column! / grid.columns];
  const [top, bottom] = [(row! - 1) / grid.rows, row! / grid.rows];
  return [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ] as const;
}

function shownZone(zone: LyingZone, corners: ShownZone['corners'], by: ZonesData['thickness']): ShownZone {
  const { label, grade, glassyShare } = zone;
  const amount = zone[by];
  const unit = by === 'micrometres' ? 'µm' : amount === 1 ? 'coat' : 'coats';
  return {
    ...{ label, corners, grade, short: amount === null ? '' : String(amount) },
    thickness: amount === null ? '' : `${amount} ${unit}`,
    outcome: grade ?? (glassyShare === null ? 'not judged' : `${Math.round(100 * glassyShare)} % glassy`),
  };
}
