import type { Placement } from '../domain/placement/types.ts';
import { FEWEST_SHERDS } from '../domain/reference/choose-spread.ts';
import { confidenceEllipse } from '../domain/reference/ellipse.ts';
import type { Member, ReferenceModel } from '../domain/reference/types.ts';
import { covariance } from '../domain/statistics/covariance.ts';
import { type ShownGroup, type Slots, shownSamples } from './chosen-samples.ts';
import type { PairData } from './pair-plot.ts';
import type { TernaryData } from './ternary-plot.ts';

export interface OxideChoices<Oxides> extends Slots {
  readonly id: string;
  readonly oxides: Oxides;
}

/** The oxides whose shares differ the most between sherds in proportion, most plentiful first of those. */
export function tellingOxides({ parts, pca }: ReferenceModel, count: number): string[] {
  const pull = parts.map((oxide, k) => ({
    oxide,
    pull: pca.loadings.reduce((sum, loading, c) => sum + pca.eigenvalues[c]! * loading[k]! ** 2, 0),
  }));
  return pull
    .sort((one, other) => other.pull - one.pull)
    .slice(0, count)
    .map(({ oxide }) => oxide);
}

/** What a ternary diagram draws; null where an oxide is not among those compared. */
export function ternaryData(
  model: ReferenceModel,
  placements: readonly Placement[],
  { id, oxides, ...look }: OxideChoices<readonly [string, string, string]>,
): TernaryData | null {
  const at = oxides.map((oxide) => model.parts.indexOf(oxide));
  if (at.includes(-1)) return null;
  const { samples, groups } = shownSamples(model, placements, look);
  const shares = new Map(
    samples.map(({ id: sample, parts }) => {
      const three = at.map((k) => parts[k]!);
      const total = three.reduce((sum, part) => sum + part, 0);
      return [sample, three.map((part) => part / total) as [number, number, number]];
    }),
  );
  const title = `${oxides.join(', ')} of ${model.members.length} reference sherds and ${placements.length} replicas`;
  return { id, title, oxides, samples, groups, shares };
}

export interface PairChoices extends OxideChoices<readonly [string, string]> {
  readonly axis: PairData['axis'];
  readonly level: number;
  readonly ellipses: boolean;
}

/** What a plot of two oxides draws; null where an oxide is not among those compared. */
export function pairData(
  model: ReferenceModel,
  placements: readonly Placement[],
  choices: PairChoices,
): PairData | null {
  const { id, oxides, axis, level } = choices;
  const [i, j] = oxides.map((oxide) => model.parts.indexOf(oxide)) as [number, number];
  if (i < 0 || j < 0) return null;
  const { samples, groups } = shownSamples(model, placements, choices);
  const amounts = new Map(
    samples.map(({ id: sample, parts }) => [sample, [parts[i]!, parts[j]!] as [number, number]]),
  );
  const curves = model.groups.map((group, at) => {
    const members = model.members.filter((member) => member.group === group.id);
    return { slot: groups[at]!.slot, curve: ellipseOf(members, groups[at]!, { at: [i, j], axis, level }) };
  });
  const ellipses = choices.ellipses
    ? curves.flatMap(({ slot, curve }) => (curve === null ? [] : [{ slot, curve }]))
    : [];
  const title = `${oxides[1]} against ${oxides[0]} of ${model.members.length} reference sherds and ${placements.length} replicas`;
  return { id, title, oxides, axis, samples, groups, amounts, ellipses, level };
}

const TURNS = 72;

/** Where new members of a group would lie, in wt%: an ellipse of the amounts, or of their logarithms. */
function ellipseOf(
  members: readonly Member[],
  { name, n }: ShownGroup,
  { at, axis, level }: { at: readonly [number, number]; axis: PairData['axis']; level: number },
): [number, number][] | null {
  if (n < FEWEST_SHERDS) return null;
  const into = axis === 'log' ? Math.log : (value: number) => value;
  const back = axis === 'log' ? Math.exp : (value: number) => value;
  const rows = members.map(({ parts }) => at.map((k) => into(parts[k]!)));
  const scoreMean = [0, 1].map((k) => rows.reduce((sum, row) => sum + row[k]!, 0) / rows.length);
  const scoreCovariance = covariance(rows);
  const { centre, semiAxes, angle } = confidenceEllipse(
    { name, n, scoreMean, scoreCovariance },
    [0, 1],
    level,
  );
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return Array.from({ length: TURNS }, (_, turn) => {
    const [a, b] = [
      semiAxes[0] * Math.cos((2 * Math.PI * turn) / TURNS),
      semiAxes[1] * Math.sin((2 * Math.PI * turn) / TURNS),
    ];
    return [back(centre[0] + a * cos - b * sin), back(centre[1] + a * sin + b * cos)];
  });
}
