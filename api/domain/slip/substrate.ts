import { RequirementError } from '../requirement.ts';
import { lineOf, type Percentages } from './attenuation.ts';
import { chiOf, type Geometry, transmission } from './reading-depth.ts';

/** A paint of known thickness (µm) and density (g/cm³) on a slip thick enough to be endless, oxides in wt%. */
export interface PaintOnSlip {
  readonly paint: Percentages;
  readonly slip: Percentages;
  readonly thickness: number;
  readonly density: number;
}

/** How much of one oxide's reading comes from beneath. */
export interface SubstrateReading {
  readonly oxide: string;
  readonly transmission: number;
  /** Share of the line's signal that comes from the slip, 0–1. */
  readonly substrateShare: number;
  /** Weight of the slip's amount in the reading: reading = (1 − T)·paint + weight·slip. */
  readonly slipWeight: number;
  readonly reads: 'paint' | 'mostly paint' | 'both' | 'mostly slip';
}

/**
 * What an XRF reading of each oxide is made of, for a thin paint on a thick slip, by primary fluorescence:
 * from the paint c_P(1 − T)/χ_P, from the slip c_S·T/χ_S, T = exp(−χ_P·ρ·t). Calibrated as if all were paint, the
 * reading is (1 − T)·c_P + T·(χ_P/χ_S)·c_S. Oxides without a line under this beam are left out.
 * @example
 * stack = { paint: { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 }, slip: { SiO2: 60, Al2O3: 30, Fe2O3: 10 }, thickness: 10, density: 4.5 }
 * read = substrateReadings(stack, { incoming: 20, inAngle: 45, outAngle: 45 })
 * read.find((r) => r.oxide === 'SiO2').reads // 'paint'
 * read.find((r) => r.oxide === 'Fe2O3').reads // 'mostly slip'
 */
export function substrateReadings(stack: PaintOnSlip, geometry: Geometry): SubstrateReading[] {
  const { paint, slip, thickness, density } = stack;
  const oxides = [...new Set([...Object.keys(paint), ...Object.keys(slip)])];
  return oxides.flatMap((oxide) => {
    const line = lineOf(oxide, geometry.incoming);
    if (!line) return [];
    const [over, under] = [chiOf(paint, geometry, line), chiOf(slip, geometry, line)];
    const passed = transmission(over, { density, thickness });
    const slipWeight = (passed * over) / under;
    const own = (1 - passed) * (paint[oxide] ?? 0);
    const beneath = slipWeight * (slip[oxide] ?? 0);
    const substrateShare = beneath > 0 ? beneath / (own + beneath) : 0;
    return [{ oxide, transmission: passed, substrateShare, slipWeight, reads: readsWhat(substrateShare) }];
  });
}

function readsWhat(share: number): SubstrateReading['reads'] {
  if (share < 0.01) return 'paint';
  if (share < 0.2) return 'mostly paint';
  return share < 0.5 ? 'both' : 'mostly slip';
}

/** A reading corrected line by line. */
export interface CorrectedReading {
  /** Closed to 100. */
  readonly oxides: Record<string, number>;
  readonly readings: readonly SubstrateReading[];
  readonly rounds: number;
  readonly warnings: readonly string[];
}

/** Most of a line's signal that may come from beneath before a correction is all guess. */
const MOST = 0.9;
const ROUNDS = 100;

/**
 * Draws the slip off an XRF reading line by line: c_P = (k·reading − weight·c_S)/(1 − T), k such that the paint sums to
 * 100 (readings were closed too), T and the weight computed from the corrected paint itself, round after round until
 * it stays put (1e-9 wt%). For readings calibrated as a thick, even sample; a rougher figure than a measurement of the
 * paint in section. Throws when more
 * than nine tenths of a line comes through the paint, when an oxide would be negative, or when it does not settle.
 * @example
 * stack = { paint: { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 }, slip: { PbO: 0, SiO2: 60, Al2O3: 30, Fe2O3: 10 }, thickness: 20, density: 4.5 }
 * geometry = { incoming: 20, inAngle: 45, outAngle: 45 }
 * correctByLine({ ...stack, paint: readThrough(stack, geometry) }, geometry).oxides // { PbO: 60, SiO2: 32, Al2O3: 6, Fe2O3: 2 }
 */
export function correctByLine(stack: PaintOnSlip, geometry: Geometry): CorrectedReading {
  let paint = closeTo100(stack.paint);
  for (let rounds = 1; rounds <= ROUNDS; rounds++) {
    const readings = substrateReadings({ ...stack, paint }, geometry);
    const next = closeTo100(corrected(stack, readings));
    const moved = Math.max(...Object.keys(next).map((oxide) => Math.abs(next[oxide]! - paint[oxide]!)));
    paint = next;
    if (moved < 1e-9) return { oxides: paint, readings, rounds, warnings: warningsOf(readings) };
  }
  throw new RequirementError(
    'a correction by line needs a paint thick enough to settle; this one does not: measure it in section',
  );
}

/**
 * What XRF would read of a known paint on a known slip: the forward model that `correctByLine` undoes, closed to 100.
 * @example
 * stack = { paint: { PbO: 60, SiO2: 40 }, slip: { PbO: 0, SiO2: 100 }, thickness: 1000, density: 4.5 }
 * readThrough(stack, { incoming: 20, inAngle: 45, outAngle: 45 }) // { PbO: 60, SiO2: 40 }
 */
export function readThrough(stack: PaintOnSlip, geometry: Geometry): Record<string, number> {
  const readings = new Map(substrateReadings(stack, geometry).map((r) => [r.oxide, r]));
  const read = Object.entries(stack.paint).map(([oxide, wt]): [string, number] => {
    const line = readings.get(oxide);
    return [oxide, line ? (1 - line.transmission) * wt + line.slipWeight * (stack.slip[oxide] ?? 0) : wt];
  });
  return closeTo100(Object.fromEntries(read));
}

function corrected({ paint, slip }: PaintOnSlip, readings: readonly SubstrateReading[]) {
  const rows = Object.entries(paint).map(([oxide, read]) => {
    const line = readings.find((r) => r.oxide === oxide);
    const passed = line?.transmission ?? 0;
    if (passed > MOST)
      throw new RequirementError(
        `a correction by line needs a paint that holds back at least a tenth of every line; ${oxide} passes ${(100 * passed).toFixed(0)} %`,
      );
    const beneath = ((line?.slipWeight ?? 0) * (slip[oxide] ?? 0)) / (1 - passed);
    return { oxide, own: read / (1 - passed), beneath };
  });
  const sum = (key: 'own' | 'beneath') => rows.reduce((total, row) => total + row[key], 0);
  const k = (100 + sum('beneath')) / sum('own');
  return Object.fromEntries(rows.map(({ oxide, own, beneath }) => [oxide, k * own - beneath]));
}

function closeTo100(oxides: Percentages): Record<string, number> {
  const negative = Object.entries(oxides).find(([, wt]) => wt < 0);
  if (negative)
    throw new RequirementError(
      `a correction by line needs every oxide to stay above nothing; ${negative[0]} comes to ${negative[1].toPrecision(3)} wt%: the paint is thicker, or the slip poorer in it, than stated`,
    );
  const total = Object.values(oxides).reduce((sum, wt) => sum + wt, 0);
  return Object.fromEntries(Object.entries(oxides).map(([oxide, wt]) => [oxide, (100 * wt) / total]));
}

function warningsOf(readings: readonly SubstrateReading[]): string[] {
  const through = readings.filter((r) => r.substrateShare >= 0.5).map((r) => r.oxide);
  if (through.length === 0) return [];
  return [
    `More than half of what was read of ${through.join(', ')} comes from the slip; its correction is large.`,
  ];
}
