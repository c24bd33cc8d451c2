import { checkPlan } from './check-plan.ts';
import { LongReader } from './long.ts';
import { headersOf, type Plan, planOf } from './plan.ts';
import { ProblemLog } from './problems.ts';
import { turn } from './turn.ts';
import type { Choices, DraftAnalysis, Part, Table } from './types.ts';
import { WideReader } from './wide.ts';

/**
 * Reads a table into analyses, part by part: about 500 rows at a time, so that the caller can store them, show
 * progress, or stop. Nothing is thrown for what the rows hold; any error among the problems means that nothing of
 * the file should be kept. The last part brings the counts of problems listed too often, and of rows read.
 */
export function* interpret(table: Table, choices: Choices): Generator<Part> {
  const upright = choices.layout === 'sideways' ? turn(table) : table;
  const log = new ProblemLog(headersOf(upright, choices), choices.layout);
  const plan = planOf(upright, choices);
  checkPlan(plan, log);
  const rowCount = upright.rowCount;
  if (log.errors > 0) {
    yield { analyses: [], problems: log.take(), rowsRead: 0, rowCount };
    return;
  }
  yield* readRows(upright, plan, log);
}

function* readRows(table: Table, plan: Plan, log: ProblemLog): Generator<Part> {
  const reader = plan.choices.layout === 'long' ? new LongReader(plan, log) : new WideReader(plan, log);
  const { rowCount } = table;
  let [rowsRead, found] = [0, 0];
  const part = (analyses: readonly DraftAnalysis[]): Part => {
    found += analyses.length;
    return { analyses, problems: log.take(), rowsRead: Math.min(rowsRead, rowCount), rowCount };
  };
  for (const rows of table.chunks()) {
    const analyses = reader.read(rows);
    rowsRead += rows.length;
    yield part(analyses);
  }
  if (reader instanceof WideReader) yield part(reader.finish());
  else for (const analyses of reader.finish()) yield part(analyses);
  if (found === 0 && log.errors === 0) log.error('no-rows', NO_ROWS);
  yield { analyses: [], problems: [...log.take(), ...log.counts()], rowsRead: rowCount, rowCount };
}

const NO_ROWS =
  'an import needs at least one row with a specimen and a figure below the headings; there is none to use';
