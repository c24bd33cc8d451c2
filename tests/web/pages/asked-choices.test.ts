import { expect, test } from 'vitest';
import type { Choices } from '../../../api/contract/intake.ts';
import { asking, askingColumn, type ColumnChoice, inForce } from '../../../web/queries/asked-choices.ts';

const column = (index: number, role: ColumnChoice['role']): ColumnChoice => ({
  index,
  role,
  analyte: null,
  unit: null,
  of: null,
  basis: null,
  relative: false,
});
const nothing = {
  specimen: null,
  group: null,
  kind: null,
  measured: null,
  technique: null,
  laboratory: null,
  date: null,
  source: null,
  doi: null,
};
const understood: Choices = {
  layout: 'wide',
  headerRow: 1,
  unitsRow: null,
  limitRows: [],
  firstRow: 2,
  decimal: '.',
  columns: [column(0, 'specimen'), column(1, 'ignore')],
  nd: 'belowDetection',
  dash: 'notMeasured',
  zero: 'belowDetection',
  negative: 'refuse',
  formulas: 'refuse',
  dateOrder: 'dayFirst',
  fillDown: false,
  defaults: nothing,
  leaveOutRows: [],
  keepRows: [],
};

test('what was asked overrules what was understood, column by column and default by default', () => {
  const asked = asking(askingColumn({}, column(1, 'note')), { defaults: { group: 'Ford ware' } });
  const now = inForce(understood, asking(asked, { defaults: { measured: 'slip' }, decimal: ',' }));
  expect(now.columns.map((one) => one.role)).toEqual(['specimen', 'note']);
  expect(now.defaults).toEqual({ ...nothing, group: 'Ford ware', measured: 'slip' });
  expect(now.decimal).toBe(',');
  expect(now.firstRow).toBe(2);
});

test('a column asked for twice keeps the last wish', () => {
  const asked = askingColumn(askingColumn({}, column(1, 'note')), column(1, 'spot'));
  expect(asked.columns).toEqual([column(1, 'spot')]);
});

test('another heading row drops what was said of the columns, and keeps the rest', () => {
  const asked = asking(askingColumn({ decimal: ',', firstRow: 3 }, column(1, 'note')), { headerRow: 4 });
  expect(asked).toEqual({ decimal: ',', headerRow: 4 });
});
