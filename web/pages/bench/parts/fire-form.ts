import type { FireEntry } from '../../../../api/domain/batch/entries.ts';
import { readNumber } from '../../../parts/numbers.ts';

/** A fire as typed. */
export interface FireForm {
  readonly celsius: string;
  readonly atmosphere: 'air' | 'smoke';
  /** Sulfur kept per lead: both empty for what the temperature leads one to expect. */
  readonly low: string;
  readonly high: string;
}

export const USUAL_FIRE: FireForm = { celsius: '850', atmosphere: 'air', low: '', high: '' };

export function formOfFire({ celsius, atmosphere, sulfurPerLead }: FireEntry): FireForm {
  const text = (x: number | undefined) => (x === undefined ? '' : String(x));
  return {
    celsius: String(celsius),
    atmosphere,
    low: text(sulfurPerLead?.low),
    high: text(sulfurPerLead?.high),
  };
}

/** The fire, or what is wrong with it. */
export function readFire({ celsius, atmosphere, low, high }: FireForm): FireEntry | string {
  const degrees = readNumber(celsius);
  if (degrees === null || degrees < 20 || degrees > 1500)
    return `A firing needs a temperature from 20 to 1500 °C; “${celsius.trim()}” is not.`;
  if (!low.trim() && !high.trim()) return { celsius: degrees, atmosphere, sulfurPerLead: null };
  const [least, most] = [readNumber(low || '0'), readNumber(high || low)];
  if (least === null || most === null || least < 0 || most < least || most > 1)
    return 'Sulfur kept per lead needs a range from 0 to 1 mol/mol, the smaller figure first.';
  return { celsius: degrees, atmosphere, sulfurPerLead: { low: least, high: most } };
}
