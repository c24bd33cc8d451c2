import type { Tile } from '../../../../api/contract/tile.ts';

/** How thick the paint of a tile lies, from its zones, in words a reader can check. */
export interface ZoneThickness {
  readonly label: string;
  /** Mean of the zones, µm. */
  readonly mean: number;
  /** Standard deviation between zones, µm; null from one zone. */
  readonly spread: number | null;
  readonly zones: readonly string[];
}

/**
 * Thickness of tiles from their zones: of the zones that analyses were made of where any are, else of all that have
 * theirs noted. Tiles without any are left out.
 */
export function thicknessesOf(
  tiles: readonly Pick<Tile, 'label' | 'zones'>[],
  analysed: ReadonlySet<string>,
): ZoneThickness[] {
  return tiles.flatMap(({ label, zones }) => {
    const noted = zones.filter((zone) => zone.micrometres !== null);
    const read = noted.filter((zone) => analysed.has(zone.id));
    const used = read.length > 0 ? read : noted;
    if (used.length === 0) return [];
    const values = used.map((zone) => zone.micrometres!);
    const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
    const square = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
    const spread = values.length > 1 ? Math.sqrt(square / (values.length - 1)) : null;
    return [{ label, mean, spread, zones: used.map((zone) => zone.label) }];
  });
}

interface Share {
  readonly f: number;
  readonly sigma: number;
}
const rounded = (value: number) => String(Number(value.toPrecision(3)));

/** `Tile 5; 64; 21; 0.17; 0.03`: what is not known stays open, for the reader to fill in. */
export function lineOf({ label, mean, spread }: ZoneThickness, share: Share | null): string {
  const known = share && share.sigma > 0 ? [rounded(share.f), rounded(share.sigma)] : ['', ''];
  return [label, rounded(mean), spread === null ? '' : rounded(spread), ...known].join('; ');
}
