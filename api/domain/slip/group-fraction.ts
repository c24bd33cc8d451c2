import type { Amount, Amounts } from '../composition/types.ts';
import { RequirementError } from '../requirement.ts';
import { consistencyOf, twoSided95 } from './consistency.ts';
import { directionBetween, directionWords } from './direction.ts';
import { tellsNothing } from './estimate.ts';
import { linePoints } from './line-points.ts';
import { sharedOxides, weighable } from './measurement.ts';
import { fitMixingLine, type MixingLine } from './mixing-line.ts';
import { poolSpots } from './pooled-spots.ts';
import type { Analysed, Consistency, Direction, FractionEstimate } from './types.ts';

/** What a group's own paint and slip analyses say of its slip. */
export interface GroupFractions {
  readonly oxides: readonly string[];
  /** The group's paint without slip, and its slip, as the line has them (wt%, σ from the fit). */
  readonly paintEnd: Amounts;
  readonly slipEnd: Amounts;
  /** One estimate per paint, in the order given. */
  readonly estimates: readonly { readonly label: string; readonly estimate: FractionEstimate }[];
  readonly consistency: Consistency;
  readonly direction: Direction;
}

/** Paint and slip analyses of one ware group, and what its paint is known to hold (none, for a tracer). */
export interface GroupAnalyses {
  readonly paints: readonly Analysed[];
  readonly slips: readonly Analysed[];
  readonly known: Readonly<Record<string, number>>;
  readonly oxides?: readonly string[];
}

/**
 * Slip fractions of a group's paints from a straight line through its paint and slip analyses, with errors on both
 * sides (`fitMixingLine`). The line has no zero of its own: `known` gives the amount of at least one oxide in the
 * paint without slip, 0 for a tracer. Intervals: f ± t·σ, σ from the curvature of χ², widened where the points lie
 * off the line by more than their uncertainties. Throws when oxides, points or anchors are too few.
 * @example
 * of = (value) => ({ value, limit: null, sigma: 0.1, sigmaBasis: 'stated', resolution: null })
 * at = (f) => ({ label: 'f' + f, spots: 1, amounts: { PbO: of(70 - 70 * f), SiO2: of(30 + 50 * f), Al2O3: of(20 * f) } })
 * group = fractionsFromGroup({ paints: [at(0.1), at(0.2), at(0.3)], slips: [at(1)], known: { Al2O3: 0 } })
 * group.estimates[1].estimate.f // 0.2
 * group.paintEnd.PbO.value // 70
 */
export function fractionsFromGroup(group: GroupAnalyses): GroupFractions {
  const oxides = group.oxides ?? sharedOxides([...group.paints, ...group.slips]);
  if (oxides.length < 2)
    throw new RequirementError(
      `a mixing line needs at least two oxides measured throughout; shared: ${oxides.join(', ') || 'none'}`,
    );
  const [pooled, pooledSlips] = [poolSpots(group.paints), poolSpots(group.slips)];
  const paints = pooled.analyses;
  const line = fitLine({ ...group, paints, slips: pooledSlips.analyses }, oxides);
  const consistency = consistencyOf(line.chiSquare, line.df, pooled.df);
  const direction = directionOf(paints, oxides, line);
  const words = directionWords(direction, 'paint and slip');
  return {
    oxides,
    paintEnd: amountsOf(oxides, line.near, line.nearSigma),
    slipEnd: amountsOf(oxides, line.far, line.farSigma),
    estimates: paints.map((paint, i) => ({
      label: paint.label,
      estimate: {
        ...intervalOf(line, i, { consistency, df: pooled.df, words }),
        consistency,
        direction,
        witnesses: witnessesOf(paint, oxides, { line, f: line.fractions[i]! }),
        assumptions: assumptionsOf(group, oxides),
        warnings: [consistency.agree ? null : OFF_THE_LINE, words.warning].filter((w) => w !== null),
      },
    })),
    consistency,
    direction,
  };
}

const OFF_THE_LINE =
  'The paints lie off the line by more than their uncertainties: the recipe varied, or more than one slip was used. Do not draw these sherds off by this line before comparing with them: it draws them towards one another.';

function fitLine({ paints, slips, known }: GroupAnalyses, oxides: readonly string[]): MixingLine {
  const both = linePoints([...paints, ...slips], oxides);
  const line = fitMixingLine({
    points: both.points.slice(0, paints.length),
    ends: both.points.slice(paints.length),
    known: oxides.map((oxide) => known[oxide] ?? null),
  });
  // A closed point says one thing less, and an end held to 100 has one unknown less.
  const [closedPaints, closedSlips] = [
    both.closed.slice(0, paints.length).filter(Boolean).length,
    both.closed.slice(paints.length).filter(Boolean).length,
  ];
  const held = Number(closedSlips > 0) + Number(closedSlips > 0 && closedPaints > 0);
  return { ...line, df: line.df - closedPaints - closedSlips + held };
}

interface IntervalNeeds {
  readonly consistency: Consistency;
  readonly df: number | null;
  readonly words: { readonly figures: string };
}

function intervalOf(line: MixingLine, i: number, { consistency, df, words }: IntervalNeeds) {
  const widened = consistency.agree ? 1 : Math.sqrt(line.chiSquare / line.df);
  const usedDf = consistency.agree ? df : Math.min(line.df, df ?? line.df);
  const [f, sigma] = [line.fractions[i]!, widened * line.fractionSigma[i]!];
  const half = twoSided95(usedDf) * sigma;
  const within = (x: number) => Math.min(1, Math.max(0, x));
  const ends = { low: within(f - half), high: within(f + half) };
  const cannotTell = tellsNothing({ ...ends, unbounded: f }, words.figures);
  return { kind: 'group', f: within(f), unbounded: f, ...ends, sigma, df: usedDf, cannotTell } as const;
}

function directionOf(paints: readonly Analysed[], oxides: readonly string[], { near, far }: MixingLine) {
  const inSigmas = (x: number, j: number) => x / Math.sqrt(weighable(paints[0]!, oxides[j]!).variance);
  return directionBetween(near.map(inSigmas), far.map(inSigmas));
}

function witnessesOf(
  paint: Analysed,
  oxides: readonly string[],
  { line: { near, far }, f }: { line: MixingLine; f: number },
) {
  return oxides.map((oxide, j) => {
    const { value, variance } = weighable(paint, oxide);
    const span = far[j]! - near[j]!;
    const explained = near[j]! + f * span;
    const [alone, aloneSigma] =
      span === 0 ? [null, null] : [(value - near[j]!) / span, Math.sqrt(variance) / Math.abs(span)];
    return {
      oxide,
      alone,
      aloneSigma,
      measured: value,
      explained,
      z: (value - explained) / Math.sqrt(variance),
    };
  });
}

function amountsOf(oxides: readonly string[], values: readonly number[], sigmas: readonly number[]): Amounts {
  const amount = (value: number, sigma: number): Amount => ({
    value,
    limit: null,
    sigma: sigma > 0 ? sigma : null,
    sigmaBasis: sigma > 0 ? 'stated' : null,
    resolution: null,
  });
  return Object.fromEntries(oxides.map((oxide, j) => [oxide, amount(values[j]!, sigmas[j]!)]));
}

function assumptionsOf({ known, paints, slips }: GroupAnalyses, oxides: readonly string[]): string[] {
  const held = Object.entries(known).filter(([oxide]) => oxides.includes(oxide));
  return [
    `All ${paints.length} paints are one recipe with more or less of one slip (${slips.length} analyses).`,
    `The paint without slip holds ${held.map(([oxide, wt]) => `${wt} wt% ${oxide}`).join(', ')}.`,
    'Errors of the oxides are independent of each other.',
  ];
}
