import { RequirementError } from '../../api/domain/requirement.ts';
import { fractionFromBatch } from '../../api/domain/slip/batch-fraction.ts';
import { fractionsFromGroup } from '../../api/domain/slip/group-fraction.ts';
import { meanSlip } from '../../api/domain/slip/mean-slip.ts';
import { fractionFromTracers } from '../../api/domain/slip/tracers.ts';
import type { Analysed, FractionEstimate } from '../../api/domain/slip/types.ts';
import { fitUptake } from '../../api/domain/slip/uptake.ts';
import { fractionFromThickness } from '../../api/domain/slip/uptake-apply.ts';
import { UPTAKE_LAWS, type UptakeLaw } from '../../api/domain/slip/uptake-law.ts';
import { type RandomStream, randomStream } from '../../api/domain/statistics/random.ts';
import { analysed, type Composition, type Laboratory, mixed, PAINT, remade, SLIP } from './world.ts';

/** One simulated tile: its true fraction, and what was estimated. */
export interface Trial {
  readonly f: number;
  readonly estimate: FractionEstimate;
}
export interface Coverage {
  readonly estimator: string;
  readonly world: string;
  readonly tiles: number;
  /** Share of intervals that hold the true f. */
  readonly held: number;
  readonly meanWidth: number;
  /** Share of consistency tests passed; every world simulated agrees with its model unless it says otherwise. */
  readonly agreed: number;
  readonly refused: number;
}

export const LABORATORIES: Readonly<Record<string, Laboratory>> = {
  'σ stated, 3 %': { relative: 0.03, floor: 0.02, spots: null },
  'σ stated, 6 %': { relative: 0.06, floor: 0.03, spots: null },
  'σ from 3 spots': { relative: 0.03, floor: 0.02, spots: 3 },
  'σ from 5 spots': { relative: 0.03, floor: 0.02, spots: 5 },
};
export const someFraction = (random: RandomStream) => 0.03 + 0.42 * random.uniform();

/** Predicted fired batch, 2 % off in every oxide, and known to be. */
export function predicted(paint: Composition, random: RandomStream): Analysed {
  const amounts = Object.fromEntries(
    Object.entries(paint).map(([k, v]) => [
      k,
      {
        value: v * (1 + 0.02 * random.normal()),
        limit: null,
        sigma: 0.02 * v,
        sigmaBasis: 'assumed' as const,
        resolution: null,
      },
    ]),
  );
  return { label: 'batch', spots: 1, amounts };
}

function byTracers(laboratory: Laboratory, random: RandomStream): Trial {
  const [paint, slip, f] = [remade(PAINT, 0.15, random), remade(SLIP, 0.1, random), someFraction(random)];
  const measured = analysed(mixed(paint, slip, f), laboratory, random);
  return {
    f,
    estimate: fractionFromTracers(measured, analysed(slip, laboratory, random), ['TiO2', 'Al2O3']),
  };
}

function byBatch(laboratory: Laboratory, random: RandomStream, slipless = false): Trial {
  const [paint, slip] = [remade(PAINT, 0.15, random), remade(SLIP, 0.1, random)];
  const f = slipless ? 0 : someFraction(random);
  const measured = analysed(mixed(paint, slip, f), laboratory, random);
  const under = analysed(slip, laboratory, random);
  return { f, estimate: fractionFromBatch(measured, predicted(paint, random), { slip: under }) };
}

/** A piece whose own slip was not analysed: the mean of n others of its ware stands for it (10 % between slips). */
function byMeanSlip(
  n: number,
  estimate: (paint: Analysed, slip: Analysed, batch: Analysed) => FractionEstimate,
) {
  return (laboratory: Laboratory, random: RandomStream): Trial => {
    const [paint, ware, f] = [remade(PAINT, 0.15, random), remade(SLIP, 0.1, random), someFraction(random)];
    const slips = Array.from({ length: n }, () => analysed(remade(ware, 0.1, random), laboratory, random));
    const measured = analysed(mixed(paint, remade(ware, 0.1, random), f), laboratory, random);
    return { f, estimate: estimate(measured, meanSlip('the ware', slips), predicted(paint, random)) };
  };
}

const MEAN_SLIP = {
  'tracer TiO2': (paint, slip) => fractionFromTracers(paint, slip, ['TiO2']),
  'tracers TiO2, Al2O3': (paint, slip) => fractionFromTracers(paint, slip, ['TiO2', 'Al2O3']),
  batch: (paint, slip, batch) => fractionFromBatch(paint, batch, { slip }),
} satisfies Record<string, Parameters<typeof byMeanSlip>[1]>;

/** One sherd of a group whose recipe varies from sherd to sherd by `spread`. */
function byGroup(n: number, spread: number) {
  return (laboratory: Laboratory, random: RandomStream): Trial => {
    const [paint, slip] = [remade(PAINT, 0.15, random), remade(SLIP, 0.1, random)];
    const fractions = Array.from({ length: n }, () => someFraction(random));
    const paints = fractions.map((f) => {
      const own = spread > 0 ? remade(paint, spread, random) : paint;
      return analysed(mixed(own, slip, f), laboratory, random);
    });
    const slips = [1, 2, 3].map(() => analysed(slip, laboratory, random));
    const { estimates } = fractionsFromGroup({ paints, slips, known: { TiO2: 0, Al2O3: 0 } });
    return { f: fractions[0]!, estimate: estimates[0]!.estimate };
  };
}

/** A new piece, from an uptake learnt of n tiles that scatter by `scatter` in ln depth; true depth 12 µm. */
function byThickness(law: UptakeLaw, n: number, scatter: number) {
  return (_: Laboratory, random: RandomStream): Trial => {
    const at = (t: number) => UPTAKE_LAWS[law].fraction(t, 12 * Math.exp(scatter * random.normal()));
    const tiles = Array.from({ length: n }, (_, k) => {
      const t = 10 + (50 * (k + random.uniform())) / n;
      return {
        label: `tile ${k}`,
        thickness: t + 1.5 * random.normal(),
        thicknessSigma: 1.5,
        f: at(t) + 0.012 * random.normal(),
        sigma: 0.012,
      };
    });
    const t = 15 + 30 * random.uniform();
    const f = at(t);
    const seen = { thickness: t + 2 * random.normal(), sigma: 2 };
    return { f, estimate: fractionFromThickness(fitUptake(tiles, law), seen) };
  };
}

function measure(
  estimator: string,
  world: string,
  { tiles, trial }: { tiles: number; trial: (random: RandomStream) => Trial },
): Coverage {
  const random = randomStream(20261125);
  const trials: Trial[] = [];
  let refused = 0;
  for (let i = 0; i < tiles; i++)
    try {
      const one = trial(random);
      if (one.estimate.cannotTell) refused++;
      else trials.push(one);
    } catch (error) {
      if (!(error instanceof RequirementError)) throw error;
      refused++;
    }
  const share = (test: (t: Trial) => boolean) => trials.filter(test).length / trials.length;
  return {
    estimator,
    world,
    tiles,
    held: share(({ f, estimate }) => estimate.low <= f && f <= estimate.high),
    meanWidth: trials.reduce((sum, { estimate }) => sum + estimate.high - estimate.low, 0) / trials.length,
    agreed: share(({ estimate }) => estimate.consistency?.agree ?? true),
    refused,
  };
}

/** Coverage of every estimator in every world that suits it. */
export function* allCoverage(tiles: number): Generator<Coverage> {
  for (const [name, laboratory] of Object.entries(LABORATORIES)) {
    yield measure('tracers TiO2, Al2O3', name, { tiles, trial: (r) => byTracers(laboratory, r) });
    yield measure('batch', name, { tiles, trial: (r) => byBatch(laboratory, r) });
    if (laboratory.spots !== null) continue;
    const slipless = (r: RandomStream) => byBatch(laboratory, r, true);
    yield measure('batch', `${name}, no slip read`, { tiles, trial: slipless });
  }
  for (const [name, estimate] of Object.entries(MEAN_SLIP))
    for (const n of [2, 3, 5, 10]) {
      const trial = (r: RandomStream) => byMeanSlip(n, estimate)(LABORATORIES['σ stated, 3 %']!, r);
      yield measure(name, `mean of ${n} slips, σ stated, 3 %`, { tiles, trial });
    }
  for (const n of [6, 12, 40])
    for (const spread of [0, 0.05])
      for (const name of ['σ stated, 3 %', 'σ from 3 spots']) {
        const world = `${n} sherds, recipe ${spread === 0 ? 'the same' : '± 5 %'}, ${name}`;
        yield measure('group', world, { tiles, trial: (r) => byGroup(n, spread)(LABORATORIES[name]!, r) });
      }
  for (const law of ['dissolved layer', 'seen through'] as const)
    for (const n of [3, 6, 12])
      for (const scatter of [0, 0.2]) {
        const world = `${law}, ${n} tiles, ${scatter === 0 ? 'no scatter' : 'depth scatters by 20 %'}`;
        const trial = (r: RandomStream) => byThickness(law, n, scatter)(LABORATORIES['σ stated, 3 %']!, r);
        yield measure('thickness', world, { tiles, trial });
      }
}
