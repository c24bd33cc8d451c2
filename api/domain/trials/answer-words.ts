import { listInWords } from '../placement/words.ts';
import type { Joint } from './jointly.ts';
import type { TrialTable } from './trial-table.ts';
import type { Effect, EffectVerdict, Tangle } from './types.ts';

interface Answer {
  readonly effects: readonly Pick<Effect, 'factor' | 'verdict'>[];
  readonly joint: readonly Joint[];
  readonly tangles: readonly Pick<Tangle, 'kind' | 'sentence'>[];
}

/**
 * What mattered in a few plain sentences: what made a difference, what made one only together, what shows too little,
 * what cannot be told.
 *
 * @example
 * const table = { zones: [{}, {}], tiles: [{}], scores: [0, 1] }
 * answerInWords(table, { effects: [{ factor: 'coats', verdict: 'matters' }], joint: [], tangles: [] }) // 'From 2 zones of one tile, coats made a difference.'
 */
export function answerInWords(
  table: Pick<TrialTable, 'zones' | 'tiles' | 'scores'>,
  { effects, joint, tangles }: Answer,
): string {
  const size = `${table.zones.length} zones of ${table.tiles.length === 1 ? 'one tile' : `${table.tiles.length} tiles`}`;
  const ties = tangles.filter((t) => t.kind === 'same').map((t) => t.sentence);
  if (new Set(table.scores).size === 1)
    return [`All ${size} came out alike, so no factor can be seen to have made a difference.`, ...ties].join(
      ' ',
    );
  const told = joint.flatMap((one) => one.factors);
  const by = (verdict: EffectVerdict, before: readonly string[] = []) =>
    [...new Set(effects.filter((e) => e.verdict === verdict).map((e) => e.factor))].filter(
      (factor) => !before.includes(factor),
    );
  const matters = by('matters');
  const noSign = by('no sign', [...matters, ...told]);
  const untold = by('cannot tell', [...matters, ...told, ...noSign]);
  const found = [
    ...(matters.length > 0 ? [`${listInWords(matters)} made a difference.`] : []),
    ...joint.map((one) => one.sentence),
  ];
  const [first = 'no factor can be said to have made a difference.', ...more] = found;
  return [
    `From ${size}, ${first}`,
    ...more.map((words) => `Besides, ${words}`),
    ...(noSign.length > 0 ? [tooLittle(noSign)] : []),
    ...(untold.length > 0 ? [`These zones cannot tell about ${listInWords(untold, 'or')}.`] : []),
    ...ties,
  ].join(' ');
}

function tooLittle(factors: readonly string[]): string {
  const [interval, each] =
    factors.length === 1 ? ['its interval says', 'it'] : ['their intervals say', 'each'];
  return `Of ${listInWords(factors)} these zones show too little; ${interval} how much ${each} still could do.`;
}
