import { LOI, TOTAL } from '../domain/chemistry/analytes.ts';
import { elementOf, OXIDES } from '../domain/chemistry/oxides.ts';
import type { Unit } from '../domain/composition/types.ts';
import type { HeaderReading } from './header.ts';
import type { Structure } from './structure.ts';
import type { ColumnRole } from './types.ts';
import { headingOf, kindOf, measuredOf } from './words.ts';

/** A column's heading, and its sample cells that hold something. */
interface HeadedCells {
  readonly header: string;
  readonly cells: readonly string[];
}

interface Role {
  readonly role: ColumnRole;
  readonly analyte: string | null;
  readonly unit: Unit | null;
  readonly why: string;
  readonly sure: boolean;
}

/** What a column is for, by its heading or else by its cells, and why. */
export function roleOf(reading: HeaderReading, { layout }: Structure, column: HeadedCells): Role {
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

function analyteRole(reading: HeaderReading, { header, cells }: HeadedCells): Role {
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
