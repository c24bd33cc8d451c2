import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blankLine, readLines, rowsOfLines } from '../../../../web/pages/bench/parts/lines-form.ts';

const name = (key: string) => key || 'nothing';
const row = (material: string, amount: string, water = '') => ({ ...blankLine(0), material, amount, water });

describe('lines as typed', () => {
  it('come back as they were kept', () => {
    const amount = fc.integer({ min: 0, max: 99_999 }).map((n) => n / 100);
    fc.assert(
      fc.property(
        fc.array(fc.record({ material: fc.constant('quartz'), amount, water: amount })),
        (lines) => {
          const kept = lines.map((line) => ({ ...line, water: line.water % 100 }));
          const read = readLines(rowsOfLines(kept), name);
          expect(read.wrong.size).toBe(0);
          expect(read.lines).toEqual(kept);
        },
      ),
    );
  });

  it('may be written with a decimal comma; blank ones are passed over', () => {
    const { lines, wrong } = readLines([row('quartz', '12,5'), blankLine(1)], name);
    expect(wrong.size).toBe(0);
    expect(lines).toEqual([{ material: 'quartz', amount: 12.5, water: 0 }]);
  });

  it.each([
    [row('quartz', '-1'), 'zero or more'],
    [row('quartz', 'ten'), '“ten” is none'],
    [row('quartz', ''), 'needs an amount'],
    [row('', '5'), 'Choose a material'],
    [row('quartz', '5', '100'), 'below 100'],
    [row('quartz', '5', 'wet'), '“wet” is none'],
  ])('are named when they cannot be read: %j', (line, words) => {
    const { lines, wrong } = readLines([line], name);
    expect(lines).toEqual([]);
    expect(wrong.get(0)).toContain(words);
  });
});
