import type { Currency } from '../../../core/money/money.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { CompanyFields } from './CompanyFields.tsx';
import type { OwnerSheet } from './sheet.ts';

/** Who an owner can be before the law. */
export const OWNER_KINDS = ['person', 'minor', 'company', 'for-someone-else'] as const;

export type OwnerKindFieldsProps = {
  readonly owner: OwnerSheet;
  readonly currency: Currency;
  readonly onChange: (patch: Partial<OwnerSheet>) => void;
};

/** What an owner of that kind is asked besides: a guardian, whose machine it is, a company's order and approvers. */
export function OwnerKindFields({ owner, currency, onChange }: OwnerKindFieldsProps) {
  const { t } = useWords();
  switch (owner.kind) {
    case 'minor':
      return (
        <TextField
          label={t('counter.owner.guardian')}
          labelled="above"
          value={owner.guardian}
          onChange={(guardian) => onChange({ guardian })}
          chars={26}
        />
      );
    case 'for-someone-else':
      return (
        <TextField
          label={t('counter.owner.machine-of')}
          labelled="above"
          value={owner.machineOf}
          onChange={(machineOf) => onChange({ machineOf })}
          chars={26}
        />
      );
    case 'company':
      return <CompanyFields owner={owner} currency={currency} onChange={onChange} />;
    default:
      return null;
  }
}
