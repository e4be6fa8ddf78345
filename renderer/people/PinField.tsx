import { TextField } from '../kit/fields/TextField.tsx';

export type PinFieldProps = {
  readonly label: string;
  readonly value: string;
  readonly onChange: (pin: string) => void;
  readonly says?: string;
  readonly autoFocus?: boolean;
};

/** A PIN as it is typed: never shown, never offered again by the browser. */
export function PinField({ label, value, onChange, says, autoFocus = false }: PinFieldProps) {
  return (
    <TextField
      label={label}
      labelled="above"
      type="password"
      autoComplete="one-time-code"
      chars={14}
      value={value}
      onChange={onChange}
      autoFocus={autoFocus}
      {...(says === undefined ? {} : { says })}
    />
  );
}
