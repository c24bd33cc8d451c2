import type { ReactNode } from 'react';
import { Checkbox, type CheckboxProps, Label, Radio, RadioGroup, Text } from 'react-aria-components';
import { Check } from './icons.tsx';
import type { Choice } from './Select.tsx';

export interface TickProps extends Omit<CheckboxProps, 'className' | 'style' | 'children'> {
  readonly children?: ReactNode;
}

/** A tick box with its words beside it, or with `aria-label` alone inside a table. */
export function Tick({ children, ...rest }: TickProps) {
  return (
    <Checkbox {...rest} className="tick">
      <span className="box">
        <Check />
      </span>
      {children && <span>{children}</span>}
    </Checkbox>
  );
}

/** A few choices, all in sight, one of them taken. */
export function OneOf<Id extends string>(at: {
  readonly label: string;
  readonly choices: readonly Choice<Id>[];
  readonly value: Id;
  readonly onChange: (id: Id) => void;
  readonly hint?: string;
}) {
  return (
    <RadioGroup className="choices" value={at.value} onChange={(id) => at.onChange(id as Id)}>
      <Label className="label">{at.label}</Label>
      {at.hint && (
        <Text slot="description" className="hint">
          {at.hint}
        </Text>
      )}
      {at.choices.map((choice) => (
        <Radio key={choice.id} value={choice.id} className="tick round">
          <span className="box">
            <Check />
          </span>
          <span>
            {choice.label}
            {choice.hint && <span className="hint"> {choice.hint}</span>}
          </span>
        </Radio>
      ))}
    </RadioGroup>
  );
}
