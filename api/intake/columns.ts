import type { Unit } from '../domain/composition/types.ts';
import { roleOf } from './column-roles.ts';
import { type HeaderReading, readHeader } from './header.ts';
import { letterOf } from './letters.ts';
import type { Structure } from './structure.ts';
import type { ColumnRole, ColumnUnderstanding } from './types.ts';
import { findUnit } from './units.ts';

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
