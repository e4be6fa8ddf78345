import type { Currency } from '../../../../core/money/money.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import type { OptionSheet } from './askSheet.ts';

/** A question has a yes and a no at least. */
const LEAST = 2;

/** The answers that can be given, to be written over or left out, each with the limit it would set. */
export function AnswersPut({
  options,
  currency,
  onChange,
}: {
  readonly options: readonly OptionSheet[];
  readonly currency: Currency;
  readonly onChange: (options: readonly OptionSheet[]) => void;
}) {
  const { t } = useWords();
  const change = (id: string, patch: Partial<OptionSheet>) =>
    onChange(options.map((one) => (one.id === id ? { ...one, ...patch } : one)));
  return options.map(({ id, says, agrees }, at) => (
    <div key={id} className="counter-fields">
      <TextField
        label={t('counter.ask.option', { n: at + 1 })}
        labelled="above"
        value={says}
        onChange={(text) => change(id, { says: text })}
        chars={44}
      />
      {agrees.limitMinor !== null && (
        <AmountField
          label={t('counter.ask.limit', { n: at + 1 })}
          labelled="above"
          currency={currency}
          minor={agrees.limitMinor}
          onChange={(minor) => change(id, { agrees: { ...agrees, limitMinor: minor ?? 0 } })}
        />
      )}
      {options.length > LEAST && (
        <Key kind="link" onPress={() => onChange(options.filter((one) => one.id !== id))}>
          {t('counter.ask.leave-out', { n: at + 1 })}
        </Key>
      )}
    </div>
  ));
}
