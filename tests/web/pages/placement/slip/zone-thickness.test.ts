import { describe, expect, it } from 'vitest';
import { lineOf, thicknessesOf } from '../../../../../web/pages/placement/slip/zone-thickness.ts';

const zone = (label: string, micrometres: number | null) => ({ id: `id ${label}`, label, micrometres });
const tile = (label: string, ...zones: ReturnType<typeof zone>[]) =>
  ({ label, zones }) as unknown as Parameters<typeof thicknessesOf>[0][number];

describe('thickness from zones', () => {
  it('is the mean of the zones that were analysed, with their standard deviation', () => {
    const one = tile('T1', zone('A1', 40), zone('B1', 60), zone('C1', 200));
    const [found] = thicknessesOf([one], new Set(['id A1', 'id B1']));
    // Of 40 and 60 by hand: mean 50, standard deviation √200.
    expect(found).toEqual({ label: 'T1', mean: 50, spread: Math.sqrt(200), zones: ['A1', 'B1'] });
  });
  it('is that of all zones noted where none was analysed, and of none where nothing is noted', () => {
    const tiles = [tile('T1', zone('A1', 40), zone('B1', null)), tile('T2', zone('A1', null))];
    expect(thicknessesOf(tiles, new Set())).toEqual([{ label: 'T1', mean: 40, spread: null, zones: ['A1'] }]);
  });
  it('leaves open in its line what nobody knows', () => {
    const found = { label: 'T1', mean: 51.26, spread: null, zones: ['A1'] };
    expect(lineOf(found, null)).toBe('T1; 51.3; ; ; ');
    expect(lineOf({ ...found, spread: 7 }, { f: 0.17, sigma: 0.03 })).toBe('T1; 51.3; 7; 0.17; 0.03');
    expect(lineOf(found, { f: 0.17, sigma: 0 })).toBe('T1; 51.3; ; ; ');
  });
});
