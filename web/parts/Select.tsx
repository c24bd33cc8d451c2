import type { ReactNode } from 'react';
import {
  Button,
  Select as Chooser,
  FieldError,
  Label,
  ListBox,
  Popover,
  SelectValue,
  Text,
} from 'react-aria-components';
import { Caret } from './icons.tsx';
import { type Choice, OptionItem } from './OptionItem.tsx';

export type { Choice };

export interface SelectProps<Id extends string> {
  readonly label: string;
  readonly choices: readonly Choice<Id>[];
  readonly value: Id | null;
  readonly onChange: (id: Id) => void;
  readonly hint?: string | undefined;
  readonly wrong?: string | null | undefined;
  readonly placeholder?: string;
  /** Keeps the label for screen readers only, where a table's own header already shows it. */
  readonly hideLabel?: boolean;
  readonly isDisabled?: boolean;
  readonly icon?: ReactNode;
}

/** One of a list. For lists longer than a screen use a search field beside it. */
export function Select<Id extends string>(at: SelectProps<Id>) {
  return (
    <Chooser
      className="field"
      value={at.value}
      onChange={(key) => key !== null && at.onChange(key as Id)}
      {...(at.wrong ? { isInvalid: true } : {})}
      isDisabled={at.isDisabled ?? false}
      placeholder={at.placeholder ?? 'Choose'}
    >
      <Label className={at.hideLabel ? 'unseen' : 'label'}>{at.label}</Label>
      <Button className="button pick">
        {at.icon}
        <SelectValue className="choice-words">
          {({ selectedText, defaultChildren }) => selectedText || defaultChildren}
        </SelectValue>
        <Caret />
      </Button>
      {at.hint && (
        <Text slot="description" className="hint">
          {at.hint}
        </Text>
      )}
      <FieldError className="wrong">{at.wrong}</FieldError>
      <Popover offset={4}>
        <ListBox className="list" items={at.choices}>
          {(choice) => <OptionItem choice={choice} />}
        </ListBox>
      </Popover>
    </Chooser>
  );
}
