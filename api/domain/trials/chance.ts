import { RequirementError } from '../requirement.ts';
import { dot } from '../slip/weighted.ts';
import { normalQuantile, tQuantile } from '../statistics/distributions.ts';
import { quantile } from '../statistics/moments.ts';
import { doubtInWords } from './chance-doubt.ts';
import { type ChanceFit, fitChance } from './chance-model.ts';
import { tiesOf } from './chance-ties.ts';
import { form, logistic } from './logistic-model.ts';
import { findTangles } from './tangles.ts';
import type { Term } from './terms.ts';
import { type TrialTable, trialTable } from './trial-table.ts';
import type { ChanceCurve, ChancePoint, ChanceRequest, Factor, Level, Zone } from './types.ts';

/**
 * The chance of a glossy (or satin or glossy) zone against one factor, the others held, on a tile like these: Firth's
 * regression with every factor that is not tied to another; those left out are not in `held`, and the note says why. The interval is for the mean chance over tiles, from how
 * the curve moves when each tile is left out (t on tiles − 1 degrees of freedom), or from the zones as if independent
 * where that is wider; with one or two tiles it is for
 * those tiles alone. Where it is too wide to tell anything, the note says so first. Throws where the outcome is a share, the factor never varies, or only one tile tells of it.
 *
 * @example
 * const zone = (tile, coats, grade) => ({ id: `${tile}${coats}`, label: `${coats}`, tile, tileLabel: tile, firing: 'F1', factors: { coats }, grade, glassyShare: null })
 * const zones = ['T1', 'T2', 'T3'].flatMap((t, k) => [1, 2, 3, 4].map((coats) => zone(t, coats, coats > 1 + k ? 'glossy' : 'matt')))
 * const curve = predictChance(zones, { factors: [{ name: 'coats', kind: 'number', unit: 'coats', step: 1 }], outcome: 'glossy', seed: 1, against: 'coats', points: 2 })
 * curve.points.map((p) => p.at) // [1, 4]
 * curve.points[1].chance > 0.8 // true
 */
export function predictChance(zones: readonly Zone[], request: ChanceRequest): ChanceCurve {
  const outcome = request.outcome === 'grade' ? 'glossy' : request.outcome;
  if (outcome === 'share')
    throw new RequirementError('a chance needs gloss grades; a share of glassy area has none');
  const table = trialTable(zones, { ...request, outcome });
  const factor = askedFactor(table, request);
  const ties = tiesOf(findTangles(table), factor.name);
  const tied = ties.flatMap((t) => t.left);
  const fit = fitChance(
    table,
    table.terms.filter((t) => !tied.includes(t.factor.name)),
    factor.name,
  );
  const held = heldSettings(table, request, fit);
  const level = request.level ?? 0.95;
  const points = settingsOf(table, factor, request.points ?? 41).map((at) =>
    pointAt(fit, { at, held: { ...held, [factor.name]: at }, level }),
  );
  return {
    against: factor.name,
    unit: factor.kind === 'number' ? factor.unit : null,
    of: outcome === 'glossy' ? 'glossy' : 'satin or glossy',
    points,
    data: table.zones.map((z, i) => ({
      zone: z.label,
      tile: z.tileLabel,
      at: z.factors[factor.name]!,
      yes: table.scores[i] === 1,
    })),
    held,
    level,
    note: [...doubtInWords(factor, points), noteOf(table, fit, level), ...ties.map((t) => t.sentence)].join(
      ' ',
    ),
  };
}

function askedFactor({ terms }: TrialTable, { against }: ChanceRequest): Factor {
  const term = terms.find((t) => t.factor.name === against);
  if (!term)
    throw new RequirementError(
      `a chance against ${against} needs zones in which it varies; found none or one setting only`,
    );
  return term.factor;
}

/** The middle of numbers, the most frequent of levels, unless asked for; of the factors that the fit can hold. */
function heldSettings(
  { zones, terms }: TrialTable,
  { against, held = {} }: ChanceRequest,
  fit: ChanceFit,
): Record<string, Level> {
  const lost = terms.filter((t) => !fit.terms.includes(t));
  const factors = [...new Set(fit.terms.map((t) => t.factor))].filter((f) => f.name !== against);
  const settings = factors.map((f): [string, Level] => {
    const seen = zones.map((z) => z.factors[f.name]!);
    const asked = held[f.name];
    if (asked !== undefined) return [f.name, asked];
    if (f.kind === 'number') return [f.name, quantile(seen.map(Number), 0.5)];
    const count = (level: Level) => seen.filter((s) => s === level).length;
    return [f.name, seen.reduce((a, b) => (count(b) > count(a) ? b : a))];
  });
  // A level that one tile alone had has no term of its own, so nothing was held at it.
  return Object.fromEntries(
    settings.filter(([name, at]) => !lost.some((t) => t.factor.name === name && t.level === String(at))),
  );
}

function settingsOf({ zones }: TrialTable, factor: Factor, points: number): Level[] {
  const seen = zones.map((z) => z.factors[factor.name]!);
  if (factor.kind === 'category') return [...new Set(seen.map(String))].sort();
  const low = Math.min(...seen.map(Number));
  const high = Math.max(...seen.map(Number));
  return Array.from({ length: points }, (_, i) => low + ((high - low) * i) / (points - 1));
}

/** A row of the regression at given settings. */
function rowAt(terms: readonly Term[], settings: Readonly<Record<string, Level>>): number[] {
  return [
    1,
    ...terms.map(({ factor, level }) => {
      const at = settings[factor.name]!;
      if (factor.kind === 'number') return Number(at) / factor.step;
      return String(at) === level ? 1 : 0;
    }),
  ];
}

function pointAt(
  { terms, at, without, covariance }: ChanceFit,
  point: { at: Level; held: Readonly<Record<string, Level>>; level: number },
): ChancePoint {
  const row = rowAt(terms, point.held);
  const middle = dot(row, at);
  const upper = 1 - (1 - point.level) / 2;
  const n = without.length;
  const byTiles =
    n === 0
      ? 0
      : tQuantile(upper, n - 1) *
        Math.sqrt(((n - 1) / n) * without.reduce((sum, w) => sum + (dot(row, w) - middle) ** 2, 0));
  // Where tiles turn at one setting, leaving one out moves next to nothing: then zones say how little is known.
  const reach = Math.max(byTiles, normalQuantile(upper) * Math.sqrt(form(row, covariance)));
  return {
    at: point.at,
    chance: logistic(middle),
    low: logistic(middle - reach),
    high: logistic(middle + reach),
  };
}

function noteOf({ tiles }: TrialTable, { without, dropped }: ChanceFit, level: number): string {
  const percent = Math.round(level * 1000) / 10;
  const covers =
    without.length > 0
      ? `The ${percent} % band is for the mean chance over tiles like these ${tiles.length}, from leaving each tile out in turn, and never narrower than the zones by themselves allow; a single new tile can lie outside it.`
      : `With ${tiles.length === 1 ? 'one tile' : 'two tiles'} the ${percent} % band holds for ${tiles.length === 1 ? 'it' : 'them'} alone and takes zones as independent: it says nothing of other tiles.`;
  return dropped.length > 0
    ? `${covers} ${dropped.join(', ')} differed on one tile only and could not be held.`
    : covers;
}
