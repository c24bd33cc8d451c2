/**
 * Where a tile goes in the fire: the place that a plan drew for it by lot, and what a person said of it.
 *
 * @example
 * placeInWords({ place: 'front', position: 3 }) // 'place 3 by the plan, front'
 * placeInWords({ place: '', position: null }) // ''
 */
export function placeInWords(tile: { readonly place: string; readonly position: number | null }): string {
  const drawn = tile.position === null ? '' : `place ${tile.position} by the plan`;
  return [drawn, tile.place].filter(Boolean).join(', ');
}
