import { averageSpots } from '../../api/domain/composition/spots.ts';
import type { Amount } from '../../api/domain/composition/types.ts';
import { recast } from '../../api/domain/slip/recast.ts';
import type { Analysed } from '../../api/domain/slip/types.ts';
import type { RandomStream } from '../../api/domain/statistics/random.ts';

/** An invented clay, wt%, its oxides in order of their amounts. */
export const CLAY: Readonly<Record<string, number>> = {
  ...{ SiO2: 62, Al2O3: 20, Fe2O3: 8, K2O: 4, CaO: 2.5, MgO: 2 },
};
const LEAD = 55;

export interface RecastWorld {
  readonly spots: number;
  readonly rounds: number;
  /** Relative scatter of one spot, by place of the oxide in CLAY. */
  readonly relative: (place: number) => number;
  /** Factors on oxides of the glaze: another clay. */
  readonly shift?: Readonly<Record<string, number>>;
}

/** How often each verdict falls on a glaze of 55 wt% lead oxide and the clay itself, both averaged over spots. */
export function recastRounds(world: RecastWorld, random: RandomStream): Record<string, number> {
  const glaze = Object.fromEntries(
    Object.entries(CLAY).map(([oxide, wt]) => [oxide, (1 - LEAD / 100) * wt * (world.shift?.[oxide] ?? 1)]),
  );
  const found: Record<string, number> = {};
  for (let i = 0; i < world.rounds; i++) {
    const [paint, clay] = [{ PbO: LEAD, ...glaze }, CLAY].map((truth) => measured(truth, world, random));
    const { kind } = recast(paint!, clay!).verdict;
    found[kind] = (found[kind] ?? 0) + 1;
  }
  return found;
}

function measured(
  truth: Readonly<Record<string, number>>,
  world: RecastWorld,
  random: RandomStream,
): Analysed {
  const places = Object.keys(CLAY);
  const spot = () => {
    const read = Object.entries(truth).map(([oxide, wt]): [string, number] => [
      oxide,
      wt * (1 + world.relative(Math.max(0, places.indexOf(oxide))) * random.normal()),
    ]);
    const total = read.reduce((sum, [, wt]) => sum + wt, 0);
    const of = (value: number): Amount => ({
      ...{ value, limit: null, sigma: null, sigmaBasis: null, resolution: null },
    });
    const closed = Object.fromEntries(read.map(([oxide, wt]) => [oxide, of((100 * wt) / total)]));
    return { closed, rawTotal: total };
  };
  const { amounts } = averageSpots(Array.from({ length: world.spots }, spot));
  return { label: 'simulated', spots: world.spots, amounts };
}
