import { readFileSync } from 'node:fs';
import path from 'node:path';

/**
 * 45 Romano-British sherds × 9 oxides from five kilns (Tubb, Parker & Nickless 1980, Archaeometry 22:153–171, as
 * carried by the R package HSAUR3), and what R 4.2.2 and scikit-learn 1.2.1 make of them; see
 * tests/fixtures/hsaur3/README.md. Groups: kiln 1, kilns 2 and 3, kilns 4 and 5.
 */
const folder = path.resolve(import.meta.dirname, '../fixtures/hsaur3');
const read = (name: string) => readFileSync(path.join(folder, name), 'utf8');

const [header, ...lines] = read('hsaur3_pottery.csv').trim().split('\n');
export const OXIDES: readonly string[] = header!.split(',').slice(1, 10);
const table = lines.map((line) => line.split(','));
export const IDS: readonly string[] = table.map((cells) => cells[0]!);
/** As analysed, wt%, not closed. */
export const RAW: readonly (readonly number[])[] = table.map((cells) => cells.slice(1, 10).map(Number));

export const GROUPS = ['G1_kiln1', 'G2_kilns23', 'G3_kilns45'] as const;
const BY_KILN = [0, 0, 1, 1, 2, 2];
export const GROUP_OF: readonly (typeof GROUPS)[number][] = table.map(
  (cells) => GROUPS[BY_KILN[Number(cells[10])]!]!,
);
export const rowsOf = (group: string): number[] => GROUP_OF.flatMap((g, i) => (g === group ? [i] : []));

// The shape differs from entry to entry, and each test knows the one it reads.
// biome-ignore lint/suspicious/noExplicitAny: reference answers as R wrote them
export const R_SAYS: any = JSON.parse(read('hsaur3_pottery.json'));
// biome-ignore lint/suspicious/noExplicitAny: reference answers as scikit-learn wrote them
export const SHRINKAGE: any = JSON.parse(read('hsaur3_pottery_shrinkage.json'));
// biome-ignore lint/suspicious/noExplicitAny: reference answers as R wrote them
export const MISC: any = JSON.parse(read('misc_models.json'));

/** Centred log-ratios by their definition, so that these tests stand apart from the code of the composition. */
export const clrRows = (rows: readonly (readonly number[])[]): number[][] =>
  rows.map((row) => {
    const logs = row.map(Math.log);
    const centre = logs.reduce((a, b) => a + b, 0) / logs.length;
    return logs.map((v) => v - centre);
  });

/** Product of rows with a matrix given as rows[part][axis]. */
export const times = (
  rows: readonly (readonly number[])[],
  matrix: readonly (readonly number[])[],
): number[][] =>
  rows.map((row) => matrix[0]!.map((_, k) => row.reduce((sum, v, j) => sum + v * matrix[j]![k]!, 0)));

/** The Helmert ilr coordinates of the sherds, with the basis as R wrote it. */
export const ILR: readonly (readonly number[])[] = times(clrRows(RAW), R_SAYS.ilr_basis_helmert.value);
