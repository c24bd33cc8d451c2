import type { Choice } from '../../parts/Select.tsx';
import type { ColumnChoice } from '../../queries/asked-choices.ts';

export type Role = ColumnChoice['role'];

/** What a column may hold, in the words of the page. */
export const ROLE_CHOICES: readonly Choice<Role>[] = [
  { id: 'analyte', label: 'Analyte', hint: 'An element or oxide, a figure a row' },
  { id: 'uncertainty', label: '± of a column', hint: 'The uncertainty of another column' },
  { id: 'limit', label: 'Detection limit of a column' },
  { id: 'specimen', label: 'Specimen', hint: 'Label or number of the sherd or tile' },
  { id: 'group', label: 'Ware group' },
  { id: 'kind', label: 'Kind', hint: 'Sherd, tile or material' },
  { id: 'spot', label: 'Spot', hint: 'Tells several shots on one specimen apart' },
  { id: 'measured', label: 'What was measured', hint: 'Paint, slip or body' },
  { id: 'technique', label: 'Technique' },
  { id: 'laboratory', label: 'Laboratory' },
  { id: 'date', label: 'Date' },
  { id: 'source', label: 'Source' },
  { id: 'doi', label: 'DOI' },
  { id: 'note', label: 'Note' },
  { id: 'total', label: 'Total', hint: 'Checked, not stored as an analyte' },
  { id: 'loi', label: 'Loss on ignition' },
  { id: 'analyteName', label: 'Analyte’s name', hint: 'One row a value' },
  { id: 'value', label: 'Value', hint: 'One row a value' },
  { id: 'unit', label: 'Unit', hint: 'One row a value' },
  { id: 'ignore', label: 'Leave out' },
];
export const roleWord = (role: Role) => ROLE_CHOICES.find((choice) => choice.id === role)?.label ?? role;

const WITH_UNIT: readonly Role[] = ['analyte', 'total', 'loi', 'value'];
export const hasUnit = (role: Role) => WITH_UNIT.includes(role);
export const belongsToColumn = (role: Role) => role === 'uncertainty' || role === 'limit';
