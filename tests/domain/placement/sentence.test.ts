import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Placed, placementSentence } from '../../../api/domain/placement/sentence.ts';
import type { Contribution, GroupPlacement } from '../../../api/domain/placement/types.ts';

const part = (oxide: string, share: number, factor: number): Contribution => ({
  oxide,
  measured: 40,
  centre: 62,
  factor,
  share,
  d2: null,
  z: null,
});
const LEAD = [part('PbO', 0.79, 0.5556), part('SiO2', 0.15, 1.3), part('MnO', 0.06, 1.2)];
const rank = (atLeastAsFar: number, of: number) => ({
  value: (1 + atLeastAsFar) / (of + 1),
  atLeastAsFar,
  of,
});

const group = (changes: Partial<GroupPlacement> = {}): GroupPlacement => ({
  group: 'red',
  name: 'Red Terrace ware',
  n: 40,
  p: 2,
  distance: 1,
  d2: 12,
  membership: 0.004,
  membershipRefusal: null,
  df: [2, 38],
  typicality: rank(0, 40),
  off: null,
  verdict: 'outside',
  method: 'sample covariance in 2 directions',
  refusal: null,
  warnings: [],
  leaveOneOut: false,
  contributions: LEAD,
  ...changes,
});
const placed = (groups: readonly GroupPlacement[], changes: Partial<Placed> = {}): Placed => ({
  id: 't14',
  label: 'Tile 14',
  spots: 3,
  parts: [],
  coordinates: [],
  scores: [],
  groups,
  nearest: [],
  replaced: [],
  ...changes,
});
const unprobable = {
  membership: null,
  df: null,
  membershipRefusal: 'no distribution',
  method: 'OAS shrinkage',
};
const say = (changes: Partial<GroupPlacement>, more: Partial<Placed> = {}) =>
  placementSentence(placed([group(changes)], more));

describe('a sentence about a sample outside', () => {
  it('says how rare, and which oxide makes the gap', () => {
    expect(say({})).toBe(
      'Tile 14 lies outside the group Red Terrace ware: about 1 in 250 members would lie this far out. Four fifths of the gap is lead, 1.8 times too low against all oxides together (40 wt%, 62 at the centre).',
    );
  });

  it('names several oxides when no one makes most of the gap', () => {
    const contributions = [
      part('PbO', 0.41, 0.5),
      part('MnO', 0.33, 1.5),
      part('CuO', 0.2, 3),
      part('SiO2', 0.06, 1.1),
    ];
    expect(say({ contributions })).toContain(
      'Two fifths of the gap is lead, 2.0 times too low against all oxides together (40 wt%, 62 at the centre); a third is manganese, 1.5 times too high (40 wt%, 62 at the centre).',
    );
  });

  it('gives the factor plainly where it is wt% over wt%, as on the scales that are not log-ratios', () => {
    const contributions = [{ ...part('PbO', 0.8, 0.5), measured: 31, centre: 62 }, part('SiO2', 0.05, 1.2)];
    expect(say({ contributions })).toContain('is lead, 2.0 times too low (31 wt%, 62 at the centre).');
  });

  it('says against what a factor is even where the first oxide was not detected, and small wt% in full', () => {
    const contributions = [part('PbO', 0.4, 0.5), { ...part('TiO2', 0.4, 2.83), measured: 0.4, centre: 0.1 }];
    const replaced = [{ oxide: 'PbO', limit: 0.1, by: 0.065 }];
    expect(say({ contributions }, { replaced })).toContain(
      'lead, not detected in it; two fifths is titanium, 2.8 times too high against all oxides together (0.40 wt%, 0.10 at the centre).',
    );
  });

  it('says so when the gap is spread over many', () => {
    const contributions = Array.from({ length: 10 }, (_, i) => part(`O${i}`, 0.1, 1.1));
    expect(say({ contributions })).toContain('The gap is spread over many oxides.');
  });

  it('names an oxide of small share that stands out of the narrow spread of the group', () => {
    const z = [2, 1, -9.27];
    const contributions = LEAD.map((c, i) => ({ ...c, z: z[i]! }));
    expect(say({ contributions })).toContain(
      'is lead, 1.8 times too low against all oxides together (40 wt%, 62 at the centre). Against the group’s own spread manganese stands out most: 1.2 times too high (40 wt%, 62 at the centre), 9.3 standard deviations.',
    );
    const plain = LEAD.map((c, i) => ({ ...c, z: [8, 1, -9.27][i]! }));
    expect(say({ contributions: plain })).not.toContain('stands out');
  });

  it('does not give a factor to what was not detected', () => {
    const replaced = [{ oxide: 'PbO', limit: 0.1, by: 0.065 }];
    expect(say({}, { replaced })).toContain('Four fifths of the gap is lead, not detected in it.');
  });

  it('never claims a rarity that rests on the far tail of an assumed distribution', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.000999, noNaN: true }), (membership) => {
        expect(say({ membership })).toContain('fewer than 1 in 1,000 members would lie this far out');
      }),
    );
  });

  it('says that the nearest is the nearest of several, when it lies outside all', () => {
    const groups = [group(), group({ group: 'grey', name: 'Grey Hill ware' })];
    expect(placementSentence(placed(groups))).toContain(
      'outside the group Red Terrace ware, the nearest of 2: about',
    );
  });
});

describe('a sentence about a sample inside or at the edge', () => {
  it('claims only that it cannot be told apart, by how many oxides', () => {
    expect(say({ verdict: 'inside', membership: 0.38 })).toBe(
      'Tile 14 cannot be told from Red Terrace ware by these 3 oxides: about 2 in 5 members would lie at least this far out.',
    );
  });

  it('is cautious when few degrees of freedom are left', () => {
    expect(say({ verdict: 'inside', membership: 0.38, n: 10, p: 8 })).toContain(
      'With 10 sherds in 8 directions this test can exclude little, so that is weak evidence.',
    );
  });

  it('names every other group it cannot be told from', () => {
    const groups = [
      group({ verdict: 'inside', membership: 0.5 }),
      group({ group: 'a', name: 'Grey Hill ware', verdict: 'inside', membership: 0.2 }),
      group({ group: 'b', name: 'Far Shore ware' }),
      group({ group: 'c', name: 'Black Quay ware', verdict: 'inside', membership: 0.3 }),
    ];
    expect(placementSentence(placed(groups))).toContain(
      'Nor can it be told from Grey Hill ware or Black Quay ware.',
    );
  });

  it('speaks of the group it fits, even if another centre is nearer', () => {
    const groups = [group(), group({ group: 'wide', name: 'Wide ware', verdict: 'inside', membership: 0.2 })];
    expect(placementSentence(placed(groups))).toContain('cannot be told from Wide ware');
  });

  it('does not speak first of a far group that has too few sherds to exclude anything', () => {
    const groups = [
      group(),
      group({ group: 'few', name: 'Few Sherds ware', n: 10, p: 8, verdict: 'inside', membership: 0.06 }),
    ];
    expect(placementSentence(placed(groups))).toMatch(
      /^Tile 14 lies outside the group Red Terrace ware: .* Few Sherds ware has too few sherds to exclude it\.$/,
    );
  });

  it('speaks of the group a member belongs to, even if it would fit another', () => {
    const groups = [
      group({ group: 'wide', name: 'Wide ware', verdict: 'inside', membership: 0.5 }),
      group({ leaveOneOut: true }),
    ];
    expect(placementSentence(placed(groups))).toMatch(
      /^Tile 14 lies outside its own group Red Terrace ware: about/,
    );
  });

  it('puts p between .01 and .05 at the edge', () => {
    expect(say({ verdict: 'borderline', membership: 0.031 })).toContain(
      'Tile 14 lies at the edge of the group Red Terrace ware: about 1 in 32 members would lie this far out. Four fifths',
    );
  });

  it('sets a member against the others of its own group', () => {
    expect(
      say({ verdict: 'inside', membership: null, typicality: rank(5, 19), leaveOneOut: true }),
    ).toContain(
      'cannot be told from its own group Red Terrace ware by these 3 oxides: 5 of its 19 other members lie at least as far out.',
    );
  });
});

describe('a sentence without a probability', () => {
  it('says that it lies further out than all members', () => {
    expect(say({ ...unprobable, typicality: rank(0, 12) })).toContain(
      'Tile 14 lies outside the group Red Terrace ware: it lies further out than all 12 members.',
    );
  });

  it('says that few members can show no more', () => {
    expect(say({ ...unprobable, n: 6, typicality: rank(0, 6), verdict: 'borderline' })).toContain(
      'at the edge of the group Red Terrace ware: it lies further out than all 6 members. With 6 sherds the data can say no more.',
    );
    expect(say({ ...unprobable, n: 6, typicality: rank(2, 6), verdict: 'inside' })).toContain(
      '2 of its 6 members lie at least as far out. With 6 sherds that is weak evidence.',
    );
  });

  it('counts the members further out at the edge', () => {
    expect(say({ ...unprobable, typicality: rank(1, 30), verdict: 'borderline' })).toContain(
      'only 1 of its 30 members lies at least as far out.',
    );
  });
});

describe('a sentence on a few components', () => {
  const off = (distance: number) => ({ distance, furthestMember: 1, rank: rank(0, 12) });
  const method = 'first 3 components';

  it('says what was compared', () => {
    const inside = { ...off(0.5), rank: rank(4, 12) };
    expect(say({ off: inside, method, verdict: 'inside', membership: 0.4 })).toContain(
      'cannot be told from Red Terrace ware by the first 3 components of these 3 oxides: about 2 in 5',
    );
  });

  it('says when it is the distance off them that puts it outside', () => {
    expect(say({ off: off(3.24), method, verdict: 'outside', membership: 0.6 })).toContain(
      'outside the group Red Terrace ware: on the first 3 components about 3 in 5 members would lie this far out, but it lies off them 3.2 times as far as the furthest of its 12 members.',
    );
    expect(say({ off: off(1.02), method, verdict: 'borderline', membership: 0.6 })).toContain(
      'but it lies off them further than any of its 12 members.',
    );
  });

  it('gives the odds when they alone put it outside', () => {
    expect(say({ off: off(3), method, membership: 0.004 })).toContain(
      'about 1 in 250 members would lie this far out.',
    );
  });
});

describe('a sentence where nothing can be said', () => {
  const refused = group({
    verdict: 'unknown',
    membership: null,
    typicality: null,
    d2: null,
    refusal: 'A spread needs at least 4 sherds; the group has n = 3',
  });

  it('gives the reason, and still the gap', () => {
    expect(placementSentence(placed([refused]))).toBe(
      'Tile 14 cannot be judged against Red Terrace ware: a spread needs at least 4 sherds; the group has n = 3. Four fifths of the gap is lead, 1.8 times too low against all oxides together (40 wt%, 62 at the centre).',
    );
  });

  it('prefers a group that can be judged, and mentions the nearer one that cannot', () => {
    const groups = [refused, group({ group: 'grey', name: 'Grey Hill ware' })];
    expect(placementSentence(placed(groups))).toMatch(
      /^Tile 14 lies outside the group Grey Hill ware: .* The centre of Red Terrace ware is nearer, but it cannot be judged against it\.$/,
    );
  });

  it('says when four sherds are too few to rank it', () => {
    expect(say({ ...unprobable, verdict: 'unknown', n: 4, typicality: null })).toContain(
      'cannot be judged against Red Terrace ware: 4 sherds are too few to rank it among them.',
    );
  });

  it('says when there is no group', () => {
    expect(placementSentence(placed([]))).toBe('Tile 14 has no ware group to be compared with.');
    expect(placementSentence(placed([group()]), 'another')).toBe(
      'Tile 14 has no ware group to be compared with.',
    );
  });
});

describe('a sentence about a chosen group', () => {
  it('speaks of that group and of no other', () => {
    const groups = [
      group({ verdict: 'inside', membership: 0.5 }),
      group({ group: 'far', name: 'Far Shore ware' }),
    ];
    expect(placementSentence(placed(groups), 'far')).toBe(
      'Tile 14 lies outside the group Far Shore ware: about 1 in 250 members would lie this far out. Four fifths of the gap is lead, 1.8 times too low against all oxides together (40 wt%, 62 at the centre).',
    );
  });
});
