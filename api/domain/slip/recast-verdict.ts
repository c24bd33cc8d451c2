import { type CommonMean, commonMean } from './common-mean.ts';
import { consistencyOf, effectiveDf, twoSided95 } from './consistency.ts';
import type { Consistency } from './types.ts';

/** One oxide of paint and clay, both recast to 100 without lead and added oxides. */
export interface RecastRow {
  readonly oxide: string;
  /** wt% after recasting. */
  readonly paint: number;
  readonly clay: number;
  /** paint/clay, and its standard uncertainty (null where no uncertainty is known). */
  readonly ratio: number;
  readonly sigma: number | null;
  /** Degrees of freedom of `sigma` where it was found from a few spots; null: taken as known. */
  readonly df: number | null;
}

/** What the ratios of a recast test are consistent with, within their uncertainties. */
export interface RecastVerdict {
  readonly kind: 'lead alone' | 'added silica' | 'less silica' | 'another clay' | 'untold';
  /** Common ratio of all oxides but silica, after recasting; null when it cannot be had. */
  readonly common: number | null;
  /** Silica added, as a share of the recast paint: 1 − common; with its standard uncertainty. */
  readonly addedSilica: number | null;
  readonly addedSilicaSigma: number | null;
  /** Whether the oxides but silica keep the clay's proportions. */
  readonly consistency: Consistency | null;
  readonly sentence: string;
}

const NO_CUT_OFF = 'No published cut-off is used: the words rest on the stated uncertainties alone.';
const UNTOLD: Omit<RecastVerdict, 'sentence'> = {
  kind: 'untold',
  common: null,
  addedSilica: null,
  addedSilicaSigma: null,
  consistency: null,
};

/**
 * Reads the ratios of a recast test. In proportion to each other, oxides do not feel the renormalisation: whether all
 * but silica share one ratio is tested by χ² on their logarithms, or by Welch's F where σ was found from a few spots
 * (`commonMean`); how far silica stands off from it, by Student's t then, gives the share of silica added,
 * w = 1 − 1/((1 − b) + b·q), b the clay's recast SiO2 (0–1), q silica's ratio over the common one. Without SiO2, a
 * second oxide or uncertainties it tells nothing.
 * @example
 * row = (oxide, clay, ratio) => ({ oxide, clay, paint: clay * ratio, ratio, sigma: 0.02 * ratio, df: null })
 * recastVerdict([row('SiO2', 62, 1), row('Al2O3', 20, 1), row('Fe2O3', 18, 1)], 'the body').kind // 'lead alone'
 * recastVerdict([row('SiO2', 62, 1.2043), row('Al2O3', 20, 0.6667), row('Fe2O3', 18, 0.6667)], 'the body').kind // 'added silica'
 * recastVerdict([row('SiO2', 62, 1), row('Al2O3', 20, 1.5), row('Fe2O3', 18, 0.5)], 'the body').kind // 'another clay'
 */
export function recastVerdict(rows: readonly RecastRow[], clay: string): RecastVerdict {
  const silica = rows.find((row) => row.oxide === 'SiO2');
  const others = rows.filter((row) => row !== silica);
  if (rows.some((row) => row.sigma === null))
    return {
      ...UNTOLD,
      sentence: 'No uncertainty is known for some oxides, so the ratios are shown without a verdict.',
    };
  if (!silica || others.length < 2)
    return {
      ...UNTOLD,
      sentence: 'The test needs SiO2 and at least two other oxides on both sides; no verdict.',
    };
  const rest = commonMean(others.map(logOf));
  const consistency = consistencyOf(rest.chiSquare, others.length - 1, rest.df);
  const excess = excessOf(silica, rest, consistency);
  const b = silica.clay / 100;
  const q = Math.exp(excess.log);
  const common = 1 / (1 - b + b * q);
  const found = {
    common,
    addedSilica: 1 - common,
    addedSilicaSigma: common ** 2 * b * q * excess.sigma,
    consistency,
  };
  return { ...found, ...reading(found, excess, clay) };
}

const logOf = ({ ratio, sigma, df }: RecastRow) => ({
  ...{ value: Math.log(ratio), variance: (sigma! / ratio) ** 2, df },
});

/** How far silica's ratio stands off from the common one, as a logarithm. */
interface Excess {
  readonly log: number;
  readonly sigma: number;
  readonly df: number | null;
}

function excessOf(silica: RecastRow, rest: CommonMean, fit: Consistency): Excess {
  const own = logOf(silica);
  const others = { variance: (fit.agree ? 1 : fit.chiSquare / fit.df) * rest.variance, df: rest.df };
  const df = effectiveDf([own, others]);
  // A scatter of closed spots: what silica gains the others lose, so errors may add up outright (GUM 5.2.2, note 1).
  const [a, b] = [Math.sqrt(own.variance), Math.sqrt(others.variance)];
  return { log: own.value - rest.mean, sigma: df === null ? Math.hypot(a, b) : a + b, df };
}

interface Found {
  readonly addedSilica: number;
  readonly addedSilicaSigma: number;
  readonly consistency: Consistency;
}

function reading(
  { addedSilica, addedSilicaSigma, consistency }: Found,
  excess: Excess,
  clay: string,
): Pick<RecastVerdict, 'kind' | 'sentence'> {
  const say = (kind: RecastVerdict['kind'], words: string) => ({ kind, sentence: `${words} ${NO_CUT_OFF}` });
  if (!consistency.agree)
    return say(
      'another clay',
      `Without lead and added oxides, what is left does not keep the proportions of ${clay} even leaving silica aside (p ${consistency.p < 0.001 ? '< 0.001' : `= ${consistency.p.toFixed(3)}`}): another clay, or something more was added or taken.`,
    );
  const figures = `${(100 * addedSilica).toFixed(1)} ± ${(100 * addedSilicaSigma).toFixed(1)} % of what is left (one standard uncertainty)`;
  if (Math.abs(excess.log) <= twoSided95(excess.df) * excess.sigma)
    return say(
      'lead alone',
      `Without lead and added oxides, what is left keeps the proportions of ${clay}: consistent with a lead compound used alone. Silica added: ${figures}.`,
    );
  if (excess.log > 0)
    return say(
      'added silica',
      `All but silica keep the proportions of ${clay} and silica stands above them: consistent with lead and added silica, ${figures}.`,
    );
  return say(
    'less silica',
    `All but silica keep the proportions of ${clay} and silica stands below them: neither lead alone nor added silica explains this.`,
  );
}
