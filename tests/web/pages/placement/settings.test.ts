import { describe, expect, it } from 'vitest';
import { comparisonRequest } from '../../../../api/contract/placement.ts';
import type { WareGroup } from '../../../../api/contract/ware-group.ts';
import { isUsual, requestOf, settingsOf, USUAL } from '../../../../web/pages/placement/settings.ts';
import { FIRST_VIEW, soundView } from '../../../../web/pages/placement/view-state.ts';
import { fallenOutReason, showProbability } from '../../../../web/pages/placement/words.ts';

const ID = (digit: number) => `00000000-0000-4000-8000-00000000000${digit}`;
const group = (digit: number, specimens: number) => ({ id: ID(digit), specimens }) as WareGroup;
const groups = [group(1, 20), group(2, 0), group(3, 6)];

describe('settings', () => {
  it('ask for every group that has sherds unless some were chosen', () => {
    expect(requestOf(USUAL, groups)!.settings.groups).toEqual([ID(1), ID(3)]);
    expect(requestOf({ ...USUAL, groups: [ID(3)] }, groups)!.settings.groups).toEqual([ID(3)]);
  });
  it('ask for nothing while there is no group, or none that is still there', () => {
    expect(requestOf(USUAL, [group(1, 0)])).toBeNull();
    expect(requestOf({ ...USUAL, groups: [ID(9)] }, groups)).toBeNull();
  });
  it('are what the service takes, and come back from a kept request as they were', () => {
    const settings = {
      ...USUAL,
      groups: [ID(1), ID(3)],
      replicas: [ID(7)],
      parts: ['PbO', 'SiO2'],
      scale: 'log10' as const,
      covariance: { kind: 'components', count: 3 } as const,
      fraction: 0.5,
      limits: { SnO2: 0.02 },
      leaveOut: [{ specimen: ID(5), label: 'R-5', reason: 'weathered' }],
    };
    const request = requestOf(settings, groups)!;
    const taken = comparisonRequest.parse(request);
    expect(taken).toEqual(request);
    expect(settingsOf(taken, () => 'R-5')).toEqual(settings);
  });
  it('are the usual ones until something is changed', () => {
    expect(isUsual(USUAL)).toBe(true);
    expect(isUsual({ ...USUAL, fraction: 0.5 })).toBe(false);
  });
});

describe('a view', () => {
  const result = {
    placements: [{ id: 'a' }, { id: 'b' }],
    model: { groups: [{ id: 'g' }], parts: ['SiO2', 'PbO', 'MnO'], pca: { eigenvalues: [3, 2, 1] } },
  } as unknown as Parameters<typeof soundView>[1];
  it('falls back to what is there when replica, group or component are gone', () => {
    const lost = { ...FIRST_VIEW, replica: 'z', against: 'z', components: [0, 7] } as const;
    expect(soundView(lost, result)).toMatchObject({ replica: 'a', against: null, components: [0, 1] });
  });
  it('falls back to the oxides that tell the most when one that was chosen is no longer compared', () => {
    const lost = { ...FIRST_VIEW, pair: ['PbO', 'CuO'], ternary: ['PbO', 'MnO', 'SiO2'] } as const;
    expect(soundView(lost, result)).toMatchObject({ pair: null, ternary: ['PbO', 'MnO', 'SiO2'] });
  });
  it('kept before a choice existed takes the first of it', () => {
    const { axis: _axis, linkage: _linkage, pair: _pair, ternary: _ternary, ...older } = FIRST_VIEW;
    expect(soundView(older, result)).toMatchObject({ axis: 'log', linkage: 'ward', pair: null });
  });
  it('is left alone where all it names is there', () => {
    const view = { ...FIRST_VIEW, replica: 'b', against: 'g', components: [2, 0] } as const;
    expect(soundView(view, result)).toEqual(view);
  });
});

describe('in words', () => {
  it('a tiny probability is only called tiny', () => {
    expect([0.4567, 0.0234, 1e-9, null].map(showProbability)).toEqual(['0.457', '0.023', '< 0.001', null]);
  });
  it('an oxide that fell out names the first specimens that lack it and counts the rest', () => {
    const out = {
      oxide: 'SnO2',
      because: 'not measured',
      specimens: ['T1', 'T2', 'T3', 'T4', 'T5'],
    } as const;
    expect(fallenOutReason(out)).toBe('not measured in T1, T2, T3 and 2 more');
    expect(fallenOutReason({ ...out, because: 'constant', specimens: [] })).toContain(
      'the same in every sherd',
    );
  });
});
