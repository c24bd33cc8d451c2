import type { Effect } from './types.ts';

type Sized = Pick<Effect, 'scale' | 'estimate' | 'low' | 'high'>;
type Scale = Effect['scale'];

/** How far apart two means can be at all. Odds have no such end. */
const FARTHEST: Readonly<Record<Scale, number>> = {
  'log-odds': Number.POSITIVE_INFINITY,
  share: 1,
  grades: 2,
};

/**
 * The bounds of an effect that tell something: null where there is none, and where the bound lies as far off as two
 * shares (1) or two mean grades (2) can ever be apart, since nothing could lie beyond it.
 *
 * @example
 * tellingBounds({ scale: 'share', estimate: 0.4, low: -0.1, high: 1.12 }) // { low: -0.1, high: null }
 * tellingBounds({ scale: 'log-odds', estimate: 3, low: 1.5, high: 6 }) // { low: 1.5, high: 6 }
 */
export function tellingBounds({ scale, low, high }: Sized): Pick<Effect, 'low' | 'high'> {
  const far = FARTHEST[scale];
  return { low: low !== null && low > -far ? low : null, high: high !== null && high < far ? high : null };
}

/**
 * A size to two figures on the scale it is read on: odds as a factor, shares in percentage points with their sign,
 * grades with their sign.
 *
 * @example
 * showEffect(1.0986, 'log-odds') // '3'
 * showEffect(-0.1049, 'share') // '−10'
 * showEffect(0.456, 'grades') // '+0.46'
 */
export function showEffect(value: number, scale: Scale): string {
  if (scale === 'log-odds') return showOdds(Math.exp(value));
  const shown = Number((scale === 'share' ? 100 * value : value).toPrecision(2));
  return shown === 0 ? '0' : `${shown < 0 ? '−' : '+'}${Math.abs(shown)}`;
}

function showOdds(odds: number): string {
  if (odds >= 1e5) return 'over 100,000';
  if (odds < 1e-3) return 'under 0.001';
  return odds.toLocaleString('en-GB', { maximumSignificantDigits: 2 });
}

const UNITS: Readonly<Record<Scale, string>> = { 'log-odds': '', share: ' points', grades: ' grades' };

/**
 * An effect with its bounds in figures, as a figure or a table shows it.
 *
 * @example
 * effectInFigures({ scale: 'share', estimate: 0.4, low: -0.1, high: 1.12 }) // '+40 points (−10 or more)'
 * effectInFigures({ scale: 'log-odds', estimate: null, low: 1.0986, high: null }) // '×3 or more'
 */
export function effectInFigures(effect: Sized): string {
  const { scale, estimate } = effect;
  const { low, high } = tellingBounds(effect);
  const sign = scale === 'log-odds' ? '×' : '';
  const between = boundsInFigures([low, high], scale);
  if (estimate !== null) return `${sign}${showEffect(estimate, scale)}${UNITS[scale]} (${between})`;
  return low === null && high === null ? between : `${sign}${between}`;
}

function boundsInFigures([low, high]: readonly [number | null, number | null], scale: Scale): string {
  if (low !== null && high !== null) return `${showEffect(low, scale)} to ${showEffect(high, scale)}`;
  if (low !== null) return `${showEffect(low, scale)} or more`;
  return high === null ? 'no bounds' : `${showEffect(high, scale)} or less`;
}
