import { describe, expect, it } from 'vitest';
import { demoStudy } from '../../api/services/demo/data.ts';
import { TECHNIQUES } from '../../api/services/techniques.ts';

const study = demoStudy();
const values = study.analyses.flatMap((analysis) => analysis.reported);

describe('the demo study', () => {
  it('is the same for the same seed and another for another seed', () => {
    expect(demoStudy(7)).toEqual(demoStudy(7));
    expect(demoStudy(7).analyses).not.toEqual(demoStudy(8).analyses);
  });

  it('says in its name, place and every source that it is invented', () => {
    expect(study.study.name).toMatch(/demo/);
    expect(study.study.place).toMatch(/invented/);
    expect(study.groups.every((group) => /invented/i.test(group.source))).toBe(true);
    expect(study.analyses.every((analysis) => /invented/i.test(analysis.source + analysis.laboratory))).toBe(
      true,
    );
  });

  it('has at least four ware groups of unequal size, one of six sherds, and nine replicas', () => {
    const sizes = study.groups.map(
      (group) => study.specimens.filter((specimen) => specimen.group === group.name).length,
    );
    expect(sizes.length).toBeGreaterThanOrEqual(4);
    expect(new Set(sizes).size).toBe(sizes.length);
    expect(sizes).toContain(6);
    expect(study.specimens.filter((specimen) => specimen.kind === 'replica')).toHaveLength(9);
  });

  it('measures paint, slip and body, with some values below a stated detection limit', () => {
    expect(new Set(study.analyses.map((analysis) => analysis.measured))).toEqual(
      new Set(['paint', 'slip', 'body']),
    );
    const below = values.filter((value) => value.belowDetection);
    expect(below.length).toBeGreaterThan(10);
    expect(below.every((value) => value.value === null && value.limit! > 0)).toBe(true);
  });

  it('reports no negative value, and totals a laboratory would pass', () => {
    expect(values.every((value) => value.value === null || value.value > 0)).toBe(true);
    for (const analysis of study.analyses) {
      const total = analysis.reported.reduce((sum, value) => sum + (value.value ?? 0), 0);
      expect(total).toBeGreaterThan(94);
      expect(total).toBeLessThan(104);
    }
  });

  it('uses techniques the service knows, and names each specimen once', () => {
    const codes = TECHNIQUES.map((technique) => technique.code);
    expect(study.analyses.every((analysis) => codes.includes(analysis.technique!))).toBe(true);
    const labels = study.specimens.map((specimen) => specimen.label);
    expect(new Set(labels).size).toBe(labels.length);
    expect(study.analyses.every((analysis) => labels.includes(analysis.specimen))).toBe(true);
  });
});
