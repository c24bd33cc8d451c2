import { effectiveDf } from './consistency.ts';
import { directionBetween, directionWords } from './direction.ts';
import { estimateFraction, tellsNothing } from './estimate.ts';
import { measurementOf } from './measurement.ts';
import { type MixtureProblem, mixtureAt, mixtureProblem } from './mixture-problem.ts';
import type { Analysed, Direction, FractionEstimate, OxideWitness } from './types.ts';
import { whiten } from './weighted.ts';

/** Settings of explaining a reading as target and slip. */
export interface BatchFractionOptions {
  /** Oxides used; by default all that paint, target and slip share. */
  readonly oxides?: readonly string[];
  /** What the target is, for the words: `batch` (predicted fired oxides) or `group` (a group's own paint). */
  readonly target?: 'batch' | 'group';
}

/**
 * Slip fraction that best explains a measured paint as target plus slip: paint ∝ (1 − f)·target + f·slip in mass,
 * weighed by the uncertainties of all three. The paint's scale is left free, so its own closure, and oxides that it
 * was not measured for, do not matter; target and slip must each be closed to 100 over all that they hold. A target
 * oxide without an uncertainty is taken as exact. Throws when fewer than three oxides are shared.
 * @example
 * of = (value, sigma) => ({ value, limit: null, sigma, sigmaBasis: 'stated', resolution: null })
 * batch = { label: 'B3', spots: 1, amounts: { PbO: of(70, null), SiO2: of(25, null), Al2O3: of(5, null) } }
 * slip = { label: 'S', spots: 1, amounts: { PbO: of(0.1, 0.1), SiO2: of(69.9, 0.5), Al2O3: of(30, 0.3) } }
 * paint = { label: 'T1', spots: 1, amounts: { PbO: of(56.02, 0.5), SiO2: of(33.98, 0.5), Al2O3: of(10, 0.2) } }
 * fractionFromBatch(paint, batch, { slip }).f // 0.2
 */
export function fractionFromBatch(
  paint: Analysed,
  target: Analysed,
  { slip, ...options }: BatchFractionOptions & { readonly slip: Analysed },
): FractionEstimate {
  const word = options.target ?? 'batch';
  const problem = mixtureProblem(paint, target, { slip, oxides: options.oxides });
  const chiSquare = (f: number) => mixtureAt(problem, f).chiSquare;
  const fitDf = problem.oxides.length - 2;
  const df = (f: number) => effectiveDf(shares(problem, f));
  const fitted = estimateFraction({ kind: word, chiSquare, fitDf, df });
  const direction = directionAt(problem, fitted.f);
  const words = directionWords(direction, `${word} and slip`);
  return {
    ...fitted,
    direction,
    cannotTell: tellsNothing(fitted, words.figures),
    witnesses: witnessesAt(problem, fitted.unbounded),
    assumptions: assumptionsOf(word, target, problem.oxides),
    warnings: [
      fitted.consistency?.agree === false ? misfit(word) : null,
      words.warning,
      ...fitted.warnings,
    ].filter((w) => w !== null),
  };
}

function directionAt(problem: MixtureProblem, f: number): Direction {
  const columns = [problem.target, problem.slip].map((side) => side.map((m) => m.value));
  const [a, b] = whiten(columns, mixtureAt(problem, f).covariance);
  return directionBetween(a!, b!);
}

function witnessesAt(problem: MixtureProblem, f: number): OxideWitness[] {
  const { scale, explained, covariance } = mixtureAt(problem, f);
  return problem.oxides.map((oxide, i) => {
    const [b, s, p] = [problem.target[i]!.value, problem.slip[i]!.value, problem.paint[i]!.value];
    const spread = Math.sqrt(covariance[i]![i]!);
    const [alone, aloneSigma] =
      s === b ? [null, null] : [(scale * p - b) / (s - b), spread / Math.abs(s - b)];
    const z = (scale * p - explained[i]!) / spread;
    return { oxide, alone, aloneSigma, measured: p, explained: explained[i]! / scale, z };
  });
}

/** Parts of the variance of f by oxide and side: weight of each oxide is its lever over its variance. */
function shares(problem: MixtureProblem, f: number) {
  const { covariance } = mixtureAt(problem, f);
  return problem.oxides.flatMap((_, i) => {
    const [b, s, p] = [problem.target[i]!, problem.slip[i]!, problem.paint[i]!];
    const weight = ((s.value - b.value) / covariance[i]![i]!) ** 2;
    return [
      { variance: weight * p.variance, df: p.df },
      { variance: weight * f ** 2 * s.variance, df: s.df },
      { variance: weight * (1 - f) ** 2 * b.variance, df: b.df },
    ];
  });
}

function assumptionsOf(word: string, target: Analysed, oxides: readonly string[]): string[] {
  const exact = oxides.filter((oxide) => measurementOf(target, oxide).variance === 0);
  return [
    `What was read is ${word} paint and slip, and nothing else, in these oxides: ${oxides.join(', ')}.`,
    ...(word === 'batch'
      ? [
          'Nothing left the batch in the fire but what its prediction allows for (lead evaporates, sulfur may stay).',
        ]
      : [
          'The group’s own centre stands for the paint: this f brings the reading as near to the group as slip can, so it must not be used to test membership of that group.',
        ]),
    ...(exact.length > 0 ? [`Taken as exact in the ${word}: ${exact.join(', ')}.`] : []),
    'Target and slip are closed to 100 over all that they hold; errors are independent before closure.',
  ];
}

const misfit = (word: string) =>
  `Slip and ${word} do not explain the reading within its uncertainties; see which oxides are off. Loss of lead, a wrong slip, or uncertainties stated too small would do this.`;
