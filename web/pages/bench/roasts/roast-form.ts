import type { NewRoast, StoredRoast } from '../../../../api/contract/roast.ts';
import type { RoastLooks } from '../../../../api/domain/batch/roast-judgement.ts';
import { readNumber } from '../../../parts/numbers.ts';
import { blankLine, type LineRow, readLines, rowsOfLines } from '../parts/lines-form.ts';
import type { Bench } from '../parts/WithShelf.tsx';

/** A roast as typed. */
export interface RoastForm {
  readonly name: string;
  readonly date: string;
  readonly rows: readonly LineRow[];
  readonly massOut: string;
  readonly weighing: string;
  readonly celsius: string;
  readonly hours: string;
  readonly seen: boolean;
  readonly looks: RoastLooks;
  readonly sulfur: string;
  readonly sulfurSigma: string;
  readonly note: string;
}

export const BLANK_ROAST: RoastForm = {
  ...{ name: '', date: '', rows: [0, 1].map(blankLine), massOut: '', weighing: '0.1' },
  ...{ celsius: '800', hours: '', seen: false, sulfur: '', sulfurSigma: '', note: '' },
  looks: { lump: false, glitters: false, powder: 'none' },
};

export function formOfRoast(roast: StoredRoast): RoastForm {
  const { name, date, charge, massOut, weighing, celsius, hours, looks, sulfur, note } = roast;
  return {
    ...{ name, note, date: date ?? '', rows: rowsOfLines(charge), seen: looks !== null },
    ...{ massOut: `${massOut}`, weighing: `${weighing}`, celsius: `${celsius}`, hours: `${hours}` },
    looks: looks ?? BLANK_ROAST.looks,
    sulfur: sulfur ? `${sulfur.percent}` : '',
    sulfurSigma: sulfur ? `${sulfur.sigma}` : '',
  };
}

export interface ReadRoast {
  readonly wrong: ReadonlyMap<number, string>;
  /** Null while what is needed has not been typed yet. */
  readonly roast: NewRoast | null;
  readonly fault: string | null;
}

/** The roast in numbers, as far as it can be read. */
export function readRoast(form: RoastForm, { shelf }: Bench): ReadRoast {
  const { lines, wrong } = readLines(form.rows, (key) => shelf.materials.get(key)?.name ?? 'The material');
  if (lines.length === 0 || wrong.size > 0) return { wrong, roast: null, fault: null };
  if (!form.massOut.trim()) return { wrong, roast: null, fault: null };
  const needed = numbersOf(form);
  if (typeof needed === 'string') return { wrong, roast: null, fault: needed };
  const { name, date, note, seen, looks } = form;
  const said = { name: name.trim(), date: date || null, note, looks: seen ? looks : null };
  return { wrong, fault: null, roast: { ...said, ...needed, charge: lines } };
}

type Needed = Pick<NewRoast, 'massOut' | 'weighing' | 'celsius' | 'hours' | 'sulfur'>;

function numbersOf(form: RoastForm): Needed | string {
  const massOut = readNumber(form.massOut);
  const weighing = readNumber(form.weighing || '0');
  const celsius = readNumber(form.celsius);
  const hours = readNumber(form.hours || '0');
  if (massOut === null || massOut <= 0) return 'The mass out needs a number of grams above zero.';
  if (weighing === null || weighing < 0) return 'The error of a weighing needs a number of zero or more.';
  if (celsius === null || celsius < 20 || celsius > 1500)
    return 'The roast needs a temperature from 20 to 1500 °C.';
  if (hours === null || hours < 0) return 'The hours need a number of zero or more.';
  if (!form.sulfur.trim()) return { massOut, weighing, celsius, hours, sulfur: null };
  const percent = readNumber(form.sulfur);
  const sigma = readNumber(form.sulfurSigma);
  if (percent === null || percent < 0 || percent > 100) return 'The sulfur reading needs 0 to 100 wt%.';
  if (sigma === null || sigma < 0)
    return 'The ± of the sulfur reading needs a number of zero or more; 0 takes it as exact.';
  return { massOut, weighing, celsius, hours, sulfur: { percent, sigma } };
}
