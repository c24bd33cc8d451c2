import { zoomIdentity } from 'd3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scoresLayout } from '../../../../api/figures/scores-layout.ts';
import { THEMES } from '../../../../api/figures/themes.ts';
import { finderOf, followingFinder } from '../../../../web/pages/placement/scores/finder.ts';
import { actionOf } from '../../../../web/pages/placement/scores/keys.ts';
import { inWords } from '../../../../web/pages/placement/scores/Readout.tsx';
import { transformOf, viewOf } from '../../../../web/pages/placement/scores/view.ts';
import { setsOf, walk } from '../../../../web/pages/placement/scores/walk.ts';
import { createSource } from '../../../../web/parts/figure/source.ts';
import { sampleScores } from '../../../figures/sample-scores.ts';

const data = sampleScores({ groups: 3, each: 5, replicas: 2 });
const sheet = { width: 800, height: 600, theme: THEMES['page-light'] };
const press = (key: string, held: Partial<Record<'shiftKey' | 'ctrlKey', boolean>> = {}) =>
  actionOf({ key, shiftKey: false, ctrlKey: false, metaKey: false, altKey: false, ...held });

describe('walking from point to point', () => {
  const sets = setsOf(data);
  it('goes through every point of a set from left to right and round again', () => {
    let here = walk(sets, sets[1]![0]!.id, 'first')!;
    const seen = [here];
    for (let step = 0; step < 4; step++) {
      here = walk(sets, here.id, 'next')!;
      seen.push(here);
    }
    expect(new Set(seen.map(({ id }) => id)).size).toBe(5);
    expect(seen.every((point, i) => i === 0 || point.x >= seen[i - 1]!.x)).toBe(true);
    expect(walk(sets, here.id, 'next')).toEqual(seen[0]);
    expect(walk(sets, seen[0]!.id, 'previous')).toEqual(here);
    expect(walk(sets, seen[0]!.id, 'last')).toEqual(here);
  });
  it('begins with the replicas, and goes on to the nearest point of the next group', () => {
    const first = walk(sets, null, 'next')!;
    expect(first.kind).toBe('replica');
    const next = walk(sets, first.id, 'next set')!;
    const far = (point: { x: number; y: number }) => Math.hypot(point.x - first.x, point.y - first.y);
    expect(next.set).toBe('Ware 1');
    expect(far(next)).toBe(Math.min(...sets[1]!.map(far)));
    expect(walk(sets, first.id, 'previous set')!.set).toBe('Ware 3');
  });
  it('leads nowhere when there is nothing', () => {
    expect(walk([], null, 'next')).toBeNull();
  });
});

describe('finding the point under the pointer', () => {
  it('finds the nearest point within reach, none beyond', () => {
    const { x, y, id } = data.groups[2]!.points[1]!;
    const finder = finderOf(data);
    expect(finder.nearest(x + 1e-6, y, 0.1)!.id).toBe(id);
    expect(finder.nearest(x + 100, y, 0.1)).toBeNull();
    expect(finder.byId(id)!.set).toBe('Ware 3');
  });
  it('looks anew only after the data changed', () => {
    const source = createSource(data);
    const find = followingFinder(source);
    const first = find();
    expect(find()).toBe(first);
    source.set({ ...data, replicas: [] });
    expect(find().sets.length).toBe(3);
  });
});

describe('coming nearer', () => {
  it('and back again is the same part of the plane, however it was reached', () => {
    const transform = fc.record({
      k: fc.double({ min: 0.5, max: 100, noNaN: true }),
      x: fc.double({ min: -2000, max: 2000, noNaN: true }),
      y: fc.double({ min: -2000, max: 2000, noNaN: true }),
    });
    fc.assert(
      fc.property(transform, ({ k, x, y }) => {
        const zoomed = zoomIdentity.translate(x, y).scale(k);
        const back = transformOf(viewOf(zoomed, data, sheet), data, sheet);
        expect(back.k).toBeCloseTo(k, 6);
        expect(back.x).toBeCloseTo(x, 3);
        expect(back.y).toBeCloseTo(y, 3);
      }),
    );
  });
  it('keeps the score under the fingers where it is', () => {
    const whole = scoresLayout(data, sheet);
    const view = viewOf(zoomIdentity.translate(400, 300).scale(3).translate(-400, -300), data, sheet);
    const near = scoresLayout({ ...data, view }, sheet);
    expect(near.x.invert(400)).toBeCloseTo(whole.x.invert(400), 9);
    expect(near.y.invert(300)).toBeCloseTo(whole.y.invert(300), 9);
  });
  it('not at all shows the whole plane', () => {
    expect(viewOf(zoomIdentity, data, sheet)).toBeNull();
    expect(transformOf(null, data, sheet)).toEqual(zoomIdentity);
  });
});

describe('keys on the plot', () => {
  it.each([
    ['ArrowRight', { kind: 'walk', step: 'next' }],
    ['ArrowUp', { kind: 'walk', step: 'previous set' }],
    ['+', { kind: 'zoom', factor: 1.5 }],
    ['Enter', { kind: 'choose' }],
    ['Escape', { kind: 'leave' }],
    ['0', { kind: 'whole' }],
  ])('%s', (key, action) => {
    expect(press(key)).toEqual(action);
  });
  it('with Shift the arrows move the plane', () => {
    expect(press('ArrowRight', { shiftKey: true })).toEqual({ kind: 'move', across: -1, up: 0 });
  });
  it('that belong to the browser are left to it', () => {
    for (const key of ['Tab', 'F5', 'a']) expect(press(key)).toBeNull();
    expect(press('0', { ctrlKey: true })).toBeNull();
  });
});

describe('a point in words', () => {
  it('names specimen, group, place and scores', () => {
    const [first] = setsOf(data)[1]!;
    const words = inWords({ read: first!, components: [0, 2], kept: false });
    expect(words).toMatch(/^S-0\d, Ware 1, 1 of 5 from the left: PC1 −?\d\.\d\d, PC3 −?\d\.\d\d$/);
  });
});

describe('a source', () => {
  it('tells its listeners of a change, of no change nothing, and the gone ones nothing', () => {
    const source = createSource(1);
    let heard = 0;
    const stop = source.subscribe(() => {
      heard++;
    });
    source.set(1);
    source.set(2);
    expect([heard, source.get()]).toEqual([1, 2]);
    stop();
    source.set(3);
    expect(heard).toBe(1);
  });
});
