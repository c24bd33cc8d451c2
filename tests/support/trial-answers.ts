import { readFileSync } from 'node:fs';
import path from 'node:path';

/** What R 4.2.2 says of published sets: see scripts/reference/trials.R and tests/fixtures/trials/README.md. */
const file = path.resolve(import.meta.dirname, '../fixtures/trials/r_answers.json');
// The shape differs from entry to entry, and each test knows the one it reads.
// biome-ignore lint/suspicious/noExplicitAny: reference answers as R wrote them
export const TRIAL_ANSWERS: any = JSON.parse(readFileSync(file, 'utf8'));

/** Rows of a table given by columns. */
export const rowsOfColumns = (columns: readonly (readonly number[])[]): number[][] =>
  columns[0]!.map((_, i) => columns.map((c) => c[i]!));
