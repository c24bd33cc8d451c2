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

/** One analysis with independent errors before closure, closed to 100, with its stated or measured uncertainty. */
export function analysed(truth: Composition, laboratory: Laboratory, random: RandomStream): Analysed {
  const readings = Array.from({ length: laboratory.spots ?? 1 }, () =>
    OXIDES.map((k) => Math.max(1e-6, truth[k]! + sigmaAt(truth[k]!, laboratory) * random.normal())),
  );
  const means = OXIDES.map((_, j) => readings.reduce((sum, r) => sum + r[j]!, 0) / readings.length);
  const scale = 100 / means.reduce((a, b) => a + b, 0);
  const amounts: Amounts = Object.fromEntries(
    OXIDES.map((k, j): [string, Amount] => {
      const sigma =
        laboratory.spots === null
          ? sigmaAt(means[j]!, laboratory)
          : Math.sqrt(
              readings.reduce((sum, r) => sum + (r[j]! - means[j]!) ** 2, 0) /
                (laboratory.spots - 1) /
                laboratory.spots,
            );
      const basis =
        laboratory.spots === null
          ? { sigmaBasis: 'stated' as const }
          : { sigmaBasis: 'spots' as const, sigmaDf: laboratory.spots - 1 };
      return [k, { value: scale * means[j]!, limit: null, sigma: scale * sigma, ...basis, resolution: null }];
    }),
  );
  return { label: 'simulated', spots: laboratory.spots ?? 1, amounts };
}

const sigmaAt = (value: number, { relative, floor }: Laboratory) => Math.hypot(relative * value, floor);
