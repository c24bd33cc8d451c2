import type { NormalisationSettings } from '../composition/types.ts';
import type { GroupModel, ReferenceModel } from '../reference/types.ts';
import { METHOD_REFERENCES, type MethodReference } from './references.ts';

/** What a methods paragraph is written from: a fitted model, how analyses were written, and what was placed. */
export interface MethodsAbout {
  readonly model: ReferenceModel;
  readonly normalisation: NormalisationSettings;
  /** What was analysed: paint, slip, body or the whole. */
  readonly measured: string;
  /** Replicas placed. */
  readonly placed: number;
  /** Values below detection among them. */
  readonly replacedPlaced: number;
  /** Specimens left out by hand. */
  readonly leftOutByHand: number;
  /** Samples from whose paint slip was drawn off before comparing. */
  readonly slipDrawnOff: number;
  readonly version: string;
}

const many = (n: number, one: string, more = `${one}s`) => `${n} ${n === 1 ? one : more}`;
const list = (words: readonly string[]) =>
  words.length < 2 ? (words[0] ?? 'none') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/**
 * The methods of a comparison as a paragraph of plain scientific English, written from its settings: material, oxides,
 * normalisation, detection limits, scale, components, spreads and the test, each with its n. References are given as
 * author and year; `methodReferences` lists them.
 *
 * @example
 * const model = { settings: { scale: 'log-ratio', replacement: { fraction: 0.65 } }, parts: ['SiO2', 'PbO'], replaced: [], members: [1, 2, 3], groups: [{ name: 'Red', n: 3, spread: null, refusal: 'too few' }] };
 * const forms = { iron: 'Fe2O3', manganese: 'MnO', copper: 'CuO', lead: 'PbO', sulfur: 'SO3', volatileFree: true };
 * const about = { model, normalisation: forms, measured: 'paint', placed: 1, replacedPlaced: 0, leftOutByHand: 0, slipDrawnOff: 0, version: '1' };
 * methodsParagraph(about).includes('1 replica was placed among 3 reference sherds of one ware group (Red, n = 3)') // true
 * methodsParagraph(about).includes('No value compared was below detection.') // true
 */
export function methodsParagraph(about: MethodsAbout): string {
  return [
    compared(about),
    normalised(about.normalisation),
    belowDetection(about),
    ...drawnOff(about),
    scaled(about.model),
    'Principal components were computed from the references alone; replicas were projected onto them and took no part in fitting.',
    ...spreads(about.model),
    ...tested(about.model),
    `Computed with Nearsherd ${about.version}.`,
  ].join(' ');
}

function compared({ model, measured, placed, leftOutByHand }: MethodsAbout): string {
  const groups = model.groups.map(({ name, n }) => `${name}, n = ${n}`).join('; ');
  const count = model.groups.length === 1 ? 'one ware group' : `${model.groups.length} ware groups`;
  const by =
    leftOutByHand > 0 ? ` ${many(leftOutByHand, 'specimen')} left out by hand are listed apart.` : '';
  return `The ${measured === 'whole' ? 'composition' : `composition of the ${measured}`} of ${many(placed, 'replica')} was placed among ${many(model.members.length, 'reference sherd')} of ${count} (${groups}), on ${many(model.parts.length, 'oxide')}: ${list(model.parts)}.${by}`;
}

function normalised({ iron, manganese, copper, lead, sulfur, volatileFree }: NormalisationSettings): string {
  const forms = list([iron, manganese, copper, lead, sulfur]);
  const volatiles = volatileFree ? 'without volatiles' : 'with volatiles where reported';
  return `Analyses as reported were converted to oxides with the standard atomic weights of 2021 (Prohaska et al. 2022), the elements of several valences as ${forms}, closed to 100 wt% ${volatiles}, and averaged over the spots of a specimen; the oxides compared were closed to 100 again.`;
}

function belowDetection({ model, replacedPlaced }: MethodsAbout): string {
  const n = model.replaced.length + replacedPlaced;
  if (n === 0) return 'No value compared was below detection.';
  const { fraction } = model.settings.replacement;
  return `${n === 1 ? 'One value' : `${n} values`} below detection ${n === 1 ? 'was' : 'were'} replaced by ${fraction} of the detection limit, the detected oxides shrinking alike (multiplicative replacement; Martín-Fernández et al. 2003).`;
}

function drawnOff({ slipDrawnOff }: MethodsAbout): string[] {
  if (slipDrawnOff === 0) return [];
  return [`Slip was drawn off ${many(slipDrawnOff, 'sample')} by mass before comparing, as listed apart.`];
}

const SCALED: Readonly<Record<ReferenceModel['settings']['scale'], string>> = {
  'log-ratio':
    'Compositions were expressed as centred log-ratios, so that distances are Aitchison distances (Aitchison 1986).',
  log10: 'Closed wt% were taken as decimal logarithms.',
  standardised:
    'Closed wt% were standardised, each oxide to mean 0 and standard deviation 1 over all references.',
};
const scaled = ({ settings }: ReferenceModel) => SCALED[settings.scale];

const SPREADS = {
  sample: 'its sample covariance',
  components: 'its sample covariance on principal components',
  'ledoit-wolf': 'a covariance shrunk after Ledoit and Wolf (2004)',
  oas: 'a covariance shrunk after Chen et al. (2010), the terms in 2/p left out,',
} as const;

function spreads({ groups }: ReferenceModel): string[] {
  const judged = groups.filter(({ spread }) => spread !== null);
  const refused = groups.filter(({ spread }) => spread === null);
  const each = judged.map(({ name, n, spread }) => {
    const df = spread!.limit === null ? '' : `, ${n - spread!.p} degrees of freedom`;
    return `${name} by ${SPREADS[spread!.method]} in p = ${spread!.p} directions (n = ${n}${df})`;
  });
  return [
    ...(each.length > 0
      ? [`The spread of each ware group was measured for itself: ${each.join('; ')}.`]
      : []),
    ...(refused.length > 0
      ? [`${list(refused.map(({ name, n }) => `${name} (n = ${n})`))} allowed no measure of spread.`]
      : []),
  ];
}

const tests = ({ spread }: GroupModel) => spread !== null && spread.limit !== null;

function tested({ groups }: ReferenceModel): string[] {
  if (groups.every(({ spread }) => spread === null)) return [];
  const rank =
    'A rank free of any distribution says how many of a group’s members lie at least as far out as a sample put among them, the spread (and the components, where used) fitted to all of them alike.';
  const off = groups.some(({ memberOff }) => memberOff)
    ? [
        'What the components leave out was judged by the distance off them, beside that of each member off components fitted without it (the same components where there are more than 500 references).',
      ]
    : [];
  if (!groups.some(tests)) return [rank];
  return [
    'Membership probabilities are those of Hotelling’s T² for a new observation (Hotelling 1931), F with p and n − p degrees of freedom; a member is held against the others of its group, itself left out.',
    ...off,
    rank,
  ];
}

/**
 * The published methods that a comparison used, in the order in which they are used.
 *
 * @example
 * const model = { settings: { scale: 'log10' }, replaced: [], groups: [] };
 * methodReferences({ model, replacedPlaced: 0 }).map((one) => one.key) // ['Prohaska et al. 2022']
 */
export function methodReferences({
  model,
  replacedPlaced,
}: Pick<MethodsAbout, 'model' | 'replacedPlaced'>): MethodReference[] {
  const methods = new Set(model.groups.map(({ spread }) => spread?.method));
  const used: (keyof typeof METHOD_REFERENCES)[] = ['atomicWeights'];
  if (model.replaced.length + replacedPlaced > 0) used.push('replacement');
  if (model.settings.scale === 'log-ratio') used.push('logRatio');
  if (methods.has('ledoit-wolf')) used.push('ledoitWolf');
  if (methods.has('oas')) used.push('oas');
  if (model.groups.some(tests)) used.push('hotelling');
  return used.map((key) => METHOD_REFERENCES[key]);
}
