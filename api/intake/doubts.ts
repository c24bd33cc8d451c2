import { readCell } from './cell.ts';
import { dateOrderOf } from './date.ts';
import { figureCells } from './figure-cells.ts';
import { letterOf } from './letters.ts';
import { decimalEvidence } from './number.ts';
import type { Structure } from './structure.ts';
import type { Choices, ColumnUnderstanding, Doubt, Table } from './types.ts';

interface Context {
  readonly columns: readonly ColumnUnderstanding[];
  readonly choices: Choices;
  readonly structure: Structure;
  readonly table: Table;
}

/** What a person should look at before the rows are stored. */
export function doubtsOf(context: Context): readonly Doubt[] {
  return [
    ...columnDoubts(context),
    ...spellingDoubts(context),
    ...decimalDoubts(context),
    ...missingDoubts(context),
    ...dateDoubts(context),
  ];
}

const doubt = (about: Doubt['about'], message: string, column: number | null = null): Doubt => ({
  about,
  column,
  message,
});

function columnDoubts({ columns, choices }: Context): Doubt[] {
  const place = (c: ColumnUnderstanding) => `${choices.layout === 'sideways' ? 'Row' : 'Column'} ${c.letter}`;
  const unsure = columns
    .filter((c) => !c.sure)
    .map((c) => doubt('columns', `${place(c)} (${c.header || 'no heading'}): ${c.why}`, c.index));
  const unstated = columns.filter((c) => c.role === 'uncertainty' && c.basis === 'unstated');
  const oxygen = columns.find((c) => c.role === 'analyte' && c.analyte === 'O');
  return [
    ...unsure,
    unstated.length > 0 &&
      doubt(
        'columns',
        `Nothing says what the uncertainties mean (${unstated.map((c) => c.header || c.letter).join(', ')}); they are kept as “unstated” and counted as one standard deviation.`,
      ),
    oxygen &&
      doubt(
        'columns',
        `${place(oxygen)} gives oxygen itself. Oxides bring their own oxygen, so it is left out of them.`,
        oxygen.index,
      ),
  ].filter((d) => d !== false && d !== undefined);
}

function spellingDoubts({ columns, choices, structure }: Context): Doubt[] {
  const counts = { nd: 0, dash: 0, zero: 0, negative: 0 };
  const figures = columns.filter((c) => c.role === 'analyte' || c.role === 'value');
  for (const row of structure.sample)
    for (const { index } of figures) {
      const cell = readCell(row.cells[index] ?? '', choices.decimal);
      if (cell.kind === 'nd' || cell.kind === 'dash') counts[cell.kind]++;
      else if (cell.kind === 'number' && cell.value <= 0) counts[cell.value === 0 ? 'zero' : 'negative']++;
    }
  const { nd, dash, zero, negative } = counts;
  return [
    nd > 0 &&
      doubt(
        'nd',
        `n.d. stands in ${cells(nd)}; it is read as ${ND[choices.nd]}. Some laboratories mean the other.`,
      ),
    dash > 0 &&
      doubt(
        'dash',
        `A dash stands in ${cells(dash)}; it is read as ${DASH[choices.dash]}, since it claims no measurement.`,
      ),
    zero > 0 && doubt('zero', `0 stands in ${cells(zero)}; ${ZERO[choices.zero]}.`),
    negative > 0 &&
      doubt(
        'negative',
        `Negative figures stand in ${cells(negative)}; some laboratories write −0.01 for “below 0.01”. ${NEGATIVE[choices.negative]}`,
      ),
  ].filter((d) => d !== false);
}

const cells = (n: number) => (n === 1 ? 'one cell' : `${n} cells`);
const ND = {
  belowDetection: '“not detected”',
  notMeasured: '“not determined”, since the file writes “below detection” otherwise',
};
const DASH = { belowDetection: '“below detection”', notMeasured: '“not measured”' };
const ZERO = {
  belowDetection:
    'it is kept as reported and counts as below detection where compared, since no method measures nothing at all',
  refuse: 'it is refused',
};
const NEGATIVE = { refuse: 'They are refused until you say so.', limit: 'They are read so.' };

function decimalDoubts({ columns, choices, structure }: Context): Doubt[] {
  const seen = decimalEvidence(figureCells(structure, columns));
  const name = choices.decimal === ',' ? 'comma' : 'point';
  if (seen.points > 0 && seen.commas > 0)
    return [
      doubt(
        'decimal',
        `Figures with a decimal point (${seen.points}) and with a decimal comma (${seen.commas}) are mixed; the ${name} is taken.`,
      ),
    ];
  const open = seen.points + seen.commas === 0 && seen.eitherComma + seen.eitherPoint > 0;
  return open
    ? [doubt('decimal', `Figures such as 1,234 or 1.234 can be read two ways; the decimal ${name} is taken.`)]
    : [];
}

function missingDoubts({ columns, choices }: Context): Doubt[] {
  const has = (role: string) => columns.some((c) => c.role === role);
  return [
    !has('specimen') &&
      choices.defaults.specimen === null &&
      doubt('defaults', 'No column names the specimens: choose one, or give one name for all rows.'),
    !has('measured') &&
      choices.defaults.measured === null &&
      doubt('defaults', 'Nothing says what was measured: choose paint, slip, body or whole for all rows.'),
    !has('kind') &&
      choices.defaults.kind === null &&
      doubt(
        'defaults',
        'Nothing says whether these are sherds, replicas or materials; new specimens become sherds.',
      ),
  ].filter((d) => d !== false);
}

function dateDoubts({ columns, choices, structure }: Context): Doubt[] {
  const column = columns.find((c) => c.role === 'date');
  if (!column) return [];
  const dates = structure.sample.map((r) => r.cells[column.index] ?? '');
  if (!dates.some((d) => /^\s*\d{1,2}[/-]\d{1,2}[/-]\d{4}\s*$/.test(d)) || dateOrderOf(dates) !== null)
    return [];
  const order = choices.dateOrder === 'dayFirst' ? 'day first' : 'month first';
  return [
    doubt(
      'dateOrder',
      `Dates in column ${letterOf(column.index)} could be read two ways; ${order} is taken.`,
      column.index,
    ),
  ];
}
