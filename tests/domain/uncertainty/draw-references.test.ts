import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeSample } from '../../../api/domain/placement/place.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import { refitReference } from '../../../api/domain/reference/fit-members.ts';
import { coordinatesOf } from '../../../api/domain/reference/scale.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { drawPlacements, finishDraws } from '../../../api/domain/uncertainty/draw-placements.ts';
import { drawReferences } from '../../../api/domain/uncertainty/draw-references.ts';
import { DEFAULT_UNCERTAINTY } from '../../../api/domain/uncertainty/types.ts';
import { amount, sampleOf, settingsFor } from '../../support/samples.ts';

const BASE = { PbO: 55, SiO2: 32, Al2O3: 6, Fe2O3: 3, MnO: 3 };
/** Sixteen red sherds, copper below 0.05 in the first `below` of them, and sixteen blue ones with copper. */
function modelWith(below: number) {
  const { normal } = randomStream(3);
  const like = (base: Record<string, number>) =>
    Object.fromEntries(Object.entries(base).map(([o, v]) => [o, v * Math.exp(0.08 * normal())]));
  const red = Array.from({ length: 16 }, (_, i) => {
    const CuO = i < below ? amount(null, 0.05) : amount(0.08 * Math.exp(0.1 * normal()));
    return sampleOf(`red ${i}`, 'red', { ...like(BASE), CuO });
  });
  const blue = Array.from({ length: 16 }, (_, i) =>
    sampleOf(`blue ${i}`, 'blue', like({ ...BASE, PbO: 45, CuO: 1.5 })),
  );
  const model = fitReference([...red, ...blue], settingsFor(['red', 'blue']), { red: 'Red', blue: 'Blue' });
  return { model, red };
}
const drawn = (
  model: ReturnType<typeof modelWith>['model'],
  sample: ReturnType<typeof sampleOf>,
  draws = 1000,
) => finishDraws(drawPlacements(model, { sample, slip: null, settings: { ...DEFAULT_UNCERTAINTY, draws } }));
const tile = sampleOf('tile', null, { ...BASE, CuO: amount(null, 0.05) });

describe('values below detection in sample and references alike', () => {
  it.each([16, 12])('do not set them apart: a tile at the centre of a group with %i of 16 below', (below) => {
    const { model } = modelWith(below);
    expect(placeSample(model, tile).groups.find((g) => g.group === 'red')!.membership).toBeGreaterThan(0.9);
    const red = drawn(model, tile).groups[0]!;
    expect(red.inside).toBeGreaterThan(0.95);
    expect(red.membership!.low).toBeGreaterThan(0.01);
  });

  it('nor do they its members, each against the others', () => {
    const { model, red } = modelWith(16);
    for (const member of red.slice(0, 5))
      expect(drawn(model, member, 400).groups[0]!.inside).toBeGreaterThan(0.7);
  });

  it('still leave a tile with copper outside', () => {
    const { model } = modelWith(16);
    const copper = sampleOf('tile', null, { ...BASE, CuO: 1.5 });
    expect(drawn(model, copper, 400).groups[0]!.outside).toBeGreaterThan(0.95);
  });

  it('are said to be drawn', () => {
    const { model } = modelWith(12);
    expect(drawn(model, tile, 200).carried.at(-1)).toBe(
      'Of the references 12 values below detection (CuO) are drawn anew below their limits 50 times, and everything is fitted to them each time.',
    );
    expect(drawn(modelWith(0).model, tile, 200).carried.at(-1)).toMatch(
      /^The references are taken as measured/,
    );
  });
});

describe('references drawn anew', () => {
  const { model } = modelWith(12);
  const at = model.parts.indexOf('CuO');

  it('keep the ratios of what was detected, and lie between 0.3 of the limit and the limit: 0.65 of it on average', () => {
    let sum = 0;
    let count = 0;
    const random = randomStream(8);
    for (let round = 0; round < 200; round++) {
      const { members } = drawReferences(model, random);
      members.forEach(({ parts }, i) => {
        const was = model.members[i]!.parts;
        expect(parts[1]! / parts[0]!).toBeCloseTo(was[1]! / was[0]!, 10);
        if (i >= 12) expect(parts).toEqual(was);
        else {
          // Over the sherd's other oxides, as a share of what stands at 0.65 of the limit.
          const share = (0.65 * (parts[at]! / parts[0]!)) / (was[at]! / was[0]!);
          expect(share).toBeGreaterThanOrEqual(0.3 - 1e-12);
          expect(share).toBeLessThanOrEqual(1 + 1e-12);
          sum += share;
          count++;
        }
      });
    }
    // Uniform over 0.7 of the limit: standard deviation 0.7/√12.
    expect(Math.abs(sum / count - 0.65)).toBeLessThan((3 * 0.7) / Math.sqrt(12 * count));
  });

  it('fitted to what they are give the model again, member by member', () => {
    const again = refitReference(
      model,
      model.members.map((m) => m.parts),
    );
    expect(again).toEqual(model);
  });

  it('have every member where its own composition puts it', () => {
    fc.assert(
      fc.property(fc.nat(1e6), (seed) => {
        const other = drawReferences(model, randomStream(seed));
        const first = other.members[0]!;
        coordinatesOf(other, first.parts).forEach((y, j) => {
          const back = other.pca.loadings.reduce(
            (sum, l, k) => sum + first.scores[k]! * l[j]!,
            other.mean[j]!,
          );
          expect(back).toBeCloseTo(y, 8);
        });
      }),
      { numRuns: 10 },
    );
  });

  it('of a model that a draw cannot be fitted to are left as they are', () => {
    const flat = {
      ...model,
      settings: { ...model.settings, scale: 'standardised' as const },
      members: model.members.map((m) => ({ ...m, parts: model.members[0]!.parts })),
      replaced: [],
    };
    expect(drawReferences(flat, randomStream(1))).toBe(flat);
  });
});
