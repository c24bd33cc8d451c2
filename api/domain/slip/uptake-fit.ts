import { UPTAKE_LAWS, type UptakeLaw } from './uptake-law.ts';

/** A tile of known paint thickness (µm) whose slip fraction was found from its batch. */
export interface UptakeTile {
  readonly label: string;
  readonly thickness: number;
  readonly thicknessSigma: number;
  readonly f: number;
  readonly sigma: number;
}

export interface UptakeWeighing {
  readonly u: number;
  /** ln depth at which the weights are taken. */
  readonly at: number;
  readonly scatter: number;
}

/**
 * χ² of tiles against a law at ln depth `u`, weights taken at ln depth `at`.
 * @example
 * uptakeChiSquare([{ thickness: 10, thicknessSigma: 0, f: 0.52, sigma: 0.01 }], 'dissolved layer', { u: Math.log(10), at: 0, scatter: 0 }) // 4
 */
export function uptakeChiSquare(
  tiles: readonly UptakeTile[],
  law: UptakeLaw,
  { u, at, scatter }: UptakeWeighing,
): number {
  return tiles.reduce((sum, tile) => {
    const spread = uptakeSpread(tile, law, { depth: Math.exp(at), scatter });
    return sum + ((tile.f - UPTAKE_LAWS[law].fraction(tile.thickness, Math.exp(u))) / spread) ** 2;
  }, 0);
}

/**
 * Least squares on ln depth, the weights always those of the round before: weights that moved with the depth would
 * draw it to where they are small.
 * @example
 * settleUptake([{ thickness: 10, thicknessSigma: 0, f: 0.5, sigma: 0.01 }], 'dissolved layer', { scatter: 0, start: 2 }).u // 2.302585
 */
export function settleUptake(
  tiles: readonly UptakeTile[],
  law: UptakeLaw,
  { scatter, start }: { scatter: number; start: number },
) {
  let u = start;
  for (let round = 0; round < 100; round++) {
    const depth = Math.exp(u);
    let [above, below] = [0, 0];
    for (const tile of tiles) {
      const { fraction, slope } = UPTAKE_LAWS[law];
      const [rise, weight] = [
        slope(tile.thickness, depth),
        uptakeSpread(tile, law, { depth, scatter }) ** -2,
      ];
      above += weight * rise * (tile.f - fraction(tile.thickness, depth));
      below += weight * rise ** 2;
    }
    const step = Math.max(-0.3, Math.min(0.3, above / below));
    u += step;
    if (Math.abs(step) < 1e-10) break;
  }
  return { u, chiSquare: uptakeChiSquare(tiles, law, { u, at: u, scatter }) };
}

/**
 * Standard uncertainty of a tile's f less the law: its own, the thickness's, and the scatter's (of ln depth).
 * @example
 * uptakeSpread({ thickness: 10, thicknessSigma: 1, f: 0.5, sigma: 0 }, 'dissolved layer', { depth: 10, scatter: 0 }) // 0.025
 */
export function uptakeSpread(
  tile: UptakeTile,
  law: UptakeLaw,
  { depth, scatter }: { depth: number; scatter: number },
) {
  const rise = UPTAKE_LAWS[law].slope(tile.thickness, depth);
  return Math.hypot(tile.sigma, (rise * tile.thicknessSigma) / tile.thickness, rise * scatter);
}
