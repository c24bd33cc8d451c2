import { describe, expect, it } from 'vitest';
import type { Study } from '../../../api/contract/study.ts';
import { standingSteps, stepsOf } from '../../../web/pages/study/steps.ts';

const NOTHING: Study['counts'] = {
  ...{ groups: 0, specimens: 0, replicas: 0, analyses: 0, placements: 0 },
  ...{ batches: 0, tiles: 0, judged: 0, firings: 0, shares: 0 },
};
const steps = (counts: Partial<Study['counts']>, sizes: readonly number[] = []) =>
  stepsOf(
    { counts: { ...NOTHING, ...counts } },
    sizes.map((specimens) => ({ specimens })),
  );
const ids = (counts: Partial<Study['counts']>) => steps(counts).map((step) => step.id);
const next = (counts: Partial<Study['counts']>, sizes?: readonly number[]) =>
  steps(counts, sizes).find((step) => !step.done)?.id;

describe('what to do next', () => {
  it('leaves out what an empty study does not lead to', () => {
    expect(ids({})).toEqual(['intake', 'sherds', 'bench', 'replicas', 'placement']);
  });

  it('offers a plan once a batch is weighed, a firing once a tile is there, and judging once both are', () => {
    expect(ids({ batches: 1 })).toContain('tiles');
    expect(ids({ tiles: 1 })).toContain('firing');
    expect(ids({ tiles: 1 })).not.toContain('judge');
    expect(ids({ tiles: 1, firings: 1 })).toContain('judge');
  });

  it('calls no plan done where tiles were laid out without one', () => {
    const made = steps({ tiles: 1, batches: 1 }).find((step) => step.id === 'tiles')!;
    expect(made).toMatchObject({ done: true, title: 'Make a tile' });
    expect(steps({ batches: 1 }).find((step) => step.id === 'tiles')!.done).toBe(false);
  });

  it('offers sharing once a placement is kept, and is through when it is shared', () => {
    const all = {
      ...NOTHING,
      specimens: 20,
      replicas: 2,
      analyses: 22,
      batches: 1,
      tiles: 1,
      judged: 6,
      firings: 1,
    };
    expect(next(all, [18])).toBe('placement');
    expect(next({ ...all, placements: 1 }, [18])).toBe('share');
    expect(next({ ...all, placements: 1, shares: 1 }, [18])).toBeUndefined();
  });

  it('asks for a group of four, not three', () => {
    const sherds = { specimens: 8, analyses: 8 };
    expect(next(sherds, [3, 3])).toBe('sherds');
    expect(next(sherds, [4])).toBe('bench');
  });

  it('asks what mattered only of judged zones', () => {
    expect(standingSteps({ counts: NOTHING })).toEqual([]);
    expect(standingSteps({ counts: { ...NOTHING, judged: 2 } }).map((step) => step.to)).toEqual([
      '/fire/mattered',
      '/fire/next',
    ]);
  });
});
