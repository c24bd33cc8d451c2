import type { GroupUncertainty, Interval } from './types.ts';

/** What a sentence about draws is made from. */
export interface DrawnGroups {
  readonly label: string;
  readonly draws: number;
  readonly groups: readonly GroupUncertainty[];
}

/** Share of draws from which on something may be claimed. */
const SURE = 0.95;

const count = (n: number) => n.toString().replace(/\B(?=(\d{3})+$)/g, ',');
const percent = (share: number) => {
  if (share > 0 && share < 0.01) return 'under 1 %';
  if (share < 1 && share > 0.99) return 'over 99 %';
  return `${Math.round(100 * share)} %`;
};
const figure = (p: number) => (p < 0.001 ? '< 0.001' : p.toPrecision(2));
const between = ({ low, high }: Interval) => `${figure(low)} to ${figure(high)}`;

/**
 * What the draws allow one to say of a sample and one group (by default the one it is most often inside or at the
 * edge of, else most often nearest to), and no more: a verdict is claimed only where at least
 * 95 % of draws give it.
 * @example
 * at = { low: 1, median: 2, high: 3 }
 * group = (inside, outside) => ({ group: 'g', name: 'Red Terrace ware', distance: at, d2: at, membership: { low: 0.02, median: 0.1, high: 0.4 }, inside, outside, nearest: 1 })
 * uncertaintySentence({ label: 'Tile 14', draws: 2000, groups: [group(0.71, 0.2)] }) // 'Whether Tile 14 lies inside Red Terrace ware cannot be told within the uncertainties: it is inside in 71 %, at the edge in 9 % and outside in 20 % of 2,000 draws (membership probability 0.020 to 0.40 in 95 % of them).'
 * uncertaintySentence({ label: 'Tile 14', draws: 2000, groups: [group(0, 0.97)] }) // 'Tile 14 lies outside Red Terrace ware within the uncertainties: it is outside in 97 % of 2,000 draws (membership probability 0.020 to 0.40 in 95 % of them).'
 */
export function uncertaintySentence({ label, draws, groups }: DrawnGroups, id?: string): string {
  const group = id === undefined ? subject(groups) : groups.find((g) => g.group === id);
  if (!group) return `${label} has no ware group to be compared with.`;
  const { name, inside, outside, membership, nearest } = group;
  if (inside === null || outside === null)
    return `${label} cannot be judged against ${name}; its centre is the nearest in ${percent(nearest)} of ${count(draws)} draws.`;
  const probability = membership ? ` (membership probability ${between(membership)} in 95 % of them)` : '';
  const of = `of ${count(draws)} draws${probability}`;
  if (inside >= SURE)
    return `${label} cannot be told from ${name}, with the uncertainties carried: it is inside in ${percent(inside)} ${of}.`;
  if (outside >= SURE)
    return `${label} lies outside ${name} within the uncertainties: it is outside in ${percent(outside)} ${of}.`;
  const edge = Math.round((1 - inside - outside) * draws) / draws;
  if (edge >= SURE)
    return `${label} lies at the edge of ${name} within the uncertainties: it is at the edge in ${percent(edge)} ${of}.`;
  return `Whether ${label} lies inside ${name} cannot be told within the uncertainties: it is inside in ${percent(inside)}, at the edge in ${percent(edge)} and outside in ${percent(outside)} ${of}.`;
}

/**
 * As a placement chooses the group it speaks of: one with a membership probability that it is most often inside, draws
 * at the edge counting half; where it is outside all of those, the nearest. A group with ranks only excludes too little
 * to be spoken of first.
 */
function subject(groups: readonly GroupUncertainty[]): GroupUncertainty | undefined {
  const closeness = ({ inside, outside }: GroupUncertainty) => (inside ?? 0) - (outside ?? 1);
  const exact = groups.filter(({ membership }) => membership !== null);
  const possible = exact.length > 0 ? exact.filter(({ outside }) => (outside ?? 1) < SURE) : groups;
  const [best] = possible.toSorted((a, b) => closeness(b) - closeness(a) || b.nearest - a.nearest);
  return best ?? groups.toSorted((a, b) => b.nearest - a.nearest)[0];
}
