interface JudgedTile {
  readonly id: string;
  readonly zones: readonly { readonly id: string; readonly grade: string | null }[];
}
export interface ZoneAt {
  readonly tile: string;
  readonly zone: string;
}

/**
 * The next zone without a grade: after the one just judged, on its tile first, then on the tiles that follow, and
 * round to the beginning; null when all others are judged.
 */
export function nextOpen(tiles: readonly JudgedTile[], from: ZoneAt | null): ZoneAt | null {
  const start = Math.max(
    0,
    tiles.findIndex((one) => one.id === from?.tile),
  );
  const inTurn = [...tiles.slice(start), ...tiles.slice(0, start)];
  const all = inTurn.flatMap(({ id, zones }) => {
    const at = zones.findIndex((one) => one.id === from?.zone) + 1;
    return [...zones.slice(at), ...zones.slice(0, at)].map((zone) => ({ tile: id, zone }));
  });
  const next = all.find(({ zone }) => zone.grade === null && zone.id !== from?.zone);
  return next ? { tile: next.tile, zone: next.zone.id } : null;
}
