import {
  FieldError,
  Input,
  Label,
  Text,
  TextArea,
  TextField,
  type TextFieldProps,
} from 'react-aria-components';

export interface FieldProps extends Omit<TextFieldProps, 'className' | 'style' | 'children'> {
  readonly label: string;
  readonly hint?: string | undefined;
  /** What is wrong, in plain words; null when nothing is. */
  readonly wrong?: string | null | undefined;
  readonly lines?: number;
  readonly placeholder?: string;
  readonly whole?: boolean;
}

/** One line or several of text, with its label, a hint and what is wrong with it. */
export function Field({ label, hint, wrong, lines = 1, placeholder, whole, ...rest }: FieldProps) {
  return (
    <TextField {...rest} className={whole ? 'field whole' : 'field'} {...(wrong ? { isInvalid: true } : {})}>
      <Label className="label">{label}</Label>
      {lines > 1 ? (
        <TextArea className="input" rows={lines} {...(placeholder ? { placeholder } : {})} />
      ) : (
        <Input className="input" {...(placeholder ? { placeholder } : {})} />
      )}
      {hint && (
        <Text slot="description" className="hint">
          {hint}
        </Text>
      )}
      <FieldError className="wrong">{wrong}</FieldError>
    </TextField>
  );
}
