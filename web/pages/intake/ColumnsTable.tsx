import type { Choices, Preview } from '../../../api/contract/intake.ts';
import { type Column, DataTable } from '../../parts/DataTable.tsx';
import { Tag } from '../../parts/Notice.tsx';
import { Select } from '../../parts/Select.tsx';
import type { ColumnChoice } from '../../queries/asked-choices.ts';
import { useLookups } from '../../queries/lookups.ts';
import { ColumnDetails } from './ColumnDetails.tsx';
import { hasUnit, ROLE_CHOICES, type Role } from './words.ts';

type Understood = Preview['understanding']['columns'][number];

interface ColumnsTableProps {
  readonly columns: readonly Understood[];
  readonly choices: Choices;
  readonly onChange: (column: ColumnChoice) => void;
}

/** A column given another role keeps of its details what that role can have. */
export function withRole(column: ColumnChoice, role: Role): ColumnChoice {
  return {
    index: column.index,
    role,
    analyte: role === 'analyte' ? column.analyte : null,
    unit: hasUnit(role) ? (column.unit ?? 'wt%') : null,
    of: null,
    basis: role === 'uncertainty' ? (column.basis ?? 'unstated') : null,
    relative: role === 'uncertainty' && column.relative,
  };
}

/** Column by column: what it was taken for, why, and the means to say otherwise. */
export function ColumnsTable({ columns, choices, onChange }: ColumnsTableProps) {
  const analytes = useLookups().data?.analytes ?? [];
  const chosen = (index: number) => choices.columns.find((column) => column.index === index);
  const table: Column<Understood>[] = [
    { id: 'column', label: 'Column', header: true, cell: (column) => <ColumnName column={column} /> },
    {
      id: 'role',
      label: 'Holds',
      prose: true,
      cell: (column) => {
        const choice = chosen(column.index) ?? column;
        return (
          <div className="holds">
            <div className="role">
              <Select
                label={`What column ${column.letter} holds`}
                hideLabel
                choices={ROLE_CHOICES}
                value={choice.role}
                onChange={(role) => onChange(withRole(choice, role))}
              />
            </div>
            <ColumnDetails
              column={column}
              choice={choice}
              others={columns}
              analytes={analytes.map((one) => one.symbol)}
              onChange={onChange}
            />
          </div>
        );
      },
    },
    {
      id: 'why',
      label: 'Why',
      prose: true,
      cell: (column) => (
        <span>
          {!column.sure && <Tag kind="caution">please check</Tag>} {column.why}
        </span>
      ),
    },
  ];
  return (
    <DataTable label="Columns" columns={table} rows={columns} rowKey={(column) => String(column.index)} />
  );
}

function ColumnName({ column }: { readonly column: Understood }) {
  return (
    <span>
      <span className="faint letter">{column.letter}</span> {column.header || <em>no name</em>}
    </span>
  );
}
