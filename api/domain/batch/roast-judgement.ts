import type { RoastResult } from './roast.ts';

/** What was seen when the roasted charge was broken up. */
export interface RoastLooks {
  readonly lump: boolean;
  /** Bright sulfide faces inside. */
  readonly glitters: boolean;
  readonly powder: 'none' | 'white' | 'yellow' | 'orange';
}

export type RoastVerdict =
  | 'not fully oxidised'
  | 'oxidised, sulfate kept'
  | 'looks oxidised'
  | 'mostly oxide'
  | 'cannot be told';

/** One thing to do; temperatures in °C, null where none belongs. */
export interface RoastStep {
  readonly action: 'grind' | 'roast' | 'look' | 'read sulfur' | 'use';
  readonly words: string;
  readonly celsius: { readonly low: number; readonly high: number } | null;
}

export interface RoastJudgement {
  readonly verdict: RoastVerdict;
  readonly because: readonly string[];
  readonly steps: readonly RoastStep[];
}

/** °C, the handbook value. */
export const GALENA_MELTS = 1114;

/** Why nobody should chase galena's melting point. */
export const NO_MELTING_NEEDED = `Galena does not have to melt. Glassy paint forms in firings only a little above 800 °C (common practice, no published source), far below galena's melting point of ${GALENA_MELTS} °C: what galena needs is air and heat until it has oxidised, then silica to combine with.`;

const GRIND: RoastStep = {
  action: 'grind',
  words: 'Break and grind the charge fine, damp: in a lump the air reaches only the outside.',
  celsius: null,
};
const ROAST: RoastStep = {
  action: 'roast',
  words: 'Roast it in a thin layer, in moving air, stirring, above about 600 °C; outdoors, out of the plume.',
  celsius: { low: 600, high: 900 },
};
const LOOK: RoastStep = {
  action: 'look',
  words: 'Break a piece: sulfide still glitters, oxide and sulfates are dull, yellow or white.',
  celsius: null,
};
const READ: RoastStep = {
  action: 'read sulfur',
  words: 'Have total sulfur read: with the weighing it narrows every range.',
  celsius: null,
};
const USE: RoastStep = {
  action: 'use',
  words: 'Ready for a batch; the sulfate that is left shows as SO3 in the fired paint and may blister it.',
  celsius: null,
};

/** wt% of galena that would still be seen or matter (common practice, no published source). */
const ENOUGH_GALENA = 0.5;

/**
 * What a roast came to, from the weighing's ranges and from what was seen, with the next steps. Glitter or a
 * weighing that needs galena mean not fully oxidised, whatever the temperature; no step ever asks for melting.
 * Common practice, no published source, except for the ranges.
 * @example
 * const lump = analyseRoast({ charge: [{ material: materialFromFormula({ id: 'g', name: 'galena' }, 'PbS'), amount: 100 }], massOut: 101, weighing: 0.1, celsius: 800, hours: 3 })
 * judgeRoast(lump, { lump: true, glitters: true, powder: 'yellow' }).verdict // 'not fully oxidised'
 * judgeRoast(lump, null).verdict // 'cannot be told'
 */
export function judgeRoast(roast: RoastResult, looks: RoastLooks | null): RoastJudgement {
  const galena = roast.phases.find((p) => p.formula === 'PbS')!.percent;
  const { perLead } = roast.sulfur;
  const because = reasons(roast, looks);
  if (looks?.glitters || galena.low > ENOUGH_GALENA)
    return { verdict: 'not fully oxidised', because, steps: [GRIND, ROAST, LOOK] };
  if (perLead.high < 0.02) return { verdict: 'mostly oxide', because, steps: [USE] };
  if (galena.high < ENOUGH_GALENA) return { verdict: 'oxidised, sulfate kept', because, steps: [USE, READ] };
  if (looks && perLead.low > 0.02) return { verdict: 'looks oxidised', because, steps: [READ, USE] };
  return { verdict: 'cannot be told', because, steps: [LOOK, READ] };
}

function reasons(roast: RoastResult, looks: RoastLooks | null): string[] {
  const galena = roast.phases.find((p) => p.formula === 'PbS')!.percent;
  const show = (x: number) => x.toFixed(1);
  const words = [`By mass the charge holds ${show(galena.low)} to ${show(galena.high)} wt% galena.`];
  if (looks?.glitters) words.push('It still glitters inside: sulfide that the air did not reach.');
  if (looks && !looks.glitters && galena.high > ENOUGH_GALENA)
    words.push(
      'It did not glitter inside: no coarse sulfide was seen. The weighing alone cannot exclude fine sulfide.',
    );
  if (looks?.lump) words.push('It set to a hard lump, which keeps air out.');
  if (looks && looks.powder !== 'none')
    words.push(`The ${looks.powder} powder on it is where air did its work: oxide or basic sulfates.`);
  if (looks?.glitters && galena.high < ENOUGH_GALENA)
    words.push('Weighing and looks contradict each other: weigh again, and check what the charge was.');
  if (roast.expected === null)
    words.push(
      `The phases seen at this temperature (${roast.expectedPhases.join(', ')}) cannot explain the weighing: the charge was not at that temperature long enough, or something else was in it.`,
    );
  return words;
}
