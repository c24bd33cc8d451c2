import { describe, expect, it } from 'vitest';
import { placeSample } from '../../../api/domain/placement/place.ts';
import { mixingPath } from '../../../api/domain/slip/mixing-path.ts';
import { drawOffSample } from '../../../api/domain/slip/sample.ts';
import { modelOf, sampleOf } from '../uncertainty/support.ts';

const slip = sampleOf('slip', [0.2, 65, 22, 9, 3.8], 0.02);
const tile = sampleOf('tile', [45, 41, 5.5, 5, 3.5], 0.02);

describe('path on the scores plot', () => {
  const { model } = modelOf();
  const path = mixingPath(model, tile, { slip, steps: 20 });

  it('starts where the tile lies and ends at the largest draw-off', () => {
    placeSample(model, tile).scores.forEach((s, k) => {
      expect(path.points[0]!.scores[k]).toBeCloseTo(s, 10);
    });
    expect(path.points.at(-1)!.f).toBeCloseTo(path.limit.f, 8);
    expect(path.limit.oxide).toBe('Al2O3');
  });

  it('at every f lies where placing the drawn-off tile puts it', () => {
    for (const { f, scores } of path.points) {
      const placed = placeSample(model, drawOffSample(tile, slip, { f }).sample);
      placed.scores.forEach((s, k) => {
        expect(scores[k]).toBeCloseTo(s, 10);
      });
    }
  });

  it('is a curve: its middle is not halfway between its ends', () => {
    const [first, middle, last] = [path.points[0]!, path.points[10]!, path.points[20]!].map((p) => p.scores);
    const off = Math.hypot(...middle!.map((m, k) => m - (first![k]! + last![k]!) / 2));
    expect(off).toBeGreaterThan(0.05);
  });

  it('refuses an oxide of the model that the slip was not measured for, unless it holds none', () => {
    const { CaO: _, ...rest } = slip.amounts;
    const poor = { ...slip, amounts: rest };
    expect(() => mixingPath(model, tile, { slip: poor })).toThrow(/CaO was not measured in tile/);
    expect(mixingPath(model, tile, { slip: poor, unmeasured: 'none' }).points).toHaveLength(61);
  });
});
