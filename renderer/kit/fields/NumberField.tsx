import { NumberField as AriaNumberField, FieldError, Input, Label, Text } from 'react-aria-components';
import './fields.css';

export type NumberFieldProps = {
  readonly label: string;
  /** `null` when nothing is written. */
  readonly value: number | null;
  readonly onChange: (value: number | null) => void;
  readonly labelled?: 'beside' | 'above' | 'heard';
  /** Unit behind the figure: `min`, `V`, `°C`. */
  readonly unit?: string;
  readonly least?: number;
  readonly most?: number;
  /** Digits behind the decimal sign. */
  readonly digits?: number;
  readonly says?: string;
  readonly wrong?: string | undefined;
  readonly chars?: number;
  readonly format?: Intl.NumberFormatOptions;
  readonly autoFocus?: boolean;
};

/** A figure in the locale's form, with its unit. Arrow keys step it. */
export function NumberField(props: NumberFieldProps) {
  const {
    label,
    value,
    onChange,
    labelled = 'beside',
    unit,
    least,
    most,
    digits = 0,
    says,
    wrong,
    chars = 6,
    format,
    autoFocus = false,
  } = props;
  return (
    <AriaNumberField
      className={`k-field${labelled === 'beside' ? ' k-field-beside' : ''}`}
      value={value ?? Number.NaN}
      onChange={(now) => onChange(Number.isNaN(now) ? null : now)}
      formatOptions={{ maximumFractionDigits: digits, ...format }}
      isInvalid={wrong !== undefined}
      autoFocus={autoFocus}
      {...(least === undefined ? {} : { minValue: least })}
      {...(most === undefined ? {} : { maxValue: most })}
    >
      <Label className={labelled === 'heard' ? 'k-heard' : 'k-field-label'}>{label}</Label>
      <span className="k-field-unit">
        <Input className="k-field-input k-field-number" style={{ width: `${chars + 1}ch` }} />
        {unit !== undefined && <span className="k-muted">{unit}</span>}
      </span>
      {says !== undefined && (
        <Text slot="description" className="k-field-says">
          {says}
        </Text>
      )}
      <FieldError className="k-field-wrong">{wrong}</FieldError>
    </AriaNumberField>
  );
}
