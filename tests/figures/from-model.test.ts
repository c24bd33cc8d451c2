import { describe, expect, it } from 'vitest';
import { profileData } from '../../api/figures/profile-from-model.ts';
import { scoresData } from '../../api/figures/scores-from-model.ts';
import { scoresPlot } from '../../api/figures/scores-plot.ts';
import { GROUPS, OXIDES, R_SAYS, RAW, rowsOf } from '../support/romano-british.ts';
import { drawn, numbersIn, rulerOf } from './drawing.ts';
import { romanoBritish } from './romano-british-model.ts';

const { model, placements } = romanoBritish();
const choices = {
  id: 'scores',
  components: [0, 1],
  level: 0.95,
  ellipses: true,
  loadings: true,
  naming: 'replicas',
  chosen: 'tile0',
  slots: { [GROUPS[0]]: 0, [GROUPS[1]]: 1, [GROUPS[2]]: 2 },
} as const;

describe('a scores plot of a fitted model', () => {
  const data = scoresData(model, placements, choices);
  const { svg } = drawn(scoresPlot, data);

  it('draws the ellipses R gives for a new observation at 95 %, read off the axes', () => {
    const unit = Math.abs(rulerOf(svg, 'x')(1) - rulerOf(svg, 'x')(0));
    [...svg.querySelectorAll('g[clip-path] > ellipse')].forEach((ellipse, i) => {
      const { semi_axes_95: r, center } = R_SAYS.ellipses_clr_pc1_pc2.value[GROUPS[i]!];
      const { major, minor } = r.hotelling_new_observation;
      expect(Number(ellipse.getAttribute('rx')) * unit).toBeCloseTo(major, 6);
      expect(Number(ellipse.getAttribute('ry')) * unit).toBeCloseTo(minor, 6);
      const [cx, cy] = numbersIn(ellipse.getAttribute('transform')!);
      expect(Math.abs(rulerOf(svg, 'x')(cx!))).toBeCloseTo(Math.abs(center[0]), 6);
      expect(Math.abs(rulerOf(svg, 'y')(cy!))).toBeCloseTo(Math.abs(center[1]), 6);
    });
  });
  it('tells how much of the variance R says the two components explain', () => {
    const { percentVariance } = R_SAYS.prcomp_clr_cov.value;
    expect(100 * data.explained[0]).toBeCloseTo(percentVariance[0], 9);
    expect(100 * data.explained[1]).toBeCloseTo(percentVariance[1], 9);
  });
  it('puts a replica that is a copy of a sherd upon that sherd', () => {
    const twin = data.groups[0]!.points[3]!;
    expect(data.replicas[0]!.x).toBeCloseTo(twin.x, 10);
    expect(data.replicas[0]!.y).toBeCloseTo(twin.y, 10);
  });
  it('gives a group too small for one no ellipse', () => {
    const [first, ...rest] = model.groups;
    const small = scoresData({ ...model, groups: [{ ...first!, n: 3 }, ...rest] }, placements, choices);
    expect(small.groups.map(({ ellipse }) => ellipse === null)).toEqual([true, false, false]);
  });
  it('lays a model of one component along a line', () => {
    const line = scoresData(model, placements, { ...choices, components: [0, 99] });
    expect(
      line.groups.every(({ points, ellipse }) => ellipse === null && points.every(({ y }) => y === 0)),
    ).toBe(true);
  });
});

describe('an oxide profile of a fitted model', () => {
  const against = { id: 'profile', group: GROUPS[0], slot: 0, chosen: 'tile1' } as const;
  const data = profileData(model, placements, { ...against, basis: 'ratio' })!;

  it('orders the oxides by their share of the chosen replica’s distance', () => {
    const shares = data.rows.map(({ share }) => share!);
    expect([...shares].sort((one, other) => other - one)).toEqual(shares);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });
  it.each(['log-ratio', 'log10', 'standardised'] as const)(
    'shows each value as the factor the table gives: %s',
    (scale) => {
      const fitted = romanoBritish(scale);
      const { rows } = profileData(fitted.model, fitted.placements, { ...against, basis: 'ratio' })!;
      for (const row of rows) expect(row.values[1]).toBeCloseTo(row.factor!, 10);
    },
  );
  it('shows amounts in wt% of the oxides compared, with the group’s own quartiles', () => {
    const { rows } = profileData(model, placements, { ...against, basis: 'amount' })!;
    const iron = rows.find(({ oxide }) => oxide === 'Fe2O3')!;
    const column = OXIDES.indexOf('Fe2O3');
    const share = (at: number) => (100 * RAW[at]![column]!) / RAW[at]!.reduce((sum, value) => sum + value, 0);
    const own = rowsOf(GROUPS[0])
      .map(share)
      .sort((one, other) => one - other);
    expect(iron.spread.low).toBeCloseTo(own[0]!, 9);
    expect(iron.spread.high).toBeCloseTo(own[20]!, 9);
    // Of 21 values, the 6th, 11th and 16th are the quartiles by the usual definition (R's type 7).
    expect(iron.spread.quartiles).toEqual([5, 10, 15].map((at) => expect.closeTo(own[at]!, 9)));
    expect(iron.values[1]).toBeCloseTo(share(25), 9);
  });
  it('gives fewer than five sherds no quartiles, each sherd instead', () => {
    const few = { ...model, members: model.members.filter(({ group }, i) => group !== GROUPS[0] || i < 4) };
    const { rows } = profileData(few, placements, { ...against, basis: 'ratio' })!;
    expect(rows.every(({ spread }) => spread.quartiles === null && spread.each.length === 4)).toBe(true);
  });
  it('is none for a group the model does not have', () => {
    expect(profileData(model, placements, { ...against, group: 'nowhere', basis: 'ratio' })).toBeNull();
  });
});
