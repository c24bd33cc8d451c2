import { specimenIn } from './facts.ts';
import { letterOf } from './letters.ts';
import { type RowContext, shorten } from './row-context.ts';
import { widthOf } from './width.ts';
import { rowNameOf, uncertaintiesOf } from './words.ts';

/** What a row is: an analysis, the uncertainties of the one above, or nothing to be read. */
export type RowKind = 'analysis' | 'uncertainties' | 'skip';

/** Sorts out rows that are no analyses, saying so where a person might have meant them to be. */
export function kindOfRow(context: RowContext): RowKind {
  const { row, plan, log } = context;
  if (row.number < plan.choices.firstRow || plan.leaveOut.has(row.number) || plan.limitRows.has(row.number))
    return 'skip';
  if (widthOf(row.cells) === 0) return 'skip';
  if (repeatsHeadings(context)) {
    log.warn('headings', 'this row repeats the headings and is left out', { row: row.number });
    return 'skip';
  }
  if (!holdsFigures(context)) {
    const first = row.cells.find((c) => c.trim() !== '') ?? '';
    log.warn(
      'no-figures',
      `a row needs a figure to be an analysis; “${shorten(first)}” has none and is left out`,
      {
        row: row.number,
      },
    );
    return 'skip';
  }
  return plan.keep.has(row.number) ? 'analysis' : byName(context);
}

function byName({ row, plan, log, above }: RowContext): RowKind {
  const index = plan.words.get('specimen')?.[0];
  if (index === undefined && plan.choices.layout === 'long') return 'analysis';
  const label = (index === undefined ? row.cells.find((c) => c.trim() !== '') : row.cells[index]) ?? '';
  const name = rowNameOf(label);
  if (name === 'uncertainty') return 'uncertainties';
  if (name === null) {
    const of = uncertaintiesOf(label);
    if (of === null) return 'analysis';
    if (of === above) return 'uncertainties';
    log.warn(
      'summary',
      `“${shorten(label)}” names uncertainties of “${shorten(of)}”, which must stand in the next row after its analysis; the row is left out unless you keep it`,
      { row: row.number },
    );
    return 'skip';
  }
  const what = name === 'limit' ? 'detection limits' : 'a summary';
  log.warn(
    'summary',
    `“${shorten(label)}” names ${what}, no analysis; the row is left out unless you keep it`,
    { row: row.number },
  );
  return 'skip';
}

function holdsFigures({ row, plan }: RowContext): boolean {
  return plan.figures.some(({ index }) => (row.cells[index] ?? '').trim() !== '');
}

function repeatsHeadings({ row, plan }: RowContext): boolean {
  return (
    plan.figures.length > 0 &&
    plan.figures.every(({ index }) => {
      const heading = plan.headers[index] ?? '';
      return heading !== '' && (row.cells[index] ?? '').replace(/\s+/g, ' ').trim() === heading;
    })
  );
}

/** Faults of a row as a whole; true where it may be read on. */
export function checkRow(context: RowContext): boolean {
  const before = context.log.errors;
  checkWidth(context);
  checkFormulas(context);
  return context.log.errors === before;
}

function checkWidth({ row, plan, log }: RowContext): void {
  if (!plan.checkWidth) return;
  const width = widthOf(row.cells);
  const { number } = row;
  const headed = widthOf(plan.headers);
  if (width > plan.width)
    log.error(
      'too-many-cells',
      `a row must not reach past its headings; this one fills ${width} cells under ${plan.width} headings: ` +
        'is a comma in a figure or name read as the end of a cell?',
      { row: number },
    );
  else if (row.cells.length < headed)
    log.warn(
      'too-few-cells',
      `a row has as many cells as the headings, ${headed}; this one has ${row.cells.length}, and the rest count as empty`,
      {
        row: number,
      },
    );
}

/**
 * A saved result may be out of date or never have been computed, and cannot be told from a figure that was measured;
 * so a formula in a column that is used is refused unless somebody takes the results knowingly. A printed total is
 * only compared with the sum: there a formula is merely mentioned.
 */
function checkFormulas({ row, plan, log }: RowContext): void {
  for (const column of row.formulas ?? []) {
    if (!plan.used.has(column)) continue;
    const at = { row: row.number, column };
    const result = `cell ${letterOf(column)}${row.number} holds a formula with the saved result “${shorten(row.cells[column] ?? '')}”`;
    const isTotal = plan.figures.some((f) => f.index === column && f.role === 'total');
    if (isTotal || plan.choices.formulas === 'takeResult')
      log.warn('formula', `${result}, which is taken as it is`, at);
    else
      log.error(
        'formula',
        `a cell must hold its value, not a formula; ${result}. Export values (copy, then paste values only), or choose to take saved results`,
        at,
      );
  }
}

/** The row's specimen; with fill-down an empty cell repeats the one above. Null, and said, where there is none. */
export function specimenOf(context: RowContext, above: string): string | null {
  const own = specimenIn(context);
  if (own !== '') return own;
  if (context.plan.choices.fillDown && above !== '') return above;
  const column = context.plan.words.get('specimen')?.[0];
  context.log.error(
    'unnamed',
    'every analysis needs the name of its specimen; this row has figures but no name. Name it, leave it out, or choose to fill down',
    column === undefined ? { row: context.row.number } : { row: context.row.number, column },
  );
  return null;
}
