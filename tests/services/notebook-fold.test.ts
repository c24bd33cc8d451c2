import { describe, expect, it } from 'vitest';
import { type FoundEntry, foldAnalyses } from '../../api/services/notebook-fold.ts';

const analysis = (title: string, over: Partial<FoundEntry> = {}): FoundEntry => ({
  ...{ kind: 'analysis', id: title, title, text: '', specimen: 's', count: 1, pictures: [], file: null },
  ...{ date: '2026-03-01', dated: true, writtenAt: '2026-03-02T10:00:00.000Z' },
  ...over,
});
const many = (n: number, over: Partial<FoundEntry> = {}) =>
  Array.from({ length: n }, (_, i) => analysis(`S${i + 1}, paint`, { id: `${i}`, ...over }));
const file = { id: 'f', name: 'sherds.csv' };

describe('analyses of the notebook, folded', () => {
  it('stand together by their file, counted, some specimens named once in the order of their labels', () => {
    const [one, ...others] = foldAnalyses([...many(12, { file }).reverse(), analysis('S1, body', { file })]);
    expect(others).toEqual([]);
    expect(one).toMatchObject({ title: '13 analyses from sherds.csv', count: 13, specimen: null });
    expect(one!.text).toBe('Of S1, S2, S3, S4, S5, S6 and 6 more');
  });

  it('stand together by their day where no file brought them, and apart from those of a file', () => {
    const entries = [...many(4), ...many(5, { date: '2026-03-02' }), ...many(6, { file })];
    expect(foldAnalyses(entries).map(({ title, date }) => [title, date])).toEqual([
      ['4 analyses', '2026-03-01'],
      ['5 analyses', '2026-03-02'],
      ['6 analyses from sherds.csv', '2026-03-01'],
    ]);
  });

  it('of several days in one file stand at the day that they were written down', () => {
    const days = [...many(2, { file }), ...many(2, { file, date: '2026-02' })];
    expect(foldAnalyses(days)).toMatchObject([{ date: '2026-03-02', dated: false, count: 4 }]);
  });

  it('stay one by one where they are few, and other entries stay as they are', () => {
    const batches = many(9, { kind: 'batch' });
    expect(foldAnalyses([...batches, ...many(3)])).toEqual([...batches, ...many(3)]);
  });
});
