import { hoursMinutes } from '../../../../api/domain/firing/stages.ts';
import type { Bounded } from '../../../../api/domain/firing/types.ts';
import { showPlain } from '../../../parts/numbers.ts';

const whole = (value: number) => showPlain(Math.round(value), 6);

/** `850 °C (843 to 857)`. */
export const celsius = ({ value, low, high }: Bounded) =>
  `${whole(value)} °C (${whole(low)} to ${whole(high)})`;
/** `850 ± 7 °C`. */
export const celsiusError = ({ value, low, high }: Bounded) =>
  `${whole(value)} ± ${whole(Math.max(value - low, high - value))} °C`;
/** °C per hour, rounded to what the bounds bear. */
export const perHour = ({ value, low, high }: Bounded) => `${whole(value)} (${whole(low)} to ${whole(high)})`;
/** Seconds: `0:20 h (0:10 to 0:25)`. */
export const hours = ({ value, low, high }: Bounded) =>
  `${hoursMinutes(value)} h (${hoursMinutes(low)} to ${hoursMinutes(high)})`;
