import type { Comparison, ComparisonTable } from '../contract/placement.ts';
import { type Cell, toCsv } from './csv.ts';

interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** One table of a comparison, full precision, as CSV. */
export function comparisonCsv(comparison: Comparison, table: ComparisonTable): string {
  const { columns, rows } = TABLES[table](comparison);
  return toCsv(columns, rows);
}

const TABLES: Record<ComparisonTable, (comparison: Comparison) => Table> = {
  placements: ({ placements }) => ({
    columns: [
      ...['specimen', 'spots', 'group', 'n', 'p', 'distance', 'D2', 'membership probability', 'df1', 'df2'],
      ...[
        'rank typicality',
        'at least as far',
        'of',
        'verdict',
        'method',
        'leave-one-out',
        'refused because',
      ],
    ],
    rows: placements.flatMap((placed) =>
      placed.groups.map((group): Cell[] => [
        ...[placed.label, placed.spots, group.name, group.n, group.p, group.distance, group.d2],
        ...[group.membership, group.df?.[0] ?? null, group.df?.[1] ?? null],
        ...[
          group.typicality?.value ?? null,
          group.typicality?.atLeastAsFar ?? null,
          group.typicality?.of ?? null,
        ],
        ...[group.verdict, group.method, group.leaveOneOut, group.refusal ?? group.membershipRefusal],
      ]),
    ),
  }),
  contributions: ({ placements }) => ({
    columns: [
      ...['specimen', 'group', 'oxide', 'measured wt%', 'group centre wt%', 'factor', 'share of distance'],
      ...['part of D2', 'standard deviations'],
    ],
    rows: placements.flatMap((placed) =>
      placed.groups.flatMap((group) =>
        group.contributions.map((part): Cell[] => [
          ...[placed.label, group.name, part.oxide, part.measured, part.centre, part.factor, part.share],
          ...[part.d2, part.z],
        ]),
      ),
    ),
  }),
  scores: ({ model, placements }) => {
    const nameOf = groupNames(model);
    return {
      columns: ['specimen', 'role', 'group', ...components(model)],
      rows: [
        ...model.members.map((one): Cell[] => [one.label, 'reference', nameOf(one.group), ...one.scores]),
        ...placements.map((one): Cell[] => [one.label, 'placed', null, ...one.scores]),
      ],
    };
  },
  loadings: ({ model }) => ({
    columns: ['oxide', ...components(model)],
    rows: [
      ...model.parts.map((oxide, part): Cell[] => [
        oxide,
        ...model.pca.loadings.map((one) => one[part] ?? null),
      ]),
      ['eigenvalue', ...model.pca.eigenvalues],
      ['share of variance', ...model.pca.explained],
    ],
  }),
  members: ({ model }) => {
    const nameOf = groupNames(model);
    const d2 = new Map(
      model.groups.flatMap((g) => g.memberIds.map((id, i) => [id, g.memberD2?.[i] ?? null])),
    );
    return {
      columns: ['specimen', 'group', ...model.parts.map((oxide) => `${oxide} wt%`), 'leave-one-out D2'],
      rows: model.members.map((one): Cell[] => [
        ...[one.label, nameOf(one.group), ...one.parts],
        d2.get(one.id) ?? null,
      ]),
    };
  },
  excluded: ({ excluded, model }) => {
    const nameOf = groupNames(model);
    return {
      columns: ['specimen', 'group', 'reason'],
      rows: excluded.map(({ label, group, reason }): Cell[] => [label, group && nameOf(group), reason]),
    };
  },
};

const components = (model: Comparison['model']) => model.pca.eigenvalues.map((_, k) => `PC${k + 1}`);

function groupNames(model: Comparison['model']): (id: string) => string {
  const names = new Map(model.groups.map((group) => [group.id, group.name]));
  return (id) => names.get(id) ?? id;
}
