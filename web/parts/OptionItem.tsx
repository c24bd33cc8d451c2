import { ListBoxItem, Text } from 'react-aria-components';

export interface Choice<Id extends string = string> {
  readonly id: Id;
  readonly label: string;
  readonly hint?: string | undefined;
}

/** One line of a list to choose from, with a hint under it where there is one. */
export function OptionItem({ choice, id }: { readonly choice: Choice; readonly id?: string }) {
  return (
    <ListBoxItem className="option" id={id ?? choice.id} textValue={choice.label}>
      <Text slot="label">{choice.label}</Text>
      {choice.hint && (
        <Text slot="description" className="hint">
          {choice.hint}
        </Text>
      )}
    </ListBoxItem>
  );
}
