import { describe, expect, it, vi } from 'vitest';
import { previewOf } from '../../api/intake/preview.ts';
import { largeCsv } from '../../scripts/bench/large-csv.ts';
import { csv } from './support/tables.ts';

vi.setConfig({ testTimeout: 60_000 });

describe('the large table of the benchmark', () => {
  it('is the same for the same seed, and another for another', () => {
    expect(largeCsv(50, 7)).toBe(largeCsv(50, 7));
    expect(largeCsv(50, 7)).not.toBe(largeCsv(50, 8));
  });

  it('is understood without a question but the kind of specimen, and read without an error', async () => {
    const p = await previewOf(await csv(largeCsv(1_500)));
    expect(p).toMatchObject({ importable: true, counts: { analyses: 1_500, specimens: 1_500, errors: 0 } });
    expect(p.counts.values).toBe(1_500 * 17);
    expect(p.counts.belowDetection).toBeGreaterThan(100);
    expect(p.understanding.doubts.map((d) => d.about)).toEqual(['defaults']);
  });
});
