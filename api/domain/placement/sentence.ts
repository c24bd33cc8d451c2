import { COMFORTABLE_DF } from '../reference/choose-spread.ts';
import { gapInWords } from './gap-words.ts';
import type { GroupPlacement, Placement, Verdict } from './types.ts';
import { verdictOf } from './verdict.ts';
import { listInWords, oddsInWords } from './words.ts';

/** What a sentence is made from. */
export type Placed = Omit<Placement, 'sentence'>;

/** Members below which a rank is weak evidence for belonging. */
const FEW_MEMBERS = 10;

const lowerFirst = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);
const bare = (text: string) => lowerFirst(text.replace(/[.]$/, ''));

/** Whether the test could hardly have excluded anything: few degrees of freedom, or few members to rank among. */
function isWeak(g: GroupPlacement): boolean {
  if (g.membership === null) return g.typicality !== null && g.typicality.of < FEW_MEMBERS;
  return g.p !== null && g.n - g.p < COMFORTABLE_DF - (g.leaveOneOut ? 1 : 0);
}

/**
 * The group to speak of: its own, else one it cannot be told from, else one at whose edge it lies, else the nearest
 * judged. A group whose test is weak is spoken of only as the nearest. Undefined when there is no group.
 *
 * @example
 * const far = { group: 'near', n: 40, p: 2, verdict: 'outside', membership: 0.001, typicality: null, leaveOneOut: false };
 * groupSpokenOf([far, { ...far, group: 'fits', verdict: 'inside', membership: 0.4 }]).group // 'fits'
 * groupSpokenOf([far, { ...far, group: 'weak', n: 4, verdict: 'inside', membership: 0.4 }]).group // 'near'
 */
export function groupSpokenOf(groups: readonly GroupPlacement[]): GroupPlacement | undefined {
  const strong = (verdict: Verdict) => groups.find((g) => g.verdict === verdict && !isWeak(g));
  return (
    groups.find((g) => g.leaveOneOut) ??
    strong('inside') ??
    strong('borderline') ??
    groups.find((g) => g.verdict !== 'unknown') ??
    groups[0]
  );
}

const members = (g: GroupPlacement) => (g.leaveOneOut ? 'other members' : 'members');

function compared(g: GroupPlacement): string {
  const oxides = `these ${g.contributions.length} oxides`;
  return g.off ? `the ${g.method} of ${oxides}` : oxides;
}

/** Why the verdict is what it is: odds, or a rank where no probability can be had. */
function evidence(g: GroupPlacement): string {
  if (offDecides(g)) return offEvidence(g);
  if (g.membership !== null) {
    const far = g.verdict === 'inside' ? 'at least this far out' : 'this far out';
    return `${oddsInWords(g.membership)} members would lie ${far}`;
  }
  const { atLeastAsFar, of } = g.typicality!;
  if (atLeastAsFar === 0) return `it lies further out than all ${of} ${members(g)}`;
  const only = g.verdict === 'inside' ? '' : 'only ';
  return `${only}${atLeastAsFar} of its ${of} ${members(g)} ${atLeastAsFar === 1 ? 'lies' : 'lie'} at least as far out`;
}

/** Whether the distance off the components, and not D² on them, makes the verdict. */
function offDecides(g: GroupPlacement): boolean {
  if (!g.off || g.verdict === 'inside') return false;
  return verdictOf({ membership: g.membership, typicality: null, ratio: null, off: null }) !== g.verdict;
}

function offEvidence(g: GroupPlacement): string {
  const { distance, furthestMember, rank } = g.off!;
  const times = (distance / furthestMember).toFixed(1);
  const how =
    times === '1.0'
      ? `further than any of its ${rank.of} ${members(g)}`
      : `${times} times as far as the furthest of its ${rank.of} ${members(g)}`;
  return `on the ${g.method} ${oddsInWords(g.membership!)} members would lie this far out, but it lies off them ${how}`;
}

/** A caution where the numbers could hardly have said anything else. */
function caution(g: GroupPlacement): string[] {
  if (!isWeak(g)) return [];
  const sherds = `With ${g.n} sherds`;
  if (g.verdict === 'borderline' && g.membership === null) return [`${sherds} the data can say no more.`];
  if (g.verdict !== 'inside') return [];
  return g.membership === null
    ? [`${sherds} that is weak evidence.`]
    : [`${sherds} in ${g.p} directions this test can exclude little, so that is weak evidence.`];
}

function opening(label: string, g: GroupPlacement, outsideAll: number): string {
  const own = g.leaveOneOut ? 'its own group ' : '';
  switch (g.verdict) {
    case 'inside':
      return `${label} cannot be told from ${own}${g.name} by ${compared(g)}: ${evidence(g)}.`;
    case 'borderline':
      return `${label} lies at the edge of ${own || 'the group '}${g.name}: ${evidence(g)}.`;
    case 'outside':
      return `${label} lies outside ${own || 'the group '}${g.name}${outsideAll > 1 ? `, the nearest of ${outsideAll}` : ''}: ${evidence(g)}.`;
    case 'unknown':
      return `${label} cannot be judged against ${own}${g.name}: ${bare(g.refusal ?? `${g.n} sherds are too few to rank it among them`)}.`;
  }
}

/** Other groups that the reader must not overlook: as possible as the one spoken of, or nearer but not judged. */
function besides(g: GroupPlacement, groups: readonly GroupPlacement[]): string[] {
  const possible = groups.filter((other) => other !== g && other.verdict === 'inside');
  const equals = possible.filter((other) => !isWeak(other)).map((other) => other.name);
  const weak = possible.filter(isWeak).map((other) => other.name);
  const nearer = groups.slice(0, groups.indexOf(g)).filter((other) => other.verdict === 'unknown');
  return [
    ...(g.verdict === 'inside' && equals.length > 0
      ? [`Nor can it be told from ${listInWords(equals, 'or')}.`]
      : []),
    ...(weak.length > 0
      ? [`${listInWords(weak)} ${weak.length > 1 ? 'have' : 'has'} too few sherds to exclude it.`]
      : []),
    ...nearer.map((o) => `The centre of ${o.name} is nearer, but it cannot be judged against it.`),
  ];
}

/**
 * What a placement says, in words a potter can act on: whether a sample can be told from a ware group, on what
 * evidence, which oxides make up the gap and by what factor they are off, and what the data cannot say. About the
 * given group, else about the one it fits best. Shares are of the squared distance in the working scale.
 *
 * @example
 * const lead = { oxide: 'PbO', measured: 40, centre: 62, share: 0.8, factor: 0.5556 };
 * const group = { group: 'g', name: 'Red Terrace ware', n: 40, p: 1, membership: 0.004, typicality: null, off: null, verdict: 'outside', leaveOneOut: false, contributions: [lead, { oxide: 'SiO2', share: 0.2, factor: 1.3 }] };
 * placementSentence({ label: 'Tile 14', groups: [group], replaced: [] }) // 'Tile 14 lies outside the group Red Terrace ware: about 1 in 250 members would lie this far out. Four fifths of the gap is lead, 1.8 times too low against all oxides together (40 wt%, 62 at the centre).'
 * placementSentence({ label: 'Tile 14', groups: [], replaced: [] }) // 'Tile 14 has no ware group to be compared with.'
 */
export function placementSentence(placed: Placed, group?: string): string {
  const { label, groups } = placed;
  const g = group === undefined ? groupSpokenOf(groups) : groups.find((other) => other.group === group);
  if (!g) return `${label} has no ware group to be compared with.`;
  const judged = groups.filter((other) => other.verdict !== 'unknown');
  const outsideAll =
    group === undefined && !g.leaveOneOut && judged.every((other) => other.verdict === 'outside')
      ? judged.length
      : 0;
  return [
    opening(label, g, outsideAll),
    ...caution(g),
    ...gapInWords(
      g,
      placed.replaced.map((r) => r.oxide),
    ),
    ...(group === undefined ? besides(g, groups) : []),
  ].join(' ');
}
