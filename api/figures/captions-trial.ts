import { listInWords } from '../domain/placement/words.ts';
import { tilesInWords } from '../domain/trials/tile-words.ts';
import type { ChanceCurve, Grade, TrialAnalysis } from '../domain/trials/types.ts';
import type { EffectsData } from './effects-data.ts';
import { numeral } from './text.ts';
import type { ShownZone, ZonesData } from './zones-data.ts';

const many = (n: number, one: string) => `${n} ${n === 1 ? one : `${one}s`}`;
const percent = (share: number) => `${numeral(100 * share, 0)} %`;
const GRADES: readonly (Grade | null)[] = ['matt', 'satin', 'glossy', null];

export function zonesCaption(data: ZonesData): string {
  const { panels, tiles, thickness, unplaced } = data;
  const zones = panels.flatMap((panel) => panel.zones);
  const counts = GRADES.flatMap((grade) => {
    const n = zones.filter((zone) => zone.grade === grade).length;
    return n === 0 ? [] : [`${n} ${grade ?? 'not judged'}`];
  });
  return [
    `${many(zones.length, 'zone')} of ${many(tiles, 'tile')}, each in its place (n: ${counts.join(', ')})${firedInWords(data)}.`,
    `Gloss was judged by eye, in the words of the trade (common practice, no published source)${thicknessInWords(zones, thickness)}.`,
    ...(panels.some(({ ratio }) => ratio !== null) ? ['Zones in a frame lie as drawn on its picture.'] : []),
    ...(unplaced > 0 ? [`${many(unplaced, 'zone')} without a place on a grid or a picture not shown.`] : []),
  ].join(' ');
}

function thicknessInWords(zones: readonly ShownZone[], by: ZonesData['thickness']): string {
  if (zones.every((zone) => zone.thickness === '')) return '';
  return by === 'coats'
    ? '; thickness is in coats of paint, as noted'
    : '; thickness of the paint is in µm, as noted';
}

/** Only what went through a fire is said to have. */
function firedInWords({ tiles, firings, unfired }: ZonesData): string {
  const some = unfired.length > 0 ? `${many(tiles - unfired.length, 'tile')} ` : '';
  const of = (judged: boolean) => unfired.filter((one) => one.judged === judged).map(({ label }) => label);
  return [
    ...(firings.length > 0 ? [`${some}fired in ${listInWords(firings)}`] : []),
    ...(of(true).length > 0 ? [`no firing noted for ${tilesInWords(of(true))}`] : []),
    ...(of(false).length > 0 ? [`not fired yet: ${tilesInWords(of(false))}`] : []),
  ]
    .map((words) => `; ${words}`)
    .join('');
}

const METHODS: Readonly<Record<string, string>> = {
  'exact-conditional': 'every arrangement of the outcomes within a tile (exact conditional test)',
  'exact-permutation': 'every permutation of the units compared',
  'sampled-permutation': 'permutations of the units compared, drawn at random',
  'approximate-permutation': 'permutations of what the other factors leave (approximate)',
  penalised: 'penalised likelihood (Firth), where too few arrangements were left',
};
const UNITS = {
  zone: 'zones within their tile',
  tile: 'whole tiles within their firing',
  firing: 'whole firings',
} as const;
const SCALES = {
  'log-odds': 'what one step multiplies the odds by',
  share: 'difference in hundredths of the zones (points)',
  grades: 'difference of the mean grade',
} as const;

export function effectsCaption({ analysis, level, hidden, panels }: EffectsData): string {
  const { effects } = analysis;
  const methods = [...new Set(effects.map(({ method }) => METHODS[method] ?? method))];
  const open = panels.some(({ rows }) => rows.some(({ low, high }) => low === null || high === null));
  const compared = panels.map(({ scale }) => {
    const units = new Set(effects.filter((one) => one.scale === scale).map((one) => UNITS[one.unitOfChange]));
    return `${SCALES[scale]}, comparing ${listInWords([...units])}`;
  });
  return [
    `Effect of each factor with its ${percent(level)} interval, ${basis(analysis)}: ${compared.join('; ')}.`,
    `Intervals by ${listInWords(methods)}. A full mark: the factor matters; a hollow one: no sign of it, or it cannot be told.`,
    ...(open ? ['An arrow: these zones set no bound on that side.'] : []),
    ...analysis.tangles.filter(({ kind }) => kind === 'same').map(({ sentence }) => sentence),
    ...(hidden > 0 ? [`${many(hidden, 'more effect')} not shown.`] : []),
  ].join(' ');
}

const basis = ({ zones, tiles, firings, counts }: TrialAnalysis): string =>
  `from ${many(zones, 'zone')} of ${many(tiles, 'tile')}${firings === 0 ? ', no firing noted' : ` and ${many(firings, 'firing')}`} (${counts.matt} matt, ${counts.satin} satin, ${counts.glossy} glossy)`;

export function chanceCaption({ against, of, data, held, level, note }: ChanceCurve): string {
  const tiles = new Set(data.map(({ tile }) => tile)).size;
  const kept = Object.entries(held).map(
    ([name, at]) => `${name} at ${typeof at === 'number' ? numeral(at, 1) : at}`,
  );
  return [
    `Chance of a ${of} zone against ${against}: penalised logistic regression (Firth) with its ${percent(level)} interval, from ${many(data.length, 'zone')} of ${many(tiles, 'tile')}, each a dot.`,
    ...(kept.length > 0 ? [`Held: ${kept.join(', ')}.`] : []),
    note,
  ].join(' ');
}
