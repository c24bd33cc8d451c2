import { Button, Disclosure, DisclosurePanel, Heading } from 'react-aria-components';
import type { Choices } from '../../../api/contract/intake.ts';
import { Caret } from '../../parts/icons.tsx';
import { NumberField } from '../../parts/NumberField.tsx';
import { Select } from '../../parts/Select.tsx';
import { Tick } from '../../parts/Tick.tsx';
import type { AskedChoices } from '../../queries/asked-choices.ts';
import { RowsField } from './RowsField.tsx';

const ABSENCE = [
  { id: 'belowDetection', label: 'below detection' },
  { id: 'notMeasured', label: 'not measured' },
] as const;

const LAYOUTS = [
  { id: 'wide', label: 'A row a specimen', hint: 'One column an analyte' },
  { id: 'long', label: 'A row a value', hint: 'Analyte, value and unit in columns' },
  { id: 'sideways', label: 'A column a specimen', hint: 'Analytes down the side' },
] as const;

interface TableReadingProps {
  readonly choices: Choices;
  readonly doubtful: boolean;
  readonly onChange: (part: AskedChoices) => void;
}

/** What holds for the table as a whole: its layout, its rows, how numbers and gaps are written. */
export function TableReading(at: TableReadingProps) {
  return (
    <Disclosure className="disclosure" defaultExpanded={at.doubtful}>
      <Heading level={2}>
        <Button slot="trigger" className="button quiet">
          <Caret />
          How the table is read
        </Button>
      </Heading>
      <DisclosurePanel>
        <div className="sheet stack">
          <RowChoices {...at} />
          <CellChoices {...at} />
        </div>
      </DisclosurePanel>
    </Disclosure>
  );
}

function RowChoices({ choices, onChange }: TableReadingProps) {
  return (
    <div className="fields narrow">
      <Select<string>
        label="Layout"
        choices={LAYOUTS}
        value={choices.layout}
        onChange={(layout) => onChange({ layout: layout as Choices['layout'] })}
      />
      <NumberField
        label="Row of names"
        value={choices.headerRow}
        min={1}
        whole
        onChange={(row) => row !== null && onChange({ headerRow: row })}
      />
      <NumberField
        label="Row of units"
        value={choices.unitsRow}
        min={1}
        whole
        hint="Empty: none"
        onChange={(unitsRow) => onChange({ unitsRow })}
      />
      <NumberField
        label="First row of analyses"
        value={choices.firstRow}
        min={1}
        whole
        onChange={(row) => row !== null && onChange({ firstRow: row })}
      />
    </div>
  );
}

function CellChoices({ choices, onChange }: TableReadingProps) {
  return (
    <>
      <div className="fields narrow">
        <Select
          label="Decimals with"
          choices={[
            { id: '.', label: 'a point, 1.5' },
            { id: ',', label: 'a comma, 1,5' },
          ]}
          value={choices.decimal}
          onChange={(decimal) => onChange({ decimal })}
        />
        <Select
          label="“n.d.” means"
          choices={ABSENCE}
          value={choices.nd}
          onChange={(nd) => onChange({ nd })}
        />
        <Select
          label="A dash means"
          choices={ABSENCE}
          value={choices.dash}
          onChange={(dash) => onChange({ dash })}
        />
        <Select
          label="A figure of 0 is"
          choices={[
            { id: 'belowDetection', label: 'below detection' },
            { id: 'refuse', label: 'an error' },
          ]}
          value={choices.zero}
          onChange={(zero) => onChange({ zero })}
        />
        <Select
          label="A negative figure is"
          choices={[
            { id: 'refuse', label: 'an error' },
            { id: 'limit', label: 'below that limit' },
          ]}
          value={choices.negative}
          onChange={(negative) => onChange({ negative })}
        />
        <Select
          label="Formula cells"
          choices={[
            { id: 'refuse', label: 'are an error' },
            { id: 'takeResult', label: 'count as their result' },
          ]}
          value={choices.formulas}
          onChange={(formulas) => onChange({ formulas })}
        />
        <Select
          label="Dates like 03/04/2021"
          choices={[
            { id: 'dayFirst', label: 'day first' },
            { id: 'monthFirst', label: 'month first' },
          ]}
          value={choices.dateOrder}
          onChange={(dateOrder) => onChange({ dateOrder })}
        />
      </div>
      <div className="fields">
        <RowsField
          label="Rows left out"
          hint="By their numbers: 9, 12-14"
          rows={choices.leaveOutRows}
          onChange={(leaveOutRows) => onChange({ leaveOutRows })}
        />
        <RowsField
          label="Rows kept though they look like a summary"
          hint="Rows named Mean, SD or Total are left out otherwise"
          rows={choices.keepRows}
          onChange={(keepRows) => onChange({ keepRows })}
        />
      </div>
      <Tick isSelected={choices.fillDown} onChange={(fillDown) => onChange({ fillDown })}>
        An empty specimen cell repeats the one above
      </Tick>
    </>
  );
}
