import type { PartId } from '../../../core/ids.ts';
import { AmountField } from '../../kit/fields/AmountField.tsx';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { OneOfParts } from '../fields/OneOfParts.tsx';
import type { OfJob } from '../job/sheetOf.ts';

/** What the supplier gives for the old part; `part` null: nothing is given for one. */
export type OldPart = { readonly part: PartId | null; readonly minor: number | null; readonly days: number | null };
export const NO_CORE: OldPart = { part: null, minor: null, days: null };

/** The old part's value as the order takes it: undefined where none was agreed, null while something of it is open. */
export function coreInput({ part, minor, days }: OldPart) {
  if (part === null) return undefined;
  return minor !== null && minor > 0 && days !== null ? { part, minor, days } : null;
}

type OldPartProps = OfJob & { readonly core: OldPart; readonly onCore: (core: OldPart) => void };

/** Which of the owner's parts the supplier takes, what they give for it, and in how many days it has to be there. */
export function OldPartFields({ sheet, settings, core, onCore }: OldPartProps) {
  const { t } = useWords();
  const { currency } = settings;
  const theirs = sheet.parts.filter((part) => part.belongs.to === 'owner' && part.place.at !== 'gone');
  if (theirs.length === 0) return null;
  return (
    <>
      <OneOfParts
        asks={t('counter.order.core')}
        parts={theirs}
        chosen={core.part}
        onChoose={(one) => onCore({ ...core, part: one?.id ?? null })}
      />
      {core.part !== null && (
        <>
          <AmountField
            label={t('counter.order.core-worth')}
            labelled="above"
            currency={currency}
            minor={core.minor}
            onChange={(minor) => onCore({ ...core, minor: minor })}
          />
          <NumberField
            label={t('counter.order.core-days')}
            labelled="above"
            least={0}
            most={3650}
            value={core.days}
            onChange={(days) => onCore({ ...core, days })}
          />
        </>
      )}
    </>
  );
}
