import { listInWords } from '../placement/words.ts';
import { RequirementError } from '../requirement.ts';
import { orderCount, shuffled } from './orders.ts';
import type { SettingList, Settings } from './settings.ts';
import type { PlannedFactor, PlanRequest } from './types.ts';

/** Which setting each tile of each firing gets, before places are drawn. */
export interface Blocks {
  /** One list of settings a firing, in random order. */
  readonly firings: readonly (readonly Settings[])[];
  readonly aliases: readonly string[];
}

interface BlockRequest extends Pick<PlanRequest, 'tiles' | 'firings'> {
  readonly tileFactors: readonly PlannedFactor[];
  readonly uniform: () => number;
}

/**
 * Puts the settings of tiles into firings: all of them in each firing, as often as there is room; or, of a two-level
 * plan of two firings with room for half, the halves by the sign of the product of all factors, which then cannot be
 * told from the difference between the firings. Throws when there are more contrasts than tiles can tell, or when the
 * settings do not come out even.
 *
 * @example
 * const list = settingsFor('full', [{ name: 'roast', unit: null, at: 'tile', levels: ['short', 'long'] }], { room: 2 })
 * intoFirings(list, { tiles: 4, firings: 2, tileFactors: [], uniform: () => 0.5 }).firings.map((f) => f.length) // [2, 2]
 * intoFirings(list, { tiles: 3, firings: 1, tileFactors: [], uniform: () => 0.5 }) // throws 2 settings of tiles need a whole multiple of 2 tiles in each firing; found 3
 */
export function intoFirings(list: SettingList, request: BlockRequest): Blocks {
  const { tiles, firings, tileFactors, uniform } = request;
  checkContrasts(request);
  if (tiles % firings !== 0)
    throw new RequirementError(`a plan needs as many tiles in each firing; found ${tiles} for ${firings}`);
  const perFiring = tiles / firings;
  const { settings, signs } = list;
  if (perFiring % settings.length === 0)
    return {
      firings: Array.from({ length: firings }, () =>
        shuffled(
          Array.from({ length: perFiring }, (_, i) => settings[i % settings.length]!),
          uniform,
        ),
      ),
      aliases: [],
    };
  if (signs && firings === 2 && perFiring * 2 === settings.length) {
    const product = signs.map((row) => row.reduce((a, b) => a * b, 1));
    const half = (sign: number) => settings.filter((_, i) => product[i] === sign);
    if (half(1).length === perFiring)
      return {
        firings: shuffled([half(1), half(-1)], uniform).map((f) => shuffled(f, uniform)),
        aliases: [
          `What ${listInWords(tileFactors.map((f) => f.name))} do all together cannot be told from the difference between the two firings.`,
        ],
      };
  }
  throw new RequirementError(
    `${settings.length} settings of tiles need a whole multiple of ${settings.length} tiles in each firing; found ${perFiring}`,
  );
}

/** Each firing costs one comparison and each contrast one more. */
function checkContrasts({ tiles, firings, tileFactors }: BlockRequest): void {
  const contrasts = tileFactors.reduce((sum, f) => sum + f.levels.length - 1, 0);
  if (contrasts > tiles - firings)
    throw new RequirementError(
      `${listInWords(tileFactors.map((f) => f.name))} ${tileFactors.length === 1 ? 'changes' : 'change'} only from tile to tile: that needs at least ${contrasts + firings} tiles in ${firings === 1 ? 'one firing' : `${firings} firings`}; found ${tiles}`,
    );
}

/**
 * The smallest two-sided p that a comparison of one factor between tiles can give, from the number of ways to put its
 * levels on the tiles of each firing.
 *
 * @example
 * smallestTileP([[{ roast: 'a' }, { roast: 'b' }, { roast: 'a' }, { roast: 'b' }]], 'roast') // 0.333333
 */
export function smallestTileP(firings: Blocks['firings'], factor: string): number {
  const levels = [...new Set(firings.flat().map((s) => s[factor]))];
  const ways = firings.reduce(
    (product, tiles) => product * orderCount(tiles.map((t) => levels.indexOf(t[factor]))),
    1,
  );
  return Math.min(1, 2 / ways);
}
