import { describe, expect, it } from 'vitest';
import type { SharedOutcome } from '../../api/contract/shared.ts';
import type { FrozenPayload } from '../../api/services/share-payload.ts';
import { tablesOf } from '../../api/services/share-tables.ts';

const effect = (scale: 'log-odds' | 'share' | 'grades') => ({
  ...{ factor: 'coats', contrast: 'per coat', scale, estimate: 1.5, low: 0.5, high: 2.5 },
  ...{ level: 0.95, p: 0.01, method: 'exact-conditional', verdict: 'matters' },
});
const outcome = {
  kind: 'outcome',
  analysis: { effects: [effect('log-odds'), effect('share'), effect('grades')] },
  zones: [{ tile: 'T1', label: 'A1', factors: { coats: 2 }, grade: null, glassyShare: 0.25 }],
} as unknown as SharedOutcome;
const rows = (csv: string) => csv.trim().split('\r\n');

describe('the tables of a share', () => {
  it('name the unit of every effect, and that a share is of one', () => {
    const [head, ...lines] = rows(tablesOf(outcome).effects!());
    expect(head).toBe('factor,contrast,unit,effect,low,high,level,p,method,verdict');
    expect(lines).toEqual([
      expect.stringContaining('coats,per coat,ln odds ratio,1.5,0.5,2.5,'),
      expect.stringContaining('coats,per coat,"share, 0 to 1",1.5,0.5,2.5,'),
      expect.stringContaining('coats,per coat,grades,1.5,0.5,2.5,'),
    ]);
    expect(rows(tablesOf(outcome).zones!())).toEqual([
      'tile,zone,gloss,share glassy (0 to 1),coats',
      'T1,A1,,0.25,2',
    ]);
  });
  it('are written one at a time: that of placements reads nothing of what was excluded', () => {
    const untouched = (name: string) => ({
      get() {
        throw new Error(`${name} was read`);
      },
    });
    const model = { parts: [], components: [], members: [] };
    const result = Object.defineProperties({ model, placements: [] }, { excluded: untouched('excluded') });
    const payload = { kind: 'placement', placement: { result } } as unknown as FrozenPayload;
    const tables = tablesOf(payload);
    expect(rows(tables.placements!())).toHaveLength(1);
    expect(() => tables.excluded!()).toThrow('excluded was read');
  });
});
