import type { FiredBatch } from './batch.ts';
import type { Fire } from './fire.ts';
import { NO_MELTING_NEEDED, type RoastStep } from './roast-judgement.ts';

/** Something a batch's maker should know before firing it. */
export interface Advice {
  readonly what: 'roast missing' | 'sulfide possible' | 'no silica' | 'sulfate' | 'hotter is no cure';
  readonly words: string;
  readonly steps: readonly RoastStep[];
}

/**
 * What stands between a batch and a glassy paint, as far as its chemistry tells: raw sulfide that was never roasted
 * (adding more of it does not help), no silica for the lead to combine with, sulfate left over. Never asks for
 * galena's melting point. Common practice, no published source; sulfur ranges as in `sulfurOutlook`.
 * @example
 * const raw = [{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 60 }, { material: materialFromFormula({ id: 'q', name: 'quartz' }, 'SiO2'), amount: 40 }]
 * adviseBatch(fireBatch(raw, fireAt({ celsius: 850 })), fireAt({ celsius: 850 }))[0].what // 'roast missing'
 */
export function adviseBatch(fired: FiredBatch, fire: Fire): Advice[] {
  const percent = (oxide: string) => fired.oxides.find((o) => o.oxide === oxide)?.percent ?? 0;
  const advice: Advice[] = [];
  advice.push(...sulfideAdvice(fired));
  if (percent('PbO') > 0 && percent('SiO2') < 1)
    advice.push({
      what: 'no silica',
      words: 'The batch brings no silica: its lead can only glaze by taking silica from the slip beneath.',
      steps: [],
    });
  if (fired.sulfur.kept.high > 0)
    advice.push({
      what: 'sulfate',
      words: `At ${fire.celsius} °C ${show(fired.sulfur.kept.low)} to ${show(fired.sulfur.kept.high)} g of SO3 may stay (${fire.sulfurWords}): not all sulfur leaves at 700 to 900 °C.`,
      steps: [],
    });
  return advice;
}

const show = (x: number) => String(Number(x.toPrecision(3)));

/** Moles of sulfide per mole of lead from which a charge counts as not roasted, and as worth a look. */
const RAW = 0.1;
const TRACE = 0.02;

function sulfideAdvice(fired: FiredBatch): Advice[] {
  const { low, high } = fired.sulfur.sulfide;
  const lead = (fired.oxides.find((o) => o.oxide === 'PbO')?.moles ?? 0) * 32.06;
  if (low > RAW * lead && low > 0) return roastMissing(low);
  if (!(high > TRACE * lead)) return [];
  const words = `Up to ${show(high)} g of sulfur may still be sulfide, as far as the weighing of the roast tells: break a piece and look for glitter, or have its sulfur read.`;
  return [{ what: 'sulfide possible', words, steps: [] }];
}

function roastMissing(sulfide: number): Advice[] {
  const words = `${show(sulfide)} g of sulfur are still sulfide. Raw galena in a paint gives no glaze, and more of it gives none either: the roast is the missing step. Grind it, heat it above about 600 °C in air, weigh it before and after, and use the roasted charge.`;
  const step: RoastStep = {
    action: 'roast',
    words: 'Roast the ground ore first, outdoors.',
    celsius: { low: 600, high: 900 },
  };
  return [
    { what: 'roast missing', words, steps: [step] },
    { what: 'hotter is no cure', words: NO_MELTING_NEEDED, steps: [] },
  ];
}
