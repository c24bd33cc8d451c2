import type { Choices } from '../../api/contract/intake.ts';

export type ColumnChoice = Choices['columns'][number];
/** What the reader settled; everything else stays as the service understands it. */
export type AskedChoices = Partial<Omit<Choices, 'defaults'>> & {
  readonly defaults?: Partial<Choices['defaults']>;
};

/** The choices in force: as understood, overruled by what was asked. */
export function inForce(understood: Choices, asked: AskedChoices): Choices {
  const columns = understood.columns.map(
    (column) => asked.columns?.find((one) => one.index === column.index) ?? column,
  );
  return { ...understood, ...asked, columns, defaults: { ...understood.defaults, ...asked.defaults } };
}

/** One more wish. Another heading row or layout makes other columns, so what was said of the old ones goes. */
export function asking(before: AskedChoices, part: AskedChoices): AskedChoices {
  if ('layout' in part || 'headerRow' in part) {
    const { columns: _c, unitsRow: _u, limitRows: _l, firstRow: _f, ...rest } = before;
    return { ...rest, ...part };
  }
  const defaults = part.defaults ? { defaults: { ...before.defaults, ...part.defaults } } : {};
  return { ...before, ...part, ...defaults };
}

/** The columns asked for, one of them asked for anew. */
export function askingColumn(before: AskedChoices, column: ColumnChoice): AskedChoices {
  const others = (before.columns ?? []).filter((one) => one.index !== column.index);
  return { ...before, columns: [...others, column].toSorted((a, b) => a.index - b.index) };
}
