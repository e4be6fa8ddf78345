import { minorDigits } from '../../../core/money/minorDigits.ts';
import type { Currency } from '../../../core/money/money.ts';
import { NumberField, type NumberFieldProps } from './NumberField.tsx';

export type AmountFieldProps = Omit<
  NumberFieldProps,
  'value' | 'onChange' | 'digits' | 'unit' | 'format' | 'least' | 'most'
> & {
  readonly currency: Currency;
  /** Whole minor units; `null` when nothing is written. */
  readonly minor: number | null;
  readonly onChange: (minor: number | null) => void;
};

/** An amount of money, typed in major units with the digits that ISO 4217 gives, and kept in whole minor units. */
export function AmountField({ currency, minor, onChange, ...rest }: AmountFieldProps) {
  const digits = minorDigits(currency);
  const unit = 10 ** digits;
  return (
    <NumberField
      {...rest}
      least={0}
      digits={digits}
      format={{ style: 'currency', currency, minimumFractionDigits: 0 }}
      value={minor === null ? null : minor / unit}
      onChange={(now) => onChange(now === null ? null : Math.round(now * unit))}
    />
  );
}
