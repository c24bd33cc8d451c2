import { averageSpots } from '../../api/domain/composition/spots.ts';
import type { Amount, Amounts } from '../../api/domain/composition/types.ts';
import type { Analysed } from '../../api/domain/slip/types.ts';
import type { RandomStream } from '../../api/domain/statistics/random.ts';

/** Invented compositions, wt%: a lead paint with manganese, and an iron-rich slip. Alumina and titania only in the slip. */
export const PAINT: Readonly<Record<string, number>> = {
  PbO: 56,
  SiO2: 29,
  MnO: 7,
  Fe2O3: 4,
  CaO: 2.2,
  K2O: 1.2,
  MgO: 0.6,
  TiO2: 0,
  Al2O3: 0,
};
export const SLIP: Readonly<Record<string, number>> = {
  PbO: 0.1,
  SiO2: 59,
  MnO: 0.2,
  Fe2O3: 9,
  CaO: 4,
  K2O: 3.2,
  MgO: 2.5,
  TiO2: 1,
  Al2O3: 21,
};
export const OXIDES = Object.keys(PAINT);

/** How a laboratory errs: relative error, and a floor in wt% (both one standard deviation). */
export interface Laboratory {
  readonly relative: number;
  readonly floor: number;
  /** Spots measured; null: one reading whose σ is stated. */
  readonly spots: number | null;
}

export type Composition = Readonly<Record<string, number>>;

export const closed = (parts: Composition): Record<string, number> => {
  const total = Object.values(parts).reduce((a, b) => a + b, 0);
  return Object.fromEntries(Object.entries(parts).map(([k, v]) => [k, (100 * v) / total]));
};

/** The same recipe made again: every oxide off by its own lognormal factor. */
export function remade(parts: Composition, spread: number, random: RandomStream): Record<string, number> {
  return closed(
    Object.fromEntries(Object.entries(parts).map(([k, v]) => [k, v * Math.exp(spread * random.normal())])),
  );
}

export function mixed(paint: Composition, slip: Composition, f: number): Record<string, number> {
  return Object.fromEntries(OXIDES.map((k) => [k, (1 - f) * paint[k]! + f * slip[k]!]));
}

/**
 * One analysis with independent errors before closure, closed to 100, with its stated uncertainty; or several spots,
 * each closed, averaged as the service does it.
 */
export function analysed(truth: Composition, laboratory: Laboratory, random: RandomStream): Analysed {
  const { spots } = laboratory;
  const readings = Array.from({ length: spots ?? 1 }, () => reading(truth, laboratory, random));
  if (spots === null) return { label: 'simulated', spots: 1, amounts: readings[0]! };
  const { amounts } = averageSpots(readings.map((one) => ({ closed: one, rawTotal: 100 })));
  return { label: 'simulated', spots, amounts };
}

function reading(truth: Composition, laboratory: Laboratory, random: RandomStream): Amounts {
  const read = OXIDES.map((k) =>
    Math.max(1e-6, truth[k]! + sigmaAt(truth[k]!, laboratory) * random.normal()),
  );
  const scale = 100 / read.reduce((a, b) => a + b, 0);
  const stated = (value: number) =>
    laboratory.spots === null
      ? { sigma: scale * sigmaAt(value, laboratory), sigmaBasis: 'stated' as const }
      : { sigma: null, sigmaBasis: null };
  const amounts = OXIDES.map((k, j): [string, Amount] => [
    k,
    { value: scale * read[j]!, limit: null, ...stated(read[j]!), resolution: null },
  ]);
  return Object.fromEntries(amounts);
}

const sigmaAt = (value: number, { relative, floor }: Laboratory) => Math.hypot(relative * value, floor);
