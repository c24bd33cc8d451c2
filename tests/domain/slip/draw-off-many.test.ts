import { describe, expect, it } from 'vitest';
import { drawOffMany } from '../../../api/domain/slip/draw-off-many.ts';
import { drawOffSample } from '../../../api/domain/slip/sample.ts';
import { carriedFraction, statedFraction } from '../../../api/domain/uncertainty/carried-fraction.ts';
import { sampleOf } from '../uncertainty/support.ts';

const slip = sampleOf('slip', [0.2, 65, 22, 9, 3.8], 0.02);
const sherds = ['a', 'b', 'c', 'd'].map((id) => sampleOf(id, [45, 41, 5.5, 5, 3.5], 0.02));
const estimate = (f: number, cannotTell: string | null = null) => ({
  f,
  kind: 'thickness' as const,
  cannotTell,
});

describe('drawing slip off references', () => {
  const found = drawOffMany(sherds, {
    a: { slip, estimate: estimate(0.1) },
    b: { slip, estimate: estimate(0.6) },
    c: { slip, estimate: estimate(0.2, 'f cannot be told: …') },
  });

  it('keeps the order, and draws each off by its own fraction', () => {
    expect(found.samples.map((s) => s.id)).toEqual(['a', 'b', 'c', 'd']);
    expect(found.samples[0]).toEqual(drawOffSample(sherds[0]!, slip, { f: 0.1 }).sample);
    expect(found.states.map((s) => s.kind)).toEqual(['out', 'in', 'in', 'in']);
  });

  it('says why a sherd keeps its slip', () => {
    expect(found.keptIn.map((k) => k.reason)).toEqual([
      expect.stringMatching(/stay above nothing; at f = 0.6 Al2O3/),
      'f cannot be told: …',
      'No slip fraction is known for it',
    ]);
    expect(found.samples[3]).toBe(sherds[3]);
  });

  it('a fraction that cannot be told is not carried either, nor one outside 0–0.99', () => {
    const vague = {
      unbounded: 0.2,
      sigma: 1,
      df: null,
      kind: 'batch' as const,
      cannotTell: 'f cannot be told: …',
    };
    expect(() => carriedFraction(vague)).toThrow(/one that can be told; f cannot be told/);
    expect(() => statedFraction(Number.NaN)).toThrow(/it is NaN/);
  });
});
