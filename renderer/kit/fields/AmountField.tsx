import type { Currency, Money } from '../../../core/money/money.ts';
import { NumberField, type NumberFieldProps } from './NumberField.tsx';

export type AmountFieldProps = Omit<
  NumberFieldProps,
  'value' | 'onChange' | 'digits' | 'unit' | 'format' | 'least' | 'most'
> & {
  readonly currency: Currency;
  /** Minor digits of the currency by ISO 4217 (0, 2, 3 or 4). */
  readonly digits: number;
  /** Minor units; `null` when nothing is written. */
  readonly value: Money | null;
  readonly onChange: (value: Money | null) => void;
};

/** An amount of money, typed in major units and kept in whole minor units. */
export function AmountField({ currency, digits, value, onChange, ...rest }: AmountFieldProps) {
  const unit = 10 ** digits;
  return (
    <NumberField
      {...rest}
      least={0}
      digits={digits}
      format={{ style: 'currency', currency, minimumFractionDigits: 0 }}
      value={value === null ? null : value.minor / unit}
      onChange={(now) => onChange(now === null ? null : { minor: Math.round(now * unit), currency })}
    />
  );
}
