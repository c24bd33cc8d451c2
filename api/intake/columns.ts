import { LOI, TOTAL } from '../domain/chemistry/analytes.ts';
import { elementOf, OXIDES } from '../domain/chemistry/oxides.ts';
import type { Unit } from '../domain/composition/types.ts';
import { type HeaderReading, readHeader } from './header.ts';
import { letterOf } from './letters.ts';
import type { Structure } from './structure.ts';
import type { ColumnRole, ColumnUnderstanding } from './types.ts';
import { findUnit } from './units.ts';
import { headingOf, kindOf, measuredOf } from './words.ts';

/** A column on its way to being understood. */
export interface Draft extends Omit<ColumnUnderstanding, 'role'> {
  role: ColumnRole;
  analyte: string | null;
  unit: Unit | null;
  of: number | null;
  why: string;
  sure: boolean;
  readonly reading: HeaderReading;
  /** `column D`, or `row 4` of a table that is read turned. */
  readonly place: string;
  readonly unitFrom: string | null;
  /** Sample cells that are not empty. */
  readonly cells: readonly string[];
}

/** Reads each column by its heading, then by what stands above, below and in it. */
export function draftColumns(structure: Structure, count: number): Draft[] {
  const blocks = blockUnits(structure, count);
  let lastAnalyte: string | null = null;
  return Array.from({ length: count }, (_, index) => {
    const draft = draftOf(structure, index, { block: blocks[index] ?? null, lastAnalyte });
    if (draft.reading.analyte !== null) lastAnalyte = draft.reading.analyte;
    else if (draft.header.trim() !== '') lastAnalyte = null;
    return draft;
  });
}

function blockUnits({ block }: Structure, count: number): (Unit | null)[] {
  let unit: Unit | null = null;
  return Array.from({ length: count }, (_, i) => {
    const cell = block?.cells[i]?.trim() ?? '';
    if (cell !== '') unit = findUnit(cell.normalize('NFKC')).unit;
    return unit;
  });
}

interface Around {
  readonly block: Unit | null;
  /** The analyte that a heading spread over several columns names. */
  readonly lastAnalyte: string | null;
}

function draftOf(structure: Structure, index: number, around: Around): Draft {
  const header = structure.header.cells[index] ?? '';
  const below = structure.units?.cells[index] ?? '';
  const { reading, unitFrom } = combine({ header, below }, around, structure.titleUnit);
  const cells = structure.sample.map((r) => r.cells[index]?.trim() ?? '').filter((c) => c !== '');
  const text = [header.trim(), below.trim()].filter(Boolean).join(' ');
  const sideways = structure.layout === 'sideways';
  const letter = sideways ? String(index + 1) : letterOf(index);
  const place = `${sideways ? 'row' : 'column'} ${letter}`;
  const base = { index, letter, place, header: text, reading, unitFrom, cells };
  return {
    ...base,
    of: null,
    ...roleOf(reading, structure, { header: text, cells }),
    ...statisticParts(reading),
  };
}

function statisticParts({ statistic, basis, relative }: HeaderReading) {
  return statistic === 'uncertainty' ? { basis, relative } : { basis: null, relative: false };
}

function combine(cells: { header: string; below: string }, around: Around, titleUnit: Unit | null) {
  const top = readHeader(cells.header);
  const sub = cells.below.trim() === '' ? null : readHeader(cells.below);
  const spread = cells.header.trim() === '' && sub?.bare === true ? around.lastAnalyte : null;
  const own = top.unit ?? sub?.unit ?? null;
  const isStatistic = (top.statistic ?? sub?.statistic ?? null) !== null;
  const inherited = own === null && !isStatistic ? (around.block ?? titleUnit) : null;
  const reading: HeaderReading = {
    analyte: top.analyte ?? spread,
    unit: own ?? inherited,
    foreignUnit: top.foreignUnit ?? sub?.foreignUnit ?? null,
    statistic: top.statistic ?? sub?.statistic ?? null,
    basis: top.basis ?? sub?.basis ?? null,
    relative: top.relative || (sub?.relative ?? false),
    bare: top.bare,
  };
  const from =
    top.unit !== null
      ? 'the heading'
      : own !== null
        ? 'the row of units'
        : around.block !== null
          ? 'the heading above'
          : 'the title';
  return { reading, unitFrom: reading.unit === null ? null : from };
}

type Role = Pick<Draft, 'role' | 'analyte' | 'unit' | 'why' | 'sure'>;

function roleOf(
  reading: HeaderReading,
  { layout }: Structure,
  column: Pick<Draft, 'header' | 'cells'>,
): Role {
  if (reading.analyte !== null && layout !== 'long') return analyteRole(reading, column);
  if (reading.statistic !== null) return role(reading.statistic, reading, statisticWords(reading), true);
  if (layout === 'long' && reading.unit !== null && reading.bare)
    return role('value', reading, `The heading is a unit, ${reading.unit}: the values.`, true);
  const heading = headingOf(column.header);
  const byContent = isVague(heading?.role ?? null, column.header) ? contentRole(column.cells) : null;
  if (byContent) return role(byContent, reading, `Every cell is a word for ${MEANING[byContent]}.`, true);
  if (heading)
    return role(heading.role, reading, `The heading is a usual one for ${MEANING[heading.role]}.`, true);
  if (column.header === '' && column.cells.length === 0)
    return role('ignore', reading, 'The column is empty.', true);
  return role('ignore', reading, 'The heading is none of those known; the column is left out.', false);
}

function role(name: ColumnRole, reading: HeaderReading, why: string, sure: boolean): Role {
  return {
    role: name,
    analyte: null,
    unit: name === 'value' ? reading.unit : reading.statistic ? reading.unit : null,
    why,
    sure,
  };
}

export const MEANING: Readonly<Record<ColumnRole, string>> = {
  specimen: 'the specimen',
  group: 'the ware group',
  spot: 'the spot on the specimen',
  kind: 'the kind of specimen',
  measured: 'what was measured',
  technique: 'the technique',
  laboratory: 'the laboratory',
  date: 'the date of the analysis',
  source: 'the publication',
  doi: 'the DOI',
  note: 'a note',
  analyte: 'an analyte',
  uncertainty: 'an uncertainty',
  limit: 'a detection limit',
  total: 'the analytical total',
  loi: 'the loss on ignition',
  value: 'the value',
  unit: 'the unit',
  analyteName: "the analyte's name",
  ignore: 'nothing of use',
};

function analyteRole(reading: HeaderReading, { header, cells }: Pick<Draft, 'header' | 'cells'>): Role {
  const analyte = reading.analyte!;
  if (reading.foreignUnit !== null)
    return left(
      `${analyte} is given in ${reading.foreignUnit}, which is no mass fraction; the column is left out.`,
    );
  if (reading.statistic !== null)
    return {
      ...role(reading.statistic, reading, statisticWords(reading), true),
      analyte,
    };
  if (cells.length >= 3 && cells.every((c) => !/\d/.test(c) && c.length > 4))
    return left(`The heading reads as ${analyte}, but the column holds words; it is left out.`);
  const fixed = analyte === LOI ? 'loi' : analyte === TOTAL ? 'total' : 'analyte';
  const unit = reading.unit;
  const oddOxide = fixed === 'analyte' && elementOf(analyte) !== analyte && !OXIDES.includes(analyte);
  const odd = oddOxide ? ` ${analyte} is not a usual oxide: is it mistyped?` : '';
  return { role: fixed, analyte, unit, why: `“${header}” reads as ${analyte}.${odd}`, sure: !oddOxide };
}

function left(why: string): Role {
  return { role: 'ignore', analyte: null, unit: null, why, sure: false };
}

function statisticWords({ statistic, basis, relative }: HeaderReading): string {
  if (statistic === 'limit') return 'The heading names a detection limit.';
  const what =
    basis === 'unstated' ? 'an uncertainty without saying of which kind' : `an uncertainty (${basis})`;
  return `The heading names ${what}${relative ? ', in per cent of the value' : ''}.`;
}

/** Headings that may stand over anything: the cells tell. */
function isVague(heading: ColumnRole | null, header: string): boolean {
  return (
    heading === null ||
    heading === 'measured' ||
    heading === 'kind' ||
    /^(type|class|fabric)$/i.test(header.trim())
  );
}

function contentRole(cells: readonly string[]): ColumnRole | null {
  if (cells.length === 0) return null;
  if (cells.every((c) => measuredOf(c) !== null)) return 'measured';
  return cells.every((c) => kindOf(c) !== null) ? 'kind' : null;
}
