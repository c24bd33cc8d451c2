import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { confidenceEllipse } from '../../../api/domain/reference/ellipse.ts';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import { randomStream } from '../../../api/domain/statistics/random.ts';
import { expectClose } from '../../support/close.ts';
import { GROUPS, R_SAYS } from '../../support/romano-british.ts';
import { POTTERY_NAMES, SHERDS, settingsFor } from '../../support/samples.ts';

const { groups } = fitReference(SHERDS, settingsFor(GROUPS), POTTERY_NAMES);

describe('ellipses of the three groups on the first two components are those of R', () => {
  it.each(groups.map((g) => [g.id, g] as const))('%s', (id, group) => {
    const r = R_SAYS.ellipses_clr_pc1_pc2.value[id];
    for (const [level, entry] of [
      [0.9, r.semi_axes_90],
      [0.95, r.semi_axes_95],
    ] as const) {
      const found = confidenceEllipse(group, [0, 1], level);
      const wanted = entry.hotelling_new_observation;
      expectClose(found.c2, wanted.c2);
      expectClose(found.semiAxes, [wanted.major, wanted.minor]);
      expectClose(found.centre, r.center);
      const degrees = ((found.angle * 180) / Math.PI + 180) % 180;
      expectClose(degrees, r.major_axis_angle_deg_mod180);
    }
  });
});

describe('a confidence ellipse', () => {
  it('swaps with its axes: the angle is mirrored, the lengths stay', () => {
    fc.assert(
      fc.property(fc.constantFrom(...groups), fc.constantFrom(0.5, 0.9, 0.95, 0.99), (group, level) => {
        const [a, b] = [confidenceEllipse(group, [0, 2], level), confidenceEllipse(group, [2, 0], level)];
        expectClose(a.semiAxes, b.semiAxes);
        expectClose(Math.cos(2 * (a.angle + b.angle)), -1, { relative: 1e-9 });
      }),
    );
  });

  it('holds its share of new members: within three standard errors of 95 % for groups of 8', () => {
    const { normal } = randomStream(31);
    const rounds = 4000;
    let inside = 0;
    for (let round = 0; round < rounds; round++) {
      const draw = () => [normal(), 0.5 * normal()];
      const rows = Array.from({ length: 8 }, draw);
      const at = (j: number) => rows.map((r) => r[j]!);
      const m = [0, 1].map((j) => at(j).reduce((a, b) => a + b, 0) / 8);
      const s = [0, 1].map((i) =>
        [0, 1].map((j) => rows.reduce((sum, r) => sum + (r[i]! - m[i]!) * (r[j]! - m[j]!), 0) / 7),
      );
      const group = { name: 'simulated', n: 8, scoreMean: m, scoreCovariance: s };
      const { semiAxes, angle } = confidenceEllipse(group, [0, 1], 0.95);
      const x = draw().map((v, j) => v - m[j]!);
      const along = x[0]! * Math.cos(angle) + x[1]! * Math.sin(angle);
      const across = x[1]! * Math.cos(angle) - x[0]! * Math.sin(angle);
      if ((along / semiAxes[0]) ** 2 + (across / semiAxes[1]) ** 2 <= 1) inside++;
    }
    expect(Math.abs(inside / rounds - 0.95)).toBeLessThan(3 * Math.sqrt((0.95 * 0.05) / rounds));
  });

  it.each([
    [{ ...groups[0]!, n: 3 }, [0, 1], 'an ellipse needs at least 4 sherds; kiln1 has 3'],
    [{ ...groups[0]!, scoreCovariance: null }, [0, 1], 'an ellipse needs at least 4 sherds'],
    [groups[0]!, [0, 8], 'an ellipse needs two components out of 8; asked for 1 and 9'],
    [groups[0]!, [1, 1], 'asked for 2 and 2'],
  ] as const)('is refused for %#', (group, axes, message) => {
    expect(() => confidenceEllipse(group, axes, 0.95)).toThrow(message);
  });
});
