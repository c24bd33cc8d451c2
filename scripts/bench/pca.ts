/**
 * Principal components of 100,000 × 30: ours, ml-pca's default on the same rows, and R's prcomp where R is found.
 * Wanted: at least 20 times faster than the default, and faster than prcomp.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PCA } from 'ml-pca';
import { projectAll } from '../../api/domain/statistics/blocks.ts';
import { pca } from '../../api/domain/statistics/pca.ts';
import { randomStream } from '../../api/domain/statistics/random.ts';
import { bestTime, ms, report } from './time.ts';

const N = 100_000;
const P = 30;

/** Correlated normals: each column leans on the one before. */
function makeRows(): number[][] {
  const { normal } = randomStream(100_030);
  return Array.from({ length: N }, () => {
    let last = normal();
    return Array.from({ length: P }, (_, j) => {
      last = 0.6 * last + (1 + j / P) * normal();
      return last;
    });
  });
}

const R_CODE = `
file <- commandArgs(TRUE)[1]
X <- matrix(readBin(file, "double", ${N * P}), ncol = ${P}, byrow = TRUE)
time <- function(f) { f(); min(sapply(1:7, function(i) system.time(f())[["elapsed"]])) }
times <- 1000 * c(time(function() prcomp(X, retx = FALSE)), time(function() prcomp(X)))
cat(format(c(times, prcomp(X, retx = FALSE)$sdev^2), digits = 15))
`;

interface FromR {
  readonly fit: number;
  readonly withScores: number;
  readonly eigenvalues: readonly number[];
}

function inR(rows: readonly number[][]): FromR | null {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-pca-'));
  const file = path.join(folder, 'rows.bin');
  try {
    writeFileSync(file, Buffer.from(Float64Array.from(rows.flat()).buffer));
    const run = spawnSync('Rscript', ['-e', R_CODE, file], { encoding: 'utf8' });
    if (run.error || run.status !== 0) return null;
    const [fit, withScores, ...eigenvalues] = run.stdout.trim().split(/\s+/).map(Number);
    return { fit: fit!, withScores: withScores!, eigenvalues };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const furthest = (a: readonly number[], b: readonly number[]) =>
  Math.max(...a.map((v, i) => Math.abs(v / b[i]! - 1)));

export async function bench(): Promise<void> {
  const rows = makeRows();
  const ours = await bestTime(15, () => pca(rows));
  const withScores = await bestTime(7, () => {
    const found = pca(rows);
    return projectAll(rows, found);
  });
  const theirs = await bestTime(3, () => new PCA(rows));
  const { eigenvalues } = pca(rows);
  report(`ours, ${N.toLocaleString('en-GB')} × ${P}`, `${ms(ours)}, with all scores ${ms(withScores)}`);
  report(
    "ml-pca's default on the same rows",
    `${ms(theirs)}: ${(theirs / ours).toFixed(0)} times as long as ours`,
  );
  report(
    '  largest relative difference of eigenvalues',
    furthest(eigenvalues, new PCA(rows).getEigenvalues()).toExponential(1),
  );
  const r = inR(rows);
  if (!r) {
    report("R's prcomp", 'Rscript not found, not compared');
    return;
  }
  report("R's prcomp without scores", `${ms(r.fit)}: ${(r.fit / ours).toFixed(1)} times as long as ours`);
  report(
    "R's prcomp with scores",
    `${ms(r.withScores)}: ${(r.withScores / withScores).toFixed(1)} times as long as ours`,
  );
  report(
    '  largest relative difference of eigenvalues',
    furthest(eigenvalues, r.eigenvalues).toExponential(1),
  );
}
