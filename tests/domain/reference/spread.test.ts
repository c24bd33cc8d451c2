import { readFileSync } from 'node:fs';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { closure } from '../../../api/domain/composition/closure.ts';
import { helmertBasis } from '../../../api/domain/composition/ilr.ts';
import { leaveOneOut } from '../../../api/domain/reference/leave-one-out.ts';
import { fitScale, freeAxes, scaled } from '../../../api/domain/reference/scale.ts';
import {
  distanceOff,
  distanceSquared,
  fitSpread,
  orRefusal,
  sharesOfD2,
} from '../../../api/domain/reference/spread.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { expectClose } from '../../support/close.ts';
import { clrRows, R_SAYS, RAW, rowsOf, SHRINKAGE } from '../../support/romano-british.ts';

type Table = readonly (readonly number[])[];
const clr = clrRows(RAW);
const kiln1 = rowsOf('G1_kiln1');
const columnsAsRows = (basis: Table) => basis[0]!.map((_, k) => basis.map((row) => row[k]!));
const helmert = columnsAsRows(helmertBasis(9));
const pivot = columnsAsRows(R_SAYS.ilr_basis_pivot.value);

describe('distances from kiln 1 in its own spread', () => {
  it("do not depend on the log-ratio basis: Helmert and pivot axes both give R's D²", () => {
    for (const axes of [helmert, pivot]) {
      const spread = fitSpread(
        kiln1.map((i) => clr[i]!),
        { method: 'sample', axes },
      );
      expectClose(
        clr.map((x) => distanceSquared(x, spread)),
        R_SAYS.mahalanobis_ilr.value.G1_kiln1.D2_all_rows,
      );
    }
  });

  it.each(['ledoit_wolf', 'oas'] as const)(
    'under shrinkage are those of scikit-learn (%s), in either basis',
    (name) => {
      const method = name === 'oas' ? 'oas' : 'ledoit-wolf';
      for (const axes of [helmert, pivot]) {
        const spread = fitSpread(
          kiln1.map((i) => clr[i]!),
          { method, axes },
        );
        expectClose(spread.shrinkage!, SHRINKAGE.G1_kiln1[name].shrinkage);
        expectClose(
          clr.map((x) => distanceSquared(x, spread)),
          SHRINKAGE.G1_kiln1[name].D2_all_rows,
        );
      }
    },
  );

  it.each(['standardised', 'log10'] as const)(
    "in %s wt% are R's, the empty direction taken out (tests/fixtures/closed-parts)",
    (scale) => {
      const file = path.resolve(import.meta.dirname, '../../fixtures/closed-parts/closed_parts.json');
      const fitted = fitScale(
        RAW.map((row) => closure(row)),
        scale,
      );
      const rows = RAW.map((row) => scaled(closure(row), fitted));
      const spread = fitSpread(
        kiln1.map((i) => rows[i]!),
        { method: 'sample', axes: freeAxes(fitted) },
      );
      expectClose(
        rows.map((x) => distanceSquared(x, spread)),
        JSON.parse(readFileSync(file, 'utf8'))[scale],
      );
    },
  );
});

/** A correlated group in D parts of a centred scale. */
const group = fc
  .record({
    seed: fc.integer({ min: 0, max: 1e6 }),
    D: fc.integer({ min: 2, max: 6 }),
    spare: fc.integer({ min: 3, max: 9 }),
  })
  .map(({ seed, D, spare }) => {
    const { normal } = randomStream(seed);
    const draw = () => clrRows([Array.from({ length: D }, (_, j) => Math.exp(0.3 * (j + 1) * normal()))])[0]!;
    return {
      D,
      rows: Array.from({ length: D - 1 + spare }, draw),
      x: draw(),
      axes: columnsAsRows(helmertBasis(D)),
    };
  });

describe('a spread', () => {
  it('shares D² out among the parts without remainder, whatever the basis', () => {
    fc.assert(
      fc.property(group, ({ rows, x, axes }) => {
        const spread = fitSpread(rows, { method: 'sample', axes });
        const turned = fitSpread(rows, { method: 'sample', axes: axes.toReversed() });
        const shares = sharesOfD2(x, spread);
        expectClose(
          shares.reduce((a, b) => a + b, 0),
          distanceSquared(x, spread),
          { relative: 1e-8 },
        );
        expectClose(sharesOfD2(x, turned), shares, { relative: 1e-6, floor: 1 });
      }),
    );
  });

  it('together with the distance off it keeps the whole distance', () => {
    fc.assert(
      fc.property(group, ({ D, x, axes }) => {
        const mean = new Array<number>(D).fill(0);
        const off = distanceOff(x, { mean, axes: axes.slice(1) });
        const on = x.reduce((sum, v, j) => sum + v * axes[0]![j]!, 0);
        expectClose(off, Math.abs(on), { floor: 1e-3 });
        expectClose(distanceOff(x, { mean, axes }), 0, { floor: 1 });
      }),
    );
  });
});

describe('leaving members out', () => {
  it.each(['sample', 'oas', 'ledoit-wolf'] as const)('equals a refit on the others (%s)', (method) => {
    fc.assert(
      fc.property(group, ({ rows, axes }) => {
        fc.pre(rows.length > 5);
        const found = leaveOneOut(rows, fitSpread(rows, { method, axes }))!;
        rows.forEach((x, i) => {
          const others = rows.filter((_, k) => k !== i);
          expectClose(found[i]!, distanceSquared(x, fitSpread(others, { method, axes })), { relative: 1e-6 });
        });
      }),
      { numRuns: 40 },
    );
  });

  it('gives nothing where the others are too few', () => {
    const rows = kiln1.slice(0, 9).map((i) => clr[i]!);
    expect(leaveOneOut(rows, fitSpread(rows, { method: 'sample', axes: helmert }))).toBeNull();
    const four = rows.slice(0, 4);
    expect(leaveOneOut(four, fitSpread(four, { method: 'oas', axes: helmert }))).toBeNull();
  });
});

describe('a refusal', () => {
  it('carries the requirement, and lets every other error through', () => {
    const few = () => fitSpread(clr.slice(0, 3), { method: 'oas', axes: helmert });
    expect(orRefusal(few)).toEqual({ value: null, refusal: 'OAS shrinkage needs at least 4 rows; found 3' });
    expect(() =>
      orRefusal(() => {
        throw new TypeError('a mistake of ours');
      }),
    ).toThrow('a mistake of ours');
  });
});
