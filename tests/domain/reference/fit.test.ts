import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { fitReference } from '../../../api/domain/reference/fit.ts';
import type { ModelSettings } from '../../../api/domain/reference/types.ts';
import { expectClose } from '../../support/close.ts';
import { GROUPS, R_SAYS, rowsOf } from '../../support/romano-british.ts';
import { amount, POTTERY_NAMES, SHERDS, sampleOf, settingsFor, sherd } from '../../support/samples.ts';

const fixture = (name: string) =>
  readFileSync(path.resolve(import.meta.dirname, '../../fixtures', name), 'utf8');
const fitted = (changes: Partial<ModelSettings> = {}) =>
  fitReference(SHERDS, settingsFor(GROUPS, changes), POTTERY_NAMES);
const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);

describe("a reference model of the 45 sherds has R's components", () => {
  it('in log-ratios: eigenvalues, loadings and scores of prcomp on the clr', () => {
    const { pca, members } = fitted();
    const r = R_SAYS.prcomp_clr_cov.value;
    expectClose(pca.eigenvalues, r.eigenvalues.slice(0, 8), { floor: 0 });
    const loadings = pca.loadings[0]!.map((_, j) => pca.loadings.slice(0, 4).map((d) => d[j]!));
    expectClose(loadings, r.loadings, { floor: 1e-3 });
    expectClose(
      members.slice(0, 5).map((m) => m.scores.slice(0, 4)),
      r.scoresFirst5,
      { floor: 1e-3 },
    );
  });

  it('in standardised wt%: prcomp on the correlations of rows closed to 100', () => {
    const { pca, members, mean, sd } = fitted({ scale: 'standardised' });
    const r = R_SAYS.prcomp_closed_correlation.value;
    expectClose(mean, r.center);
    expectClose(sd!, r.scale);
    expectClose(pca.eigenvalues, r.eigenvalues.slice(0, 8), { floor: 0 });
    const scores = members.slice(0, 5).map((m) => m.scores.slice(0, 4));
    expectClose(scores, r.scoresFirst5, { floor: 1e-3 });
  });

  it('in log10: prcomp on the logarithms of rows closed to 100 (tests/fixtures/closed-parts)', () => {
    const r = JSON.parse(fixture('closed-parts/closed_parts.json'));
    expectClose(fitted({ scale: 'log10' }).pca.eigenvalues, r.pca_log10_eigenvalues, { floor: 1e-6 });
  });
});

describe('a reference model of hongite (Aitchison 1986, Data 1; tests/fixtures/hongite.citation.md)', () => {
  const [header, ...lines] = fixture('hongite.csv').trim().split('\n');
  const oxides = header!.split(',').slice(1);
  const rows = lines.map((line) => {
    const [id, ...parts] = line.split(',');
    return sampleOf(id!, 'h', Object.fromEntries(oxides.map((oxide, j) => [oxide, Number(parts[j])])));
  });
  const model = fitReference(rows, settingsFor(['h']), {});

  it('explains 94.255 % and 5.385 % of the variance, 1.691324 in all', () => {
    expectClose(
      model.pca.explained.slice(0, 2).map((v) => 100 * v),
      [94.255, 5.385],
      { relative: 1e-4 },
    );
    expectClose(sum(model.pca.eigenvalues), 1.691324, { relative: 1e-6 });
  });

  it('has its centre at 48.941, 21.966, 9.881, 10.405, 8.806', () => {
    expectClose(model.groups[0]!.centre, [48.941, 21.966, 9.881, 10.405, 8.806], { relative: 1e-4 });
  });
});

describe('groups of a model', () => {
  it("have R's leave-one-out distances in all directions, where n and p allow", () => {
    const { groups } = fitted({ covariance: { kind: 'sample' } });
    for (const group of groups) {
      expect(group.spread!.p).toBe(8);
      expectClose(group.memberD2!, R_SAYS.mahalanobis_ilr.value[group.id].loo_D2_members);
    }
  });

  it("have R's leave-one-out distances in three components, which are not refitted", () => {
    const { groups } = fitted({ covariance: { kind: 'components', count: 3 } });
    for (const group of groups) {
      expectClose(group.memberD2!, R_SAYS.mahalanobis_pc3.value[group.id].loo_D2_members);
      expectClose(group.scoreMean.slice(0, 3), R_SAYS.mahalanobis_pc3.value[group.id].mean, { floor: 1e-2 });
      expect(group.memberOff!.every((v) => v > 0)).toBe(true);
    }
  });

  it('take their spread by n and p: all 8 directions for 21 and 14 sherds, four components for 10', () => {
    const { groups } = fitted();
    expect(groups.map((g) => [g.n, g.spread!.method, g.spread!.p])).toEqual([
      [21, 'sample', 8],
      [14, 'sample', 8],
      [10, 'components', 4],
    ]);
    expect(groups[2]!.spread!.explanation).toContain(
      'all p = 8 directions would leave fewer than 6 degrees of freedom',
    );
    expect(groups.map((g) => g.name)).toEqual(['kiln1', 'kilns23', 'kilns45']);
  });

  it('come in the order asked for, and an empty one is said to be left out', () => {
    const model = fitReference(SHERDS, settingsFor(['G3_kilns45', 'nowhere', 'G1_kiln1']), {
      nowhere: 'Lost ware',
    });
    expect(model.groups.map((g) => g.id)).toEqual(['G3_kilns45', 'G1_kiln1']);
    expect(model.members).toHaveLength(31);
    expect(model.warnings).toEqual(['Lost ware has no sherd that can be compared, and is left out.']);
  });

  it('too small for a spread keep their centre and say why', () => {
    const few = rowsOf('G1_kiln1')
      .slice(0, 3)
      .map((i) => sherd(i));
    const { groups } = fitReference(few, settingsFor(['G1_kiln1']), POTTERY_NAMES);
    expect(groups[0]).toMatchObject({
      n: 3,
      spread: null,
      memberD2: null,
      refusal: 'A spread needs at least 4 sherds; the group has n = 3',
    });
    expectClose(sum(groups[0]!.centre), 100);
  });

  it('that a sample covariance cannot carry are refused with what they could carry', () => {
    const few = rowsOf('G1_kiln1')
      .slice(0, 8)
      .map((i) => sherd(i));
    const { groups } = fitReference(
      [...few, ...SHERDS.slice(21)],
      settingsFor(GROUPS, { covariance: { kind: 'sample' } }),
      {},
    );
    expect(groups[0]!.refusal).toBe(
      'A sample covariance in p = 8 directions needs n − 1 ≥ p; the group has n = 8 sherds; work in at most 6 components, or with shrinkage',
    );
  });

  it('warn when few degrees of freedom are left, with n, p and how far out the limit lies', () => {
    const { groups } = fitted({ covariance: { kind: 'sample' } });
    expect(groups[2]!.warnings[0]).toContain(
      'n = 10 sherds in p = 8 directions leave only n − p = 2 degrees of freedom: the 5 % limit lies 7.0 times',
    );
    expect(groups[0]!.warnings).toEqual([]);
  });

  it('whose members are copies of one another are refused, not divided by nothing', () => {
    const copies = [0, 1, 2, 3, 4, 5].map((i) => ({ ...sherd(0), id: `copy ${i}` }));
    const settings = settingsFor(GROUPS, { covariance: { kind: 'shrinkage', target: 'oas' } });
    const { groups } = fitReference([...copies, ...SHERDS.slice(21)], settings, {});
    expect(groups[0]!.refusal).toBe(
      'The sherds do not spread in every direction: a spread needs sherds that differ; these 6 are the same',
    );
  });
});

describe('below detection', () => {
  const values = [50, 52, 55, 49, 53, 51, 54, 48, 56, 50.5];
  const red = values.map((lead, i) =>
    sampleOf(`r${i}`, 'red', {
      PbO: lead,
      SiO2: 90 - lead + (i % 3),
      MnO: amount(null, 0.1 + i / 100),
      Fe2O3: 4 + (i % 4),
    }),
  );
  const grey = values.map((lead, i) =>
    sampleOf(`g${i}`, 'grey', { PbO: lead - 20, SiO2: 100 - lead, MnO: 2 + (i % 5), Fe2O3: 3 + (i % 2) }),
  );
  const mixed = (changes: Partial<ModelSettings> = {}) =>
    fitReference([...red, ...grey], settingsFor(['red', 'grey'], changes), {});

  it("replaces each value by its own limit's share and says so", () => {
    const { replaced, limits } = mixed();
    expect(replaced).toHaveLength(10);
    expect(replaced.map((r) => r.limit)).toEqual(values.map((_, i) => 0.1 + i / 100));
    expectClose(limits.MnO!, 0.19);
    // r0: PbO 50, SiO2 40, Fe2O3 4, so 0.65 · 0.10 of 94, closed to 100.
    expectClose(replaced[0]!.by, (100 * 0.065) / 94);
  });

  it('takes the limit and the fraction set by hand', () => {
    const { replaced } = mixed({ replacement: { fraction: 0.5, limits: { MnO: 0.3 } } });
    expect(new Set(replaced.map((r) => r.limit))).toEqual(new Set([0.3]));
    expectClose(replaced[0]!.by, (100 * 0.15) / 94);
  });

  it('in every sherd of a group refuses its sample covariance, and moves the default to components', () => {
    const sample = mixed({ covariance: { kind: 'sample' } }).groups[0]!;
    expect(sample.refusal).toContain('MnO is below detection in every sherd of the group');
    const auto = mixed().groups[0]!;
    expect(auto.spread!.method).toBe('components');
    expect(auto.spread!.explanation).toContain('because MnO is below detection in every sherd of the group');
    expect(auto.warnings[0]).toContain('set by the value that replaces it, not by the sherds');
  });

  it('in half the sherds of a group is warned of', () => {
    const half = red.map((s, i) =>
      i < 5 ? s : { ...s, amounts: { ...s.amounts, MnO: amount(0.2 + i / 10) } },
    );
    const model = fitReference([...half, ...grey], settingsFor(['red', 'grey']), {});
    expect(model.groups[0]!.warnings[0]).toContain('MnO is below detection in at least half the sherds');
  });
});

describe('a model is plain data of a moderate size', () => {
  it('survives JSON unchanged', () => {
    const model = fitted();
    expect(JSON.parse(JSON.stringify(model))).toEqual(model);
  });

  it('takes less than a kilobyte a sherd', () => {
    expect(JSON.stringify(fitted()).length / SHERDS.length).toBeLessThan(1000);
  });
});

describe('samples that make no model are refused', () => {
  it.each([
    [
      () => fitReference([], settingsFor(GROUPS), {}),
      'needs at least two sherds in the chosen groups; found 0',
    ],
    [
      () => fitReference([sherd(0), sherd(30)], settingsFor(['G1_kiln1']), {}),
      'needs at least two sherds in the chosen groups; found 1',
    ],
    [
      () => fitReference([sherd(0), sherd(1), sherd(0)], settingsFor(GROUPS), {}),
      'needs each sherd once; S01 is there twice',
    ],
    [
      () =>
        fitReference(
          [sampleOf('a', 'g', { PbO: 50, SnO2: 2 }), sampleOf('b', 'g', { PbO: 40, CuO: 1 })],
          settingsFor(['g']),
          {},
        ),
      'PbO is left, and these fall out: SnO2 (not measured in b); CuO (not measured in a)',
    ],
    [
      () =>
        fitReference(
          [sampleOf('a', 'g', { PbO: -50, SiO2: 2 }), sampleOf('b', 'g', { PbO: 40, SiO2: 1 })],
          settingsFor(['g']),
          {},
        ),
      'needs amounts of zero or more; PbO is -50 in a',
    ],
    [
      () =>
        fitReference(
          [sampleOf('a', 'g', { PbO: 50, SiO2: 2 }), sampleOf('b', 'g', { PbO: 25, SiO2: 1 })],
          settingsFor(['g']),
          {},
        ),
      'pca needs something that varies',
    ],
    [
      () =>
        fitReference(
          [sampleOf('a', 'g', { PbO: 50, SiO2: 25 }), sampleOf('b', 'g', { PbO: 25, SiO2: 12.5 })],
          settingsFor(['g'], { scale: 'standardised' }),
          {},
        ),
      'standardising needs every oxide to vary',
    ],
  ])('%#: %s', (fit, message) => {
    expect(fit).toThrow(message);
  });
});
