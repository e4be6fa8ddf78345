import { useState } from 'react';
import { minorDigits } from '../../../core/money/minorDigits.ts';
import type { Currency } from '../../../core/money/money.ts';
import { MOST_MINOR } from '../../../core/money/money.ts';
import { useWords } from '../text/words.tsx';
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

/**
 * An amount of money, typed in major units with the digits that ISO 4217 gives, and kept in whole minor units. A figure that
 * no amount can be (a key held down, a telephone number) stands there as typed, is said to be wrong, and counts as none.
 */
export function AmountField({ currency, minor, onChange, ...rest }: AmountFieldProps) {
  const { t, number } = useWords();
  const [beyond, setBeyond] = useState<number | null>(null);
  const digits = minorDigits(currency);
  const unit = 10 ** digits;
  return (
    <NumberField
      {...rest}
      least={0}
      digits={digits}
      format={{ style: 'currency', currency, minimumFractionDigits: 0 }}
      value={beyond ?? (minor === null ? null : minor / unit)}
      {...(beyond !== null && { wrong: t('kit.amount-beyond', { most: number(MOST_MINOR / unit) }) })}
      onChange={(now) => {
        const typed = now === null ? null : Math.round(now * unit);
        const isBeyond = typed !== null && typed > MOST_MINOR;
        setBeyond(isBeyond ? now : null);
        onChange(isBeyond ? null : typed);
      }}
    />
  );
}
