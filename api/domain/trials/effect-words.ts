import { showEffect, tellingBounds } from './effect-size.ts';
import type { Effect, EffectVerdict, Outcome } from './types.ts';
import { termName } from './within-tiles.ts';

/** A number to two figures, with thousands set apart and a true minus sign. */
function plain(value: number, digits = 2): string {
  const rounded = Number(value.toPrecision(digits));
  const text = Math.abs(rounded) >= 1000 ? rounded.toLocaleString('en-GB') : String(rounded);
  return text.replace('-', '−');
}

/** What the odds, the share or the mean are of. */
const OF: Record<Outcome, string> = {
  glossy: 'a glossy zone',
  'satin-or-better': 'a satin or glossy zone',
  grade: 'one grade more',
  share: 'glassy area',
};
const MEAN_OF: Record<Outcome, string> = {
  glossy: 'share of glossy zones',
  'satin-or-better': 'share of satin or glossy zones',
  grade: 'mean grade',
  share: 'share of glassy area',
};

/**
 * A p value in words; never less than one in a million.
 *
 * @example
 * pInWords(0.0312) // 'p = .031'
 * pInWords(1e-9) // 'p < .000001'
 */
export function pInWords(p: number): string {
  if (p < 1e-6) return 'p < .000001';
  if (p >= 0.9995) return 'p = 1';
  const digits = p >= 0.1 ? 2 : p >= 0.01 ? 3 : Math.ceil(-Math.log10(p)) + 1;
  return `p = ${p.toFixed(digits).replace(/^0/, '')}`;
}

type Worded = Omit<Effect, 'sentence' | 'verdict'> & { readonly verdict: EffectVerdict };

function interval(low: string | null, high: string | null, level: number): string {
  const percent = `${plain(level * 100)} % interval`;
  if (low === null && high === null) return `${percent} with no bound from these tiles`;
  if (low === null) return `${percent} up to ${high}, no lower bound from these tiles`;
  if (high === null) return `${percent} from ${low}, no upper bound from these tiles`;
  return `${percent} ${low} to ${high}`;
}

const UNSIZED = 'cannot be put in a number here';

/** The bounds in words, those that tell nothing left off. */
function endsOf(effect: Worded): string {
  const { low, high } = tellingBounds(effect);
  const show = (bound: number | null) => (bound === null ? null : showEffect(bound, effect.scale));
  return interval(show(low), show(high), effect.level);
}

function oddsClause(effect: Worded, outcome: Outcome): string {
  const { estimate, low, high } = effect;
  const ends = endsOf(effect);
  if (estimate !== null)
    return `multiplies the odds of ${OF[outcome]} by ${showEffect(estimate, 'log-odds')} (${ends})`;
  if (low !== null)
    return `raises the odds of ${OF[outcome]} without a bound that these zones can show (${ends})`;
  if (high !== null)
    return `lowers the odds of ${OF[outcome]} without a bound that these zones can show (${ends})`;
  return `${UNSIZED} (${ends})`;
}

function differenceClause(effect: Worded, outcome: Outcome): string {
  const { estimate, scale } = effect;
  const unit = scale === 'share' ? ' percentage points' : ' grades';
  const ends = endsOf(effect);
  if (estimate === null) return `${UNSIZED} (${ends})`;
  const verb = estimate < 0 ? 'lowers' : 'raises';
  const size = showEffect(Math.abs(estimate), scale).replace('+', '');
  return `${verb} the ${MEAN_OF[outcome]} by ${size}${unit} (${ends})`;
}

function basis({ p, arrangements, draws, method, unitOfChange }: Worded): string {
  const where = { zone: 'within tiles', tile: 'between tiles of a firing', firing: 'between firings' }[
    unitOfChange
  ];
  if (p === null) return '';
  if (method === 'penalised') return `; compared ${where}, ${pInWords(p)} by penalised likelihood`;
  const inWords =
    method === 'approximate-permutation' ? pInWords(p).replace(/^p = /, 'p about ') : pInWords(p);
  if (draws !== undefined)
    return `; compared ${where}, ${inWords} over ${draws.toLocaleString('en-GB')} random arrangements`;
  if (arrangements === 1) return `; compared ${where}, where no other arrangement is possible`;
  const all = arrangements === null ? '' : ` over ${plain(arrangements, 3)} arrangements`;
  return `; compared ${where}, ${inWords}${all}`;
}

const OPENING: Record<EffectVerdict, (name: string) => string> = {
  matters: (name) => `${name} matters`,
  'no sign': (name) => `No sign that ${name} matters`,
  'cannot tell': (name) => `These zones cannot tell whether ${name} matters`,
};
/** Where p alone would do, but not among the comparisons of a factor with several levels. */
const HINT = (name: string) => `A hint, no more, that ${name} matters`;

/**
 * An effect as a sentence: verdict, size with interval, where it was compared, p beside it.
 *
 * @example
 * const effect = { factor: 'thickness', contrast: 'per 10 µm', unitOfChange: 'zone', method: 'exact-conditional', scale: 'log-odds', estimate: 1.1, low: 0.4, high: 2.1, level: 0.95, p: 0.002, arrangements: 160000, verdict: 'matters' }
 * effectSentence(effect, 'glossy') // 'thickness, per 10 µm, matters: it multiplies the odds of a glossy zone by 3 (95 % interval 1.5 to 8.2); compared within tiles, p = .0020 over 160,000 arrangements.'
 */
export function effectSentence(effect: Worded, outcome: Outcome): string {
  const name = `${termName({ factor: { name: effect.factor }, contrast: effect.contrast })},`;
  const clause =
    effect.scale === 'log-odds' ? oddsClause(effect, outcome) : differenceClause(effect, outcome);
  const hint = effect.verdict === 'no sign' && effect.p !== null && effect.p <= 1 - effect.level;
  const opening = hint ? HINT : OPENING[effect.verdict];
  const subject = clause.startsWith(UNSIZED)
    ? 'its size'
    : effect.verdict === 'matters'
      ? 'it'
      : 'as estimated, it';
  return `${opening(name)}: ${subject} ${clause}${basis(effect)}.`;
}
