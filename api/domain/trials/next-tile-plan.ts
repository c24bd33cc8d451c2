import { RequirementError } from '../requirement.ts';
import { randomStream } from '../statistics/random.ts';
import { zonesOfTile } from './plan.ts';
import type { NextTile, Plan } from './types.ts';

/** Grid of the tile; a square or nearly so where absent. */
export interface ProposalPlanOptions {
  readonly seed: number;
  readonly rows?: number;
  readonly columns?: number;
}

/**
 * The plan of a proposed tile: one tile, its zones on random cells of the grid by the seed. Throws when the grid is
 * too small.
 *
 * @example
 * const proposal = { tile: { roast: 'long' }, zones: [{ coats: 1 }, { coats: 3 }], factors: [], reason: 'Because.', cautions: [] }
 * const plan = planFromProposal(proposal, { seed: 3 })
 * plan.tiles[0].zones.map((z) => z.settings.coats).sort() // [1, 3]
 * planFromProposal(proposal, { seed: 3, rows: 1, columns: 1 }) // throws needs 2 cells; found 1
 */
export function planFromProposal(proposal: NextTile, options: ProposalPlanOptions): Plan {
  const { zones, tile, factors, reason, cautions } = proposal;
  const columns = options.columns ?? Math.ceil(Math.sqrt(zones.length));
  const rows = options.rows ?? Math.ceil(zones.length / columns);
  if (rows * columns < zones.length)
    throw new RequirementError(
      `a tile of ${zones.length} zones needs ${zones.length} cells; found ${rows * columns}`,
    );
  const { uniform } = randomStream(options.seed);
  const placed = zonesOfTile(zones, { rows, columns, replicates: 1, settings: tile, uniform });
  return {
    kind: 'next-tile',
    factors,
    tiles: [{ label: 'T1', firing: 1, place: '1', settings: tile, zones: placed }],
    runs: new Set(zones.map((z) => JSON.stringify(z))).size,
    seed: options.seed,
    resolution: null,
    generators: [],
    aliases: [],
    notes: [reason, ...cautions],
  };
}
