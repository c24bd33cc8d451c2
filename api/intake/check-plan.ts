import { ANALYTES } from '../domain/chemistry/analytes.ts';
import { elementOf } from '../domain/chemistry/oxides.ts';
import { letterOf } from './letters.ts';
import type { FigureColumn, Plan } from './plan.ts';
import type { ProblemLog } from './problems.ts';
import type { ColumnChoice } from './types.ts';

/** Reports what no row could make good. */
export function checkPlan({ choices, headers, figures, words }: Plan, log: ProblemLog): void {
  const { layout, columns, defaults } = choices;
  checkAnalytes(figures, log);
  checkRoles(columns, headers, log);
  if (!words.has('specimen') && defaults.specimen === null)
    log.error(
      'no-specimen',
      'one column must name the specimens, or one name must be given for all rows; there is neither',
    );
  if (!words.has('measured') && defaults.measured === null)
    log.error(
      'no-measured',
      'what was measured must be said: paint, slip, body or whole; neither a column nor a choice says it',
    );
  if (layout !== 'long' && !figures.some((f) => f.role === 'analyte'))
    log.error(
      'no-analyte',
      `at least one column must hold an analyte, such as SiO2 or Pb; the headings are ${listed(headers)}`,
    );
  if (layout === 'long' && !words.has('analyteName'))
    log.error('no-analyte', 'in a long table one column must name the analyte of each row; there is none');
  if (layout === 'long' && figures.length === 0)
    log.error('no-value', 'in a long table one column must hold the values; there is none');
}

const listed = (headers: readonly string[]) => headers.filter(Boolean).slice(0, 12).join(', ') || 'empty';

function checkAnalytes(figures: readonly FigureColumn[], log: ProblemLog): void {
  const seen = new Map<string, number>();
  for (const { index, role, analyte, unit } of figures) {
    if (role === 'value') continue;
    if (analyte === null || !(ANALYTES.includes(analyte) || elementOf(analyte) !== null))
      log.error(
        'unknown-analyte',
        `an analyte must be an element or an oxide; found ${analyte ?? 'nothing'}`,
        { column: index },
      );
    if (unit === null)
      log.error('no-unit', 'figures need a unit: wt%, ppm, ppb or at%; none is chosen', { column: index });
    const before = seen.get(`${analyte}`);
    if (before !== undefined)
      log.error(
        'same-analyte',
        `each analyte may have one column; ${analyte} is also in column ${letterOf(before)}: leave one of them out`,
        { column: index },
      );
    else seen.set(`${analyte}`, index);
  }
}

function checkRoles(columns: readonly ColumnChoice[], headers: readonly string[], log: ProblemLog): void {
  const statistics = columns.filter((c) => c.role === 'uncertainty' || c.role === 'limit');
  for (const { index, role, of } of statistics) {
    const twin = statistics.find((c) => c.role === role && c.of === of && c.index < index);
    if (twin)
      log.error(
        'same-statistic',
        `each column of figures may have one ${role} column; column ${letterOf(twin.index)} is another`,
        {
          column: index,
        },
      );
    const holder = columns.find((c) => c.index === of);
    if (of !== null && !(holder && ['analyte', 'loi', 'total'].includes(holder.role)))
      log.error(
        'stray-statistic',
        `an ${role} column must belong to a column of figures; column ${letterOf(of)} holds none`,
        {
          column: index,
        },
      );
  }
  for (const { index } of columns)
    if (index >= headers.length)
      log.error(
        'no-column',
        `a choice must be about a column of the table, which has ${headers.length}; found number ${index + 1}`,
      );
}
