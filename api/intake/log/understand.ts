import Papa from 'papaparse';
import { RequirementError } from '../../domain/requirement.ts';
import { chooseDelimiter } from '../delimited.ts';
import { letterOf } from '../letters.ts';
import { type DecimalMark, decimalEvidence } from '../number.ts';
import { channelsOf } from './channels.ts';
import { readTemperature } from './temperature.ts';
import { findTime, type SampleColumn } from './time-column.ts';
import { clockSeconds, daysOfDate, elapsedSeconds, secondsOfDay } from './times.ts';
import type { LogChoices, LogUnderstanding } from './types.ts';

const SAMPLE_ROWS = 400;
const SHOWN_ROWS = 5;

/** Line ends of a text. */
export function newlineOfLog(text: string): '\n' | '\r' {
  return !text.includes('\n') && text.includes('\r') ? '\r' : '\n';
}

/**
 * How the first rows of a log are to be read: delimiter, decimal mark, headings, which column holds times and how,
 * which hold temperatures and in which unit; each with the reason, and what stays in doubt. Choices overrule. Throws
 * when no row holds a time beside a temperature.
 */
export function understandLog(text: string, choices: LogChoices = {}): LogUnderstanding {
  const delimiter = choices.delimiter ?? chooseDelimiter(text);
  const { data } = new Papa.Parser({ delimiter, newline: newlineOfLog(text) }).parse(text, 0, false) as {
    data: string[][];
  };
  const rows = data.slice(0, SAMPLE_ROWS).map((cells) => cells.map((c) => c.trim()));
  const decimal = choices.decimal ?? decimalOf(rows, delimiter);
  const firstRow = choices.firstRow ?? firstReading(rows, decimal);
  const sample = rows.slice(firstRow - 1).filter((cells) => cells.some((c) => c !== ''));
  if (sample.length === 0)
    throw new RequirementError(
      'a log needs rows with a time and a temperature; found none in its first rows',
    );
  const { headings, headerRow } = headingsOf(rows, firstRow, decimal);
  const width = Math.max(...sample.map((r) => r.length));
  const columns = Array.from({ length: width }, (_, index): SampleColumn => {
    const cells = sample.map((r) => r[index] ?? '').filter((c) => c !== '');
    const numbers = cells
      .map((c) => readTemperature(c, decimal))
      .filter((v) => v !== null && !Number.isNaN(v));
    return { index, heading: headings[index] ?? '', cells, numbers: numbers as number[] };
  });
  const time = choices.time ? { ...choices.time, why: 'as chosen', doubts: [] } : findTime(columns);
  if (!time)
    throw new RequirementError(
      `a log needs a column of times; found ${columns.map((c) => c.heading || `column ${letterOf(c.index)}`).join(', ')}`,
    );
  const { channels, ignored, doubts } = channelsOf(columns, time.columns, choices);
  const { doubts: timeDoubts, ...chosen } = time;
  return {
    delimiter,
    decimal,
    headings,
    headerRow,
    firstRow,
    sample: sample.slice(0, SHOWN_ROWS),
    time: chosen,
    channels,
    ignored,
    doubts: [...timeDoubts, ...doubts],
  };
}

function decimalOf(rows: readonly (readonly string[])[], delimiter: string): DecimalMark {
  if (delimiter === ',') return '.';
  const { points, commas, eitherComma } = decimalEvidence(rows.flat().filter((c) => !c.includes(':')));
  return commas + eitherComma > points ? ',' : '.';
}

const isTime = (cell: string) =>
  (cell.includes(':') &&
    (elapsedSeconds(cell) ??
      secondsOfDay(cell) ??
      clockSeconds(cell, 'dayFirst') ??
      clockSeconds(cell, 'monthFirst')) !== null) ||
  (daysOfDate(cell, 'dayFirst') ?? daysOfDate(cell, 'monthFirst')) !== null;

/** A row of readings has two figures or times at least, and more of them than words. */
function isReading(cells: readonly string[], decimal: DecimalMark): boolean {
  const filled = cells.filter((c) => c !== '');
  const figures = filled.filter((c) => isTime(c) || readTemperature(c, decimal) !== null);
  return figures.length >= 2 && figures.length >= filled.length / 2;
}

/** Row number of the first of two rows of readings that follow one another. */
function firstReading(rows: readonly (readonly string[])[], decimal: DecimalMark): number {
  const at = rows.findIndex(
    (r, i) =>
      isReading(r, decimal) &&
      (i + 1 >= rows.length || isReading(rows[i + 1]!, decimal) || (rows[i + 1] ?? []).join('') === ''),
  );
  if (at < 0)
    throw new RequirementError(
      'a log needs rows with a time and a temperature; found none in its first rows',
    );
  return at + 1;
}

/** The heading above the readings; a row of units below it is joined to it. */
function headingsOf(
  rows: readonly (readonly string[])[],
  firstRow: number,
  decimal: DecimalMark,
): { headings: string[]; headerRow: number | null } {
  const above = rows
    .slice(Math.max(0, firstRow - 4), firstRow - 1)
    .map((cells, i) => ({ cells, row: Math.max(0, firstRow - 4) + i + 1 }))
    .filter(({ cells }) => cells.filter((c) => c !== '').length >= 2 && !isReading(cells, decimal));
  const last = above.at(-1);
  if (!last) return { headings: [], headerRow: null };
  const before = above.at(-2);
  const units = last.cells.every((c) => c.length <= 8) && before && before.row === last.row - 1;
  const isUnits =
    units &&
    last.cells.filter((c) => /^[[(]?\s*(?:°|º|deg)?\s*(?:[CFsh]|min|sec|ms)\s*[\])]?$/i.test(c)).length * 2 >=
      last.cells.filter((c) => c !== '').length;
  return isUnits
    ? {
        headings: before.cells.map((c, i) => `${c} ${last.cells[i] ?? ''}`.trim()),
        headerRow: before.row,
      }
    : { headings: [...last.cells], headerRow: last.row };
}
