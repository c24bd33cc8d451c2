import { listInWords } from '../placement/words.ts';
import { fromFirings } from '../trials/tile-words.ts';
import type { TrialAnalysis } from '../trials/types.ts';
import type { MethodReference } from './references.ts';
import { TRIAL_REFERENCES } from './trial-references.ts';

/** What the methods of a trial are written from. */
export interface TrialMethodsAbout {
  readonly analysis: Pick<
    TrialAnalysis,
    'zones' | 'tiles' | 'firings' | 'outcome' | 'effects' | 'models' | 'tangles' | 'leftOut'
  >;
  readonly version: string;
}

const count = (n: number, one: string) => `${n} ${n === 1 ? one : `${one}s`}`;
const OUTCOME = {
  glossy: 'whether a zone came out glossy',
  'satin-or-better': 'whether a zone came out satin or glossy',
  grade: 'the grade of a zone, in three steps',
  share: 'the share of a zone that is glassy',
} as const;

/**
 * The methods of an analysis of trials as a paragraph of plain scientific English, written from what was used: units
 * compared, tests, intervals, and what counts as mattering, each with its n. `trialReferences` lists what it cites.
 *
 * @example
 * const effect = { factor: 'coats', contrast: 'per coat', method: 'exact-conditional', level: 0.95, adjustedFor: [] };
 * const analysis = { zones: 24, tiles: 4, firings: 1, outcome: 'glossy', effects: [effect], models: [], tangles: [], leftOut: [] };
 * const said = trialMethods({ analysis, version: '1' });
 * said.includes('24 zones of 4 tiles from 1 firing') // true
 * said.includes('(Mehta and Patel 1995)') // true
 * said.includes('Firth') // false
 */
export function trialMethods({ analysis, version }: TrialMethodsAbout): string {
  const { effects, outcome, zones, tiles, firings, tangles, leftOut } = analysis;
  const level = effects[0]?.level ?? 0.95;
  return [
    `${count(zones, 'zone')} of ${count(tiles, 'tile')}${fromFirings(firings)} were compared by ${OUTCOME[outcome]}; gloss was judged by eye in the words of the trade (common practice, no published source).`,
    ...(leftOut.length > 0
      ? [`${count(leftOut.length, 'zone')} were left out, each for a reason given.`]
      : []),
    'What varied between zones of a tile was compared within tiles alone, and what varied between tiles with each tile as one unit within its firing, so that zones of one tile never count as independent tiles.',
    ...INTERVALS.flatMap(({ used, words }) => (effects.some(used) ? [words] : [])),
    ...modelsInWords(analysis),
    `A factor is said to matter only where the two-sided p is at most ${Number((1 - level).toPrecision(3))}, divided by the number of contrasts where it has several (Bonferroni), and where it is not tied to another factor.`,
    ...(tangles.some(({ kind }) => kind === 'same')
      ? [
          'Of factors tied exactly, one at least is said to have made a difference where the column that they share passes that test; which of them it was is not told.',
        ]
      : []),
    `Computed with Nearsherd ${version}.`,
  ].join(' ');
}

type Used = (effect: { readonly method: string; readonly draws?: number }) => boolean;
const by =
  (...methods: readonly string[]): Used =>
  ({ method }) =>
    methods.includes(method);

const INTERVALS: readonly { used: Used; words: string; cites: readonly MethodReference[] }[] = [
  {
    used: by('exact-conditional'),
    words:
      'Within tiles, p and interval come from the exact conditional distribution over every arrangement of the outcomes, the interval with mid-p limits (Mehta and Patel 1995).',
    cites: [TRIAL_REFERENCES.conditional],
  },
  {
    used: by('penalised'),
    words:
      'Where holding the other factors left too few arrangements, they come from the profile of a penalised likelihood with one constant a tile (Firth 1993; Heinze and Schemper 2002).',
    cites: [TRIAL_REFERENCES.penalty, TRIAL_REFERENCES.profile],
  },
  {
    used: by('exact-permutation', 'sampled-permutation', 'approximate-permutation'),
    words:
      'Differences of shares and grades come from permuting the units compared, the test inverted (Garthwaite 1996).',
    cites: [TRIAL_REFERENCES.permutation],
  },
  {
    used: (effect) => effect.draws !== undefined || by('sampled-permutation')(effect),
    words: 'Where there were too many permutations to count, a seeded sample of them was drawn.',
    cites: [],
  },
  {
    used: by('approximate-permutation'),
    words:
      'Where other factors were held, what they leave was permuted, which makes p approximate (Freedman and Lane 1983).',
    cites: [TRIAL_REFERENCES.held],
  },
];

function modelsInWords({ models }: TrialMethodsAbout['analysis']): string[] {
  const kinds = new Set(models.map(({ kind }) => kind));
  const named = [
    ...(kinds.has('firth-logistic') ? ['Firth’s logistic regression (Firth 1993)'] : []),
    ...(kinds.has('proportional-odds') || kinds.has('penalised-proportional-odds')
      ? ['a proportional-odds model (McCullagh 1980)']
      : []),
  ];
  return named.length > 0 ? [`Beside them stands ${listInWords(named)}, which decided nothing.`] : [];
}

/**
 * The published methods that an analysis of trials used, in the order in which they are cited.
 *
 * @example
 * const effect = { method: 'penalised', adjustedFor: [] };
 * trialReferences({ effects: [effect], models: [] }).map((one) => one.key) // ['Firth 1993', 'Heinze and Schemper 2002']
 */
export function trialReferences({
  effects,
  models,
}: Pick<TrialMethodsAbout['analysis'], 'effects' | 'models'>): MethodReference[] {
  const ofModels = models.map(({ kind }) =>
    kind === 'firth-logistic' ? TRIAL_REFERENCES.penalty : TRIAL_REFERENCES.ordinal,
  );
  const ofIntervals = INTERVALS.filter(({ used }) => effects.some(used)).flatMap(({ cites }) => cites);
  return [...new Set([...ofIntervals, ...ofModels])];
}
