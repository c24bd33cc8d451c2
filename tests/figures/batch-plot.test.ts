import { describe, expect, it } from 'vitest';
import { FORMATS, grown } from '../../api/export/formats.ts';
import { type BatchSides, batchData } from '../../api/figures/batch-data.ts';
import { batchHeight, batchPlot } from '../../api/figures/batch-plot.ts';
import { batchCaption } from '../../api/figures/captions-batch.ts';
import { THEMES } from '../../api/figures/themes.ts';
import { collisions, cutTexts } from './collisions.ts';
import { drawn, idsIn, numbersIn } from './drawing.ts';

const oxide = (name: string, percent: number, spread = 0) => ({
  ...{ oxide: name, percent, low: percent - spread, high: percent + spread },
  ...{ grams: percent, sigma: 0, moles: 1, molePercent: 1 },
});
const of = (value: number | null, limit: number | null = null) => ({
  ...{ value, limit, sigma: value === null ? null : 0.5 },
  ...{ sigmaBasis: 'stated' as const, resolution: null },
});
const sides: BatchSides = {
  ...{ name: 'Batch X', celsius: 850, target: null },
  fired: { oxides: [oxide('PbO', 60, 2), oxide('SiO2', 30), oxide('MnO', 8), oxide('Na2O', 2)] },
  tiles: [
    { label: 'T1', spots: 3, amounts: { PbO: of(49), SiO2: of(40), MnO: of(9.8), TiO2: of(null, 0.2) } },
    { label: 'T2', spots: 1, amounts: { PbO: of(50), SiO2: of(40), MnO: of(9), TiO2: of(1), K2O: of(1) } },
  ],
};
const data = batchData(sides, { id: 'b' });
const rowOf = (name: string) => data.rows.find((one) => one.oxide === name)!;

describe('a batch beside its tiles', () => {
  it('closes every side to 100 on the oxides measured on every tile', () => {
    expect(data.rows.map((row) => row.oxide)).toEqual(['PbO', 'SiO2', 'MnO', 'TiO2']);
    const sum = (pick: (row: (typeof data.rows)[number]) => number) =>
      data.rows.reduce((total, row) => total + pick(row), 0);
    expect(sum((row) => row.predicted.value)).toBeCloseTo(100, 9);
    expect(sum((row) => row.tiles[0]!.value)).toBeCloseTo(100, 9);
    expect(sum((row) => row.tiles[1]!.value)).toBeCloseTo(100, 9);
    expect(rowOf('PbO').predicted.value).toBeCloseTo((100 * 60) / 98, 9);
    expect(data.leftOut).toEqual(['Na2O']);
  });

  it('stands at the wt% that the axis says, what is none in a place of its own', () => {
    const { svg } = drawn(batchPlot, data);
    const ticks = [...svg.querySelectorAll('.axis.x .tick')].map((tick) => ({
      px: numbersIn(tick.getAttribute('transform')!)[0]! - 0.5,
      wt: Number(tick.textContent),
    }));
    const [first, last] = [ticks[0]!, ticks.at(-1)!];
    const wtAt = (px: number) => first.wt * (last.wt / first.wt) ** ((px - first.px) / (last.px - first.px));
    const bar = svg.querySelector('.row .predicted line')!;
    expect(wtAt(Number(bar.getAttribute('x1'))) / ((100 * 58) / 98)).toBeCloseTo(1, 2);
    expect(wtAt(Number(bar.getAttribute('x2'))) / ((100 * 62) / 98)).toBeCloseTo(1, 2);
    expect(svg.textContent).toContain('none');
    const { background } = THEMES['page-light'];
    const hollow = [...svg.querySelectorAll('.tile path')].filter(
      (m) => m.getAttribute('fill') === background,
    );
    expect(hollow).toHaveLength(1);
  });

  it('scales a target of few oxides to what the prediction holds of them', () => {
    const target = { name: 'a sherd', parts: { PbO: 30, SiO2: 15 } };
    const aimed = batchData({ ...sides, target }, { id: 'b' });
    const target0 = aimed.rows.find((row) => row.oxide === 'PbO')!;
    expect(target0.target).toBeCloseTo(target0.predicted.value, 9);
    expect(aimed.rows.find((row) => row.oxide === 'MnO')!.target).toBeNull();
    expect(drawn(batchPlot, aimed).svg.querySelectorAll('.target')).toHaveLength(2);
  });

  it('says n of each tile, the fire, and what was not compared in its caption', () => {
    const caption = batchCaption(data);
    expect(caption).toContain('T1 (n = 3 spots) and the paint of T2 (n = 1 spot)');
    expect(caption).toContain('850 °C');
    expect(caption).toContain('Not measured, so not compared: Na₂O.');
  });

  it.each(Object.values(FORMATS))('collides and runs off nowhere: $name', (sheet) => {
    const theme = THEMES[sheet.theme];
    const { svg, text } = drawn(batchPlot, data, {
      ...grown(sheet, batchHeight(data, sheet.width, theme)),
      theme,
    });
    expect(collisions(svg)).toEqual([]);
    expect(cutTexts(svg)).toEqual([]);
    const ids = idsIn(text);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('is refused beside nothing, and where tiles share no two oxides', () => {
    expect(() => batchData({ ...sides, tiles: [] }, { id: 'b' })).toThrow(/this batch has neither/);
    const odd = [...sides.tiles, { label: 'T3', spots: 1, amounts: { PbO: of(1) } }];
    expect(() => batchData({ ...sides, tiles: odd }, { id: 'b' })).toThrow(/at least two oxides.*found 1/);
  });
});
