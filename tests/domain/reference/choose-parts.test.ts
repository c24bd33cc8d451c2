import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chooseParts } from '../../../api/domain/reference/choose-parts.ts';
import { amount, sampleOf } from '../../support/samples.ts';

const replacement = { fraction: 0.65, limits: {} };
const r1 = sampleOf('R1', 'g', { PbO: 50, SiO2: 40, MnO: 3, CuO: 0.5 });
const r2 = sampleOf('R2', 'g', { PbO: 48, SiO2: 41, MnO: 4 });
const tile = sampleOf('Tile 1', null, { PbO: 40, SiO2: 50, MnO: 2, SnO2: 1.234 });
const common = { parts: null, replacement };

describe('oxides compared by default are those measured everywhere', () => {
  it('names the oxides that fall out and the specimens that are the reason, replicas among them', () => {
    const chosen = chooseParts({ references: [r1, r2], replicas: [tile], settings: common });
    expect(chosen.parts).toEqual(['PbO', 'SiO2', 'MnO']);
    expect(chosen.fallenOut).toEqual([
      { oxide: 'CuO', because: 'not measured', specimens: ['R2', 'Tile 1'] },
      { oxide: 'SnO2', because: 'not measured', specimens: ['R1', 'R2'] },
    ]);
    expect(chosen.leftOut).toEqual([]);
  });

  it('warns of an oxide found in a replica and in no reference, which no distance can show', () => {
    const { warnings } = chooseParts({ references: [r1, r2], replicas: [tile], settings: common });
    expect(warnings).toEqual([
      'SnO2 was found in Tile 1 (1.2 wt%) but in no reference, so it is not compared.',
    ]);
  });

  it('drops an oxide detected in no reference, or the same in all', () => {
    const never = [r1, r2].map((s) => ({
      ...s,
      amounts: { ...s.amounts, SnO2: amount(null, 0.1), TiO2: amount(0.3) },
    }));
    const withTin = { ...tile, amounts: { ...tile.amounts, TiO2: amount(0.4) } };
    const { parts, fallenOut, warnings } = chooseParts({
      references: never,
      replicas: [withTin],
      settings: common,
    });
    expect(parts).toEqual(['PbO', 'SiO2', 'MnO']);
    expect(fallenOut.filter((f) => f.because === 'constant').map((f) => f.oxide)).toEqual(['SnO2', 'TiO2']);
    expect(warnings[0]).toContain('SnO2 was found in Tile 1');
  });

  it('drops an oxide below detection without any limit, unless one is given by hand', () => {
    const bare = { ...r2, amounts: { ...r2.amounts, MnO: amount(null) } };
    const request = { references: [r1, bare], replicas: [], settings: common };
    expect(chooseParts(request).fallenOut).toContainEqual({
      oxide: 'MnO',
      because: 'no detection limit',
      specimens: ['R2'],
    });
    const given = { parts: null, replacement: { fraction: 0.65, limits: { MnO: 0.1 } } };
    expect(chooseParts({ ...request, settings: given }).parts).toContain('MnO');
  });

  it('takes a reported zero as below detection', () => {
    const zero = { ...r2, amounts: { ...r2.amounts, MnO: amount(0) } };
    const { fallenOut } = chooseParts({ references: [r1, zero], replicas: [], settings: common });
    expect(fallenOut).toContainEqual({ oxide: 'MnO', because: 'no detection limit', specimens: ['R2'] });
  });
});

describe('oxides chosen by hand', () => {
  const settings = { parts: ['PbO', 'CuO', 'SiO2', 'PbO'], replacement };
  const r3 = sampleOf('R3', 'g', { PbO: 45, SiO2: 42, CuO: 0.7 });

  it('are compared as chosen, once each, and samples without them are left out with the reason', () => {
    const chosen = chooseParts({ references: [r1, r2, r3], replicas: [tile], settings });
    expect(chosen.parts).toEqual(['PbO', 'CuO', 'SiO2']);
    expect(chosen.leftOut).toEqual([
      { sample: 'R2', label: 'R2', reason: 'CuO not measured' },
      { sample: 'Tile 1', label: 'Tile 1', reason: 'CuO not measured' },
    ]);
    expect(chosen.fallenOut).toEqual([
      { oxide: 'MnO', because: 'not chosen', specimens: [] },
      { oxide: 'SnO2', because: 'not chosen', specimens: [] },
    ]);
  });

  it('leave out a sample below detection without a limit', () => {
    const bare = { ...r2, amounts: { ...r2.amounts, CuO: amount(null) } };
    const { leftOut } = chooseParts({ references: [r1, bare, r3], replicas: [], settings });
    expect(leftOut[0]!.reason).toBe('CuO below detection without a limit');
  });

  it('are refused when no reference has one of them', () => {
    const ask = () =>
      chooseParts({
        references: [r1, r2],
        replicas: [tile],
        settings: { parts: ['PbO', 'SnO2'], replacement },
      });
    expect(ask).toThrow('a chosen oxide needs a reference that has it; none has SnO2');
  });

  it('are refused when fewer than two are left', () => {
    const ask = () =>
      chooseParts({ references: [r1, r2], replicas: [], settings: { parts: ['PbO'], replacement } });
    expect(ask).toThrow('a comparison needs at least two oxides');
  });
});

const OXIDES = ['PbO', 'SiO2', 'Al2O3', 'MnO', 'CuO'];
const someSample = (role: 'g' | null) =>
  fc
    .tuple(
      fc.uuid(),
      fc.subarray(OXIDES, { minLength: 2 }),
      fc.array(fc.double({ min: 0.01, max: 60, noNaN: true }), { minLength: 5, maxLength: 5 }),
    )
    .map(([id, oxides, values]) =>
      sampleOf(id, role, Object.fromEntries(oxides.map((o, j) => [o, values[j]!]))),
    );

describe('every oxide is either compared or accounted for', () => {
  it('holds for any set of analyses', () => {
    fc.assert(
      fc.property(
        fc.array(someSample('g'), { minLength: 2, maxLength: 5 }),
        fc.array(someSample(null), { maxLength: 2 }),
        (references, replicas) => {
          const all = new Set([...references, ...replicas].flatMap((s) => Object.keys(s.amounts)));
          let chosen: ReturnType<typeof chooseParts>;
          try {
            chosen = chooseParts({ references, replicas, settings: common });
          } catch (error) {
            expect((error as Error).message).toContain('at least two oxides');
            return;
          }
          const seen = [...chosen.parts, ...chosen.fallenOut.map((f) => f.oxide)];
          expect(seen.length).toBe(all.size);
          expect(new Set(seen)).toEqual(all);
          for (const part of chosen.parts)
            expect([...references, ...replicas].every((s) => s.amounts[part])).toBe(true);
        },
      ),
    );
  });
});
