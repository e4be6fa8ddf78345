import type { Currency } from '../../../core/money/money.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import type { OwnerSheet } from './sheet.ts';

type Approvers = NonNullable<OwnerSheet['alsoApprove']>;

/** A company's order number, and who approves money, each up to their own amount. */
export function CompanyFields({
  owner,
  currency,
  onChange,
}: {
  readonly owner: OwnerSheet;
  readonly currency: Currency;
  readonly onChange: (patch: Partial<OwnerSheet>) => void;
}) {
  const { t } = useWords();
  const others = owner.alsoApprove ?? [];
  const put = (at: number, patch: Partial<Approvers[number]>) =>
    onChange({ alsoApprove: others.map((one, i) => (i === at ? { ...one, ...patch } : one)) });
  return (
    <>
      <TextField
        label={t('counter.owner.order-number')}
        labelled="above"
        value={owner.orderNumber}
        onChange={(orderNumber) => onChange({ orderNumber })}
        chars={14}
      />
      <TextField
        label={t('counter.owner.approves')}
        labelled="above"
        value={owner.approves}
        onChange={(approves) => onChange({ approves })}
        chars={22}
      />
      <AmountField
        label={t('counter.owner.approves-up-to')}
        labelled="above"
        currency={currency}
        minor={owner.approvesUpToMinor}
        onChange={(approvesUpToMinor) => onChange({ approvesUpToMinor })}
      />
      {others.map((one, at) => (
        <span key={at} className="counter-fields">
          <TextField
            label={t('counter.owner.approver', { n: at + 1 })}
            labelled="above"
            value={one.name}
            onChange={(name) => put(at, { name })}
            chars={22}
          />
          <AmountField
            label={t('counter.owner.approver-up-to', { n: at + 1 })}
            labelled="above"
            currency={currency}
            minor={one.upToMinor}
            onChange={(upToMinor) => put(at, { upToMinor })}
          />
        </span>
      ))}
      <Key kind="link" onPress={() => onChange({ alsoApprove: [...others, { name: '', upToMinor: null }] })}>
        {t('counter.owner.add-approver')}
      </Key>
    </>
  );
}
