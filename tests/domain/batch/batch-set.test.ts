import { describe, expect, it } from 'vitest';
import { type BatchSetOptions, batchSet } from '../../../api/domain/batch/batch-set.ts';
import { fireAt } from '../../../api/domain/batch/fire.ts';
import { nearestBatch } from '../../../api/domain/batch/nearest-batch.ts';
import type { BatchSet } from '../../../api/domain/batch/set-summary.ts';
import { starterShelf } from '../../../api/domain/batch/shelf.ts';
import { targetSpreadOf } from '../../../api/domain/batch/target-spread.ts';
import type { Material } from '../../../api/domain/batch/types.ts';
import type { Sample } from '../../../api/domain/composition/types.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import { DEFAULT_MODEL, type ModelSettings } from '../../../api/domain/reference/types.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';

/** An invented ware: log-normal about one paint. */
const CENTRE = { PbO: 50, SiO2: 30, Al2O3: 8, Fe2O3: 4, MnO: 5, K2O: 3 };
function invented(n: number, spread = 0.12): Sample[] {
  const stream = randomStream(11);
  return Array.from({ length: n }, (_, i) => {
    const raw = Object.entries(CENTRE).map(
      ([oxide, wt]) => [oxide, wt * Math.exp(spread * stream.normal())] as const,
    );
    const total = raw.reduce((sum, [, wt]) => sum + wt, 0);
    const amount = (wt: number) => ({
      value: (100 * wt) / total,
      limit: null,
      sigma: null,
      sigmaBasis: null,
      resolution: null,
    });
    const amounts = Object.fromEntries(raw.map(([oxide, wt]) => [oxide, amount(wt)]));
    return {
      id: `s${i}`,
      label: `s${i}`,
      group: 'g',
      role: 'reference',
      measured: 'paint',
      spots: 1,
      rawTotal: 100,
      amounts,
    };
  });
}
const modelOf = (n: number, settings: Partial<ModelSettings> = {}) =>
  fitReference(invented(n), { ...DEFAULT_MODEL, groups: ['g'], ...settings }, { g: 'Red ware' });
const spreadOf = (n: number, settings: Partial<ModelSettings> = {}) => {
  const model = modelOf(n, settings);
  return targetSpreadOf(model, model.groups[0]!);
};

/** A ware whose lead goes against its silica. */
function tiedSpread() {
  const swapped = invented(30, 0.02).map((sample, i) => {
    const shift = (i % 7) - 3;
    const move = (oxide: string, by: number) => ({
      ...sample.amounts[oxide]!,
      value: sample.amounts[oxide]!.value! + by,
    });
    return {
      ...sample,
      amounts: { ...sample.amounts, PbO: move('PbO', 2 * shift), SiO2: move('SiO2', -2 * shift) },
    };
  });
  const model = fitReference(swapped, { ...DEFAULT_MODEL, groups: ['g'] }, { g: 'Red ware' });
  return targetSpreadOf(model, model.groups[0]!);
}

const shelf = starterShelf();
const by = (...ids: string[]) => ids.map((id) => shelf.find((m) => m.id === id)!);
const enough = by('cerussite', 'quartz', 'kaolinite', 'potash-feldspar', 'hematite', 'pyrolusite');
const fire = fireAt({ celsius: 850 });

function run(
  materials: Material[],
  spread = spreadOf(30),
  options: Partial<BatchSetOptions> = {},
): { set: BatchSet; reports: number[] } {
  const work = batchSet({ materials, fire }, spread, options);
  const reports: number[] = [];
  for (let step = work.next(); ; step = work.next()) {
    if (step.done) return { set: step.value, reports };
    reports.push(step.value.done);
  }
}

describe('the set of batches inside a group', () => {
  /** A share of .95 has a standard error of .005 in 2,000 draws; four of them. */
  it('holds 95 % of the draws where every draw can be made: the edge is where Hotelling puts it', () => {
    const { set } = run(
      by('litharge', 'quartz', 'kaolinite', 'potash-feldspar', 'hematite', 'pyrolusite', 'calcite'),
    );
    const made = run(enough);
    expect(set.draws).toBe(2000);
    expect(Math.abs(made.set.inside / 2000 - 0.95)).toBeLessThan(0.02);
  });
  it('has its range about the batch nearest to the centre', () => {
    const spread = spreadOf(30);
    const { set } = run(enough, spread, { draws: 400 });
    const centre = modelOf(30).groups[0]!.centre;
    const parts = Object.fromEntries(spread.parts.map((oxide, j) => [oxide, centre[j]!]));
    for (const { material, amount } of nearestBatch({ target: { parts }, materials: enough, fire }).byDistance
      .lines) {
      const range = set.materials.find((m) => m.id === material.id)!;
      expect(range.low).toBeLessThan(amount);
      expect(range.high).toBeGreaterThan(amount);
      expect(range.least).toBeLessThanOrEqual(range.low);
      expect(range.most).toBeGreaterThanOrEqual(range.high);
    }
  });
  it('is wider for a looser group', () => {
    const loose = fitReference(invented(30, 0.3), { ...DEFAULT_MODEL, groups: ['g'] }, { g: 'Red ware' });
    const [narrow, wide] = [spreadOf(30), targetSpreadOf(loose, loose.groups[0]!)].map(
      (spread) => run(enough, spread, { draws: 300 }).set.materials.find((m) => m.id === 'cerussite')!,
    );
    expect(wide!.high - wide!.low).toBeGreaterThan(1.5 * (narrow!.high - narrow!.low));
  });
  it('says which materials go against each other', () => {
    const { set } = run(
      by('cerussite', 'quartz', 'kaolinite', 'potash-feldspar', 'hematite', 'pyrolusite'),
      tiedSpread(),
      { draws: 500 },
    );
    expect(set.ties.map((t) => [t.first, t.second])).toContainEqual(['Cerussite', 'Quartz']);
    for (const tie of set.ties) {
      expect(Math.abs(tie.correlation)).toBeGreaterThanOrEqual(0.7);
      expect(tie.words).toContain(tie.correlation > 0 ? 'with more' : 'with less');
    }
  });
  it('is the same for the same seed, and another for another', () => {
    const [a, b, c] = [1, 1, 2].map((seed) => run(enough, spreadOf(30), { draws: 60, seed }).set);
    expect(a).toEqual(b);
    expect(a!.materials[0]!.median).not.toBe(c!.materials[0]!.median);
  });
  it('reports progress by the chunk, and can be left', () => {
    expect(run(enough, spreadOf(30), { draws: 35, chunk: 10 }).reports).toEqual([10, 20, 30]);
    const work = batchSet({ materials: enough, fire }, spreadOf(30), { draws: 35, chunk: 10 });
    work.next();
    expect(work.return({} as BatchSet).done).toBe(true);
  });
  it('is empty, and says so, where a material is missing', () => {
    const { set } = run(by('cerussite', 'quartz', 'kaolinite'), spreadOf(30), { draws: 50 });
    expect(set.inside).toBe(0);
    expect(set.materials).toEqual([]);
    expect(set.words).toContain('None of 50');
  });
  it('uses no more materials than allowed, the same in every batch', () => {
    const work = batchSet(
      { materials: [...enough, ...by('litharge', 'goethite')], fire, atMost: 5 },
      spreadOf(30),
      { draws: 40 },
    );
    let step = work.next();
    while (!step.done) step = work.next();
    expect(step.value.materials.length).toBeLessThanOrEqual(5);
  });
  it('obeys bounds in every batch', () => {
    const work = batchSet({ materials: enough, fire, bounds: { pyrolusite: { most: 6 } } }, spreadOf(30), {
      draws: 100,
    });
    let step = work.next();
    while (!step.done) step = work.next();
    expect(step.value.materials.find((m) => m.id === 'pyrolusite')!.most).toBeLessThanOrEqual(6 + 1e-9);
  });
});

describe('the edge of a group', () => {
  it('under a shrunk covariance is its furthest member', () => {
    const spread = spreadOf(12, { covariance: { kind: 'shrinkage', target: 'ledoit-wolf' } });
    expect(spread.tails).toBeNull();
    expect(spread.words).toContain('furthest member');
    expect(spread.limit).toBeGreaterThan(0);
  });
  it('in a few components also limits what lies off them', () => {
    expect(spreadOf(20, { covariance: { kind: 'components', count: 2 } }).offLimit).toBeGreaterThan(0);
  });
  it('is refused outside log-ratios', () =>
    expect(() => spreadOf(30, { scale: 'log10' })).toThrow('need a log-ratio model'));
  it('is refused for a group whose spread was', () => {
    const model = modelOf(3);
    expect(() => targetSpreadOf(model, model.groups[0]!)).toThrow('need its spread');
  });
  it('is refused at a level of 1', () => {
    const model = modelOf(30);
    expect(() => targetSpreadOf(model, model.groups[0]!, 1)).toThrow('between 0 and 1');
  });
  it('with no draw is refused', () =>
    expect(() => run(enough, spreadOf(30), { draws: 0 })).toThrow('1 to 100000'));
});
