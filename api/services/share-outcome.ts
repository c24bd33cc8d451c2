import type { SharedOutcome } from '../contract/shared.ts';
import { COATS, THICKNESS } from './trial-zones.ts';

type Lying = NonNullable<SharedOutcome['tiles']>[number];

/**
 * Of zones and tiles only what the answer rests on: zones that were used, on their tiles, with the factors that were
 * asked for. That a tile was fired is told, the name of its firing is not. Applied when an outcome is shared, and again
 * whenever it is opened, since shares made before this held more.
 */
export function restingOn({ words: { methods, references }, ...outcome }: SharedOutcome): SharedOutcome {
  const leftOut = new Set(outcome.analysis.leftOut.map(({ zone }) => zone));
  const zones = outcome.zones.filter(({ tile, label }) => !leftOut.has(named(tile, label)));
  const about = {
    used: new Set(zones.map(({ tile, label }) => named(tile, label))),
    factors: new Set(zones.flatMap((zone) => Object.keys(zone.factors))),
  };
  const tiles = outcome.tiles?.map((tile) => chosenOf(tile, about)).filter((tile) => tile.zones.length > 0);
  return { ...outcome, zones, tiles: tiles ?? null, words: { methods, references } };
}

/** As the analysis names a zone that it leaves out. */
const named = (tile: string, zone: string) => `${tile} ${zone}`;

interface About {
  readonly used: ReadonlySet<string>;
  readonly factors: ReadonlySet<string>;
}

function chosenOf({ firing, settings, ...tile }: Lying, { used, factors }: About): Lying {
  return {
    ...tile,
    ...{ firing: firing && 'fired', firingName: null },
    settings: Object.fromEntries(Object.entries(settings).filter(([name]) => factors.has(name))),
    zones: tile.zones
      .filter(({ label }) => used.has(named(tile.label, label)))
      .map(({ coats, micrometres, ...zone }) => ({
        ...zone,
        coats: factors.has(COATS) ? coats : null,
        micrometres: factors.has(THICKNESS) ? micrometres : null,
      })),
  };
}
