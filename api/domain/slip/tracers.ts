import { RequirementError } from '../requirement.ts';
import { closedCovariance } from './closed-covariance.ts';
import { effectiveDf } from './consistency.ts';
import { estimateFraction, tellsNothing } from './estimate.ts';
import { weighable } from './measurement.ts';
import type { Analysed, FractionEstimate, OxideWitness } from './types.ts';
import { dot, whiten } from './weighted.ts';

/** Oxides that a lead or manganese paint seldom holds of its own: common practice, no published source. */
export const SUGGESTED_TRACERS: readonly string[] = ['TiO2', 'Al2O3'];

/**
 * Slip fraction from oxides that the paint itself cannot hold: each gives f = paint/slip, and several are combined
 * by weighted least squares with errors on both sides, χ²(f) = rᵀ(V_paint + f²·V_slip)⁻¹r, r = paint − f·slip, the
 * covariances carrying closure. Several tracers are tested for agreement; if they disagree the interval is widened.
 * Throws when a tracer is unmeasured, has no uncertainty, or is not above its uncertainty in the slip.
 * @example
 * of = (value, sigma) => ({ value, limit: null, sigma, sigmaBasis: 'stated', resolution: null })
 * paint = { label: 'T1', spots: 1, amounts: { PbO: of(94.75, 0.5), TiO2: of(0.25, 0.02), Al2O3: of(5, 0.2) } }
 * slip = { label: 'S', spots: 1, amounts: { SiO2: of(79, 0.5), TiO2: of(1, 0.03), Al2O3: of(20, 0.3) } }
 * fractionFromTracers(paint, slip, ['TiO2', 'Al2O3']).f // 0.25
 */
export function fractionFromTracers(
  paint: Analysed,
  slip: Analysed,
  tracers: readonly string[],
): FractionEstimate {
  if (tracers.length === 0)
    throw new RequirementError('a slip fraction needs at least one tracer; none given');
  const y = tracers.map((oxide) => weighable(paint, oxide).value);
  const x = tracers.map((oxide) => seenInSlip(slip, oxide));
  const [vy, vx] = [closedCovariance(paint, tracers), closedCovariance(slip, tracers)];
  const covarianceAt = (f: number) => vy.map((row, i) => row.map((v, j) => v + f ** 2 * vx[i]![j]!));
  const chiSquare = (f: number) => {
    const [r] = whiten([y.map((v, i) => v - f * x[i]!)], covarianceAt(f));
    return dot(r!, r!);
  };
  const fitDf = tracers.length - 1;
  const df = (f: number) => effectiveDf(shares(paint, slip, { tracers, f }));
  const fitted = estimateFraction({ kind: 'tracers', chiSquare, fitDf, df });
  const witnesses = tracers.map((oxide) => witness(paint, slip, { oxide, f: fitted.unbounded }));
  return {
    ...fitted,
    direction: null,
    cannotTell: tellsNothing(fitted, `tracers: ${tracers.join(', ')}`),
    witnesses,
    assumptions: [
      `The paint itself holds no ${tracers.join(', no ')}: all that was read came from the slip.`,
      'Paint and slip are closed to 100 over all that they hold; their errors are independent before closure.',
      ...(fitDf === 0 ? ['One tracer only: nothing checks it.'] : []),
    ],
    warnings: [...disagreement(fitted.consistency, witnesses), ...fitted.warnings],
  };
}

function seenInSlip(slip: Analysed, oxide: string): number {
  const { value, variance } = weighable(slip, oxide);
  if (value > 2 * Math.sqrt(variance)) return value;
  throw new RequirementError(
    `a tracer needs to be seen in the slip, above twice its uncertainty; ${oxide} of ${slip.label} is ${value} ± ${Math.sqrt(variance).toPrecision(2)} wt%`,
  );
}

interface At {
  readonly oxide: string;
  readonly f: number;
}

function witness(paint: Analysed, slip: Analysed, { oxide, f }: At): OxideWitness {
  const [p, s] = [weighable(paint, oxide), weighable(slip, oxide)];
  const alone = p.value / s.value;
  const spread = Math.sqrt(p.variance + f ** 2 * s.variance);
  return {
    oxide,
    alone,
    aloneSigma: Math.sqrt(p.variance + alone ** 2 * s.variance) / s.value,
    measured: p.value,
    explained: f * s.value,
    z: (p.value - f * s.value) / spread,
  };
}

/** Parts of the variance of f by oxide and side, with the degrees of freedom of each. */
function shares(paint: Analysed, slip: Analysed, { tracers, f }: { tracers: readonly string[]; f: number }) {
  return tracers.flatMap((oxide) => {
    const [p, s] = [weighable(paint, oxide), weighable(slip, oxide)];
    const weight = (s.value / (p.variance + f ** 2 * s.variance)) ** 2;
    return [
      { variance: weight * p.variance, df: p.df },
      { variance: weight * f ** 2 * s.variance, df: s.df },
    ];
  });
}

function disagreement(
  consistency: FractionEstimate['consistency'],
  witnesses: readonly OxideWitness[],
): string[] {
  if (!consistency || consistency.agree) return [];
  const said = witnesses.map((w) => `${w.oxide} says ${w.alone!.toFixed(3)} ± ${w.aloneSigma!.toFixed(3)}`);
  const least = witnesses.reduce((a, b) => (b.alone! < a.alone! ? b : a));
  return [
    `The tracers disagree: ${said.join(', ')}. The paint may hold some of its own; then the smallest (${least.oxide}) is the most that the slip can be.`,
  ];
}
