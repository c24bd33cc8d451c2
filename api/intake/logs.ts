import { setImmediate as breathe } from 'node:timers/promises';
import { logReducer } from '../domain/firing/log-reducer.ts';
import { ResolutionFinder } from '../domain/firing/resolution.ts';
import type { LogChunk } from '../domain/firing/types.ts';
import { RequirementError } from '../domain/requirement.ts';
import { refuseForeign } from './log/foreign.ts';
import { decodeHead, headOf, type RowBatch, streamRows } from './log/rows.ts';
import { readTemperature } from './log/temperature.ts';
import { startOnClock, TimeReader } from './log/times.ts';
import type { LogChoices, LogUnderstanding, ReadLog } from './log/types.ts';
import { newlineOfLog, understandLog } from './log/understand.ts';
import { ProblemLog } from './problems.ts';

/** A log is not understood when fewer of its rows than this have a time. */
const ENOUGH = 0.5;

export interface ReadLogOptions {
  readonly choices?: LogChoices;
  /** Called now and then with the rows read so far. */
  readonly progress?: (rows: number) => void;
  readonly signal?: AbortSignal;
}

/**
 * Reads a thermocouple log of any length as it streams in: columns understood from its first rows (or as chosen), each
 * row's time and temperatures read, and all of it reduced on the way. Nothing is changed silently: rows without a time
 * and cells without a figure are named with row and column. Throws when no time or temperature can be found, when
 * most rows have no readable time, or when stopped by the signal.
 */
export async function readLog(
  bytes: AsyncIterable<Uint8Array>,
  options: ReadLogOptions = {},
): Promise<ReadLog> {
  const { head, whole, complete } = await headOf(bytes);
  if (head.length === 0) throw new RequirementError('a log needs rows; this file is empty');
  refuseForeign(head);
  const { text, encoding } = decodeHead(head, complete);
  const choices = options.choices ?? {};
  const understanding = understandLog(text, choices);
  const reading = new LogReading(understanding, choices);
  const newline = newlineOfLog(text);
  for await (const batch of streamRows(whole, { encoding, delimiter: understanding.delimiter, newline })) {
    options.signal?.throwIfAborted();
    reading.take(batch);
    options.progress?.(reading.rows);
    await breathe();
  }
  return { understanding, encoding, ...reading.finish() };
}

/** Reads batches of rows into the reducer, and collects what is wrong. */
class LogReading {
  readonly #understanding: LogUnderstanding;
  readonly #times: TimeReader;
  readonly #problems: ProblemLog;
  readonly #reducer;
  readonly #resolutions: ResolutionFinder[];
  #start: number | null = null;
  #withoutTime = 0;
  rows = 0;

  constructor(understanding: LogUnderstanding, choices: LogChoices) {
    const { time, channels, decimal, headings } = understanding;
    this.#understanding = understanding;
    this.#times = new TimeReader(time, (text) => readTemperature(text, decimal) ?? Number.NaN);
    this.#problems = new ProblemLog(headings, 'long');
    this.#resolutions = channels.map(() => new ResolutionFinder());
    this.#reducer = logReducer({
      channels: channels.map(({ name, sensor }) => ({ name, sensor })),
      rateWindow: choices.rateWindow ?? 600,
    });
  }

  take({ first, rows }: RowBatch): void {
    const { channels, firstRow } = this.#understanding;
    const from = Math.max(0, firstRow - first);
    const seconds: number[] = [];
    const numbers: number[] = [];
    const celsius = channels.map((): number[] => []);
    for (let i = from; i < rows.length; i++) {
      const cells = rows[i]!;
      if (cells.length <= 1 && (cells[0] ?? '').trim() === '') continue;
      this.rows++;
      const time = this.#time(cells, first + i);
      if (time === null) continue;
      seconds.push(time);
      numbers.push(first + i);
      for (const [c, column] of celsius.entries()) column.push(this.#celsius(cells, c, first + i));
    }
    const chunk: LogChunk = { seconds, celsius, rows: numbers };
    this.#reducer.add(chunk);
  }

  #time(cells: readonly string[], row: number): number | null {
    const time = this.#times.read(cells);
    if (time === null) {
      this.#withoutTime++;
      const column = this.#understanding.time.columns[0]!;
      const found = (cells[column] ?? '').trim();
      this.#problems.warn(
        'log-time',
        `a row needs a time; found ${found === '' ? 'none' : `“${found.slice(0, 40)}”`}; the row is left out`,
        { row, column },
      );
    } else this.#start ??= time;
    return time;
  }

  #celsius(cells: readonly string[], c: number, row: number): number {
    const { channels, decimal } = this.#understanding;
    const { column, unit } = channels[c]!;
    const shown = readTemperature(cells[column] ?? '', decimal);
    if (shown === null) {
      const found = cells[column]!.trim().slice(0, 40);
      this.#problems.warn(
        'log-temperature',
        `a temperature needs a figure; found “${found}”; taken as no reading`,
        { row, column },
      );
      return Number.NaN;
    }
    if (Number.isNaN(shown)) return shown;
    this.#resolutions[c]!.add(shown);
    return unit === '°F' ? (shown - 32) / 1.8 : shown;
  }

  finish(): Pick<ReadLog, 'digest' | 'rows' | 'rowsWithoutTime' | 'problems'> {
    const problems = [...this.#problems.take(), ...this.#problems.counts()];
    if (this.rows === 0 || this.#withoutTime > ENOUGH * this.rows)
      throw new RequirementError(
        `a log needs a readable time in most rows; found ${this.rows - this.#withoutTime} of ${this.rows}. ${problems[0]?.message ?? ''}`.trim(),
      );
    const { channels, time } = this.#understanding;
    const digest = this.#reducer.finish({
      startedAt: startOnClock(time.kind, this.#start),
      resolutions: this.#resolutions.map((r, c) => (channels[c]!.unit === '°F' ? r.step / 1.8 : r.step)),
    });
    return { digest, rows: this.rows, rowsWithoutTime: this.#withoutTime, problems };
  }
}
