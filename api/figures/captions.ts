import { listInWords } from '../domain/placement/words.ts';
import type { ReferenceModel, Scale } from '../domain/reference/types.ts';
import { chemical } from './chemical.ts';
import type { LoadingsData } from './loadings-data.ts';
import type { ProfileData } from './profile-data.ts';
import type { ScoresData } from './scores-data.ts';
import { unnamedLoadings } from './scores-loadings.ts';
import { numeral } from './text.ts';

const SCALES: Readonly<Record<Scale, string>> = {
  'log-ratio': 'centred log-ratios',
  log10: 'decimal logarithms of closed wt%',
  standardised: 'standardised closed wt%',
};
const percent = (share: number) => `${numeral(100 * share, 1)} %`;
const sherds = (n: number) => (n === 1 ? '1 sherd' : `${n} sherds`);

/** What every caption says of what was compared: n of each group, oxides, scale. */
export const basisOf = ({ parts, settings }: ReferenceModel) =>
  `${parts.length} oxides (${parts.map(chemical).join(', ')}) as ${SCALES[settings.scale]}`;

export function scoresCaption(data: ScoresData, model: ReferenceModel): string {
  const [i, j] = data.components;
  const groups = data.groups.map(({ name, n }) => `${name}, n = ${n}`).join('; ');
  const unnamed = unnamedLoadings(data);
  const withEllipse = data.groups.filter(({ ellipse }) => ellipse !== null).length;
  return [
    `Scores on the principal components ${i + 1} (${percent(data.explained[0])} of the variance) and ${j + 1} (${percent(data.explained[1])}) of reference sherds (${groups || 'none'})${data.replicas.length > 0 ? `, with ${data.replicas.length === 1 ? 'one replica' : `${data.replicas.length} replicas`} projected onto them` : ''}.`,
    `Components of ${basisOf(model)}, computed from the references alone; one unit is as long across as up.`,
    ...(withEllipse > 0
      ? [
          `Ellipses: where ${numeral(100 * data.level, 0)} % of new members of a group would lie (Hotelling’s T² for a new observation).`,
        ]
      : []),
    ...(data.loadings ? ['Arrows: loadings of the oxides, all lengthened alike.'] : []),
    ...(unnamed.length > 0 ? [`Too short to be named: ${listInWords(unnamed.map(chemical))}.`] : []),
  ].join(' ');
}

export function loadingsCaption(data: LoadingsData, model: ReferenceModel): string {
  const panels = data.panels.map(
    ({ component, explained }) => `${component + 1} (${percent(explained)} of the variance)`,
  );
  return `Loadings on the principal component${panels.length > 1 ? 's' : ''} ${panels.join(' and ')} of ${basisOf(model)}, from ${sherds(model.members.length)}. An oxide whose bar points to the right is the more plentiful, against the others, the further to the right a sherd lies on that component.`;
}

export function profileCaption(data: ProfileData, model: ReferenceModel): string {
  const { group, basis: shown, replicas } = data;
  const chosen = replicas.find((replica) => replica.chosen);
  const spread = data.rows.some((row) => row.spread.quartiles !== null)
    ? 'Thin line: all sherds; bar: the middle half; upright line: the median.'
    : 'Each sherd is one mark.';
  const out = model.parts.length - data.rows.length;
  return [
    `${chosen ? chosen.label : `${replicas.length} replicas`}${chosen && replicas.length > 1 ? ` and ${replicas.length - 1} more` : ''} against ${group.name} (n = ${group.n}), oxide by oxide, ${shown === 'ratio' ? 'as multiples of the group’s centre' : 'in wt% of the oxides compared, closed to 100'}, on a logarithmic scale.`,
    spread,
    ...(chosen ? [`The oxides that hold ${chosen.label} off the group most come first.`] : []),
    ...(out > 0 ? [`The ${out} oxides that weigh least are not shown.`] : []),
    `Compared on ${basisOf(model)}.`,
  ].join(' ');
}
