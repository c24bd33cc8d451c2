import { RequirementError } from '../domain/requirement.ts';
import { effectInFigures, tellingBounds } from '../domain/trials/effect-size.ts';
import type { Effect, EffectVerdict, Outcome, TrialAnalysis } from '../domain/trials/types.ts';

export interface EffectRow {
  readonly factor: string;
  readonly contrast: string;
  readonly verdict: EffectVerdict;
  /** On the panel's axis: odds ratios, shares or grades; null where it is unbounded. */
  readonly estimate: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** The effect and its interval in figures. */
  readonly words: string;
}
export interface EffectsPanel {
  readonly scale: Effect['scale'];
  readonly axis: string;
  readonly rows: readonly EffectRow[];
}
export interface EffectsData {
  readonly id: string;
  readonly title: string;
  readonly panels: readonly EffectsPanel[];
  readonly level: number;
  /** Effects that there was no room for. */
  readonly hidden: number;
  readonly analysis: TrialAnalysis;
}

const OF: Readonly<Record<Outcome, string>> = {
  glossy: 'a glossy zone',
  'satin-or-better': 'a satin or glossy zone',
  grade: 'one grade more',
  share: 'glassy area',
};
const SHARE_OF: Readonly<Record<Outcome, string>> = {
  glossy: 'share of glossy zones',
  'satin-or-better': 'share of satin or glossy zones',
  grade: 'mean grade',
  share: 'share of glassy area',
};
const TITLES: Readonly<Record<Outcome, string>> = {
  glossy: 'What made zones glossy',
  'satin-or-better': 'What made zones satin or glossy',
  grade: 'What raised the gloss of zones',
  share: 'What made zones glassy',
};
const axisOf = (scale: Effect['scale'], outcome: Outcome): string =>
  scale === 'log-odds'
    ? `Odds of ${OF[outcome]}, times`
    : `Change of the ${SHARE_OF[outcome]}, ${scale === 'share' ? 'points' : 'grades'}`;

const SCALES = ['log-odds', 'share', 'grades'] as const;
const FIRST: readonly EffectVerdict[] = ['matters', 'no sign', 'cannot tell'];

/** Effects as they are drawn, what matters first; at most so many. */
export function effectsData(
  analysis: TrialAnalysis,
  { id, most = Number.POSITIVE_INFINITY }: { readonly id: string; readonly most?: number },
): EffectsData {
  const { effects, outcome } = analysis;
  const shown = [...effects]
    .sort((a, b) => FIRST.indexOf(a.verdict) - FIRST.indexOf(b.verdict))
    .slice(0, most);
  if (shown.length === 0)
    throw new RequirementError('a figure of effects shows at least one effect; these zones tell of none');
  const panels = SCALES.map((scale) => ({
    ...{ scale, axis: axisOf(scale, outcome) },
    rows: shown.filter((one) => one.scale === scale).map(rowOf),
  })).filter(({ rows }) => rows.length > 0);
  return {
    ...{ id, title: TITLES[outcome], panels, analysis, level: shown[0]!.level },
    hidden: effects.length - shown.length,
  };
}

function rowOf(effect: Effect): EffectRow {
  const { factor, contrast, verdict, scale } = effect;
  const drawn = (value: number | null) =>
    value === null ? null : scale === 'log-odds' ? Math.exp(value) : value;
  const told = tellingBounds(effect);
  return {
    ...{ factor, contrast, verdict, estimate: drawn(effect.estimate) },
    ...{ low: drawn(told.low), high: drawn(told.high) },
    words: effectInFigures(effect).replace(/\(.*\)$/, (bounds) => bounds.replaceAll(' ', '\u00a0')),
  };
}
