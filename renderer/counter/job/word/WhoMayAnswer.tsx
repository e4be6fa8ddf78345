import { type MayAnswer, whoMayAnswer } from '../../../../core/approval/mayAnswer.ts';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import type { OfJob } from '../sheetOf.ts';

/** Who may give the word where that is not simply the owner, and what each may speak of; a key takes the name over. */
export function WhoMayAnswer({
  sheet,
  settings,
  name,
  onName,
}: OfJob & { readonly name: string; readonly onName: (name: string) => void }) {
  const { t, moneyShort } = useWords();
  if (sheet.owner.kind.is === 'person') return null;
  const who = whoMayAnswer(sheet.owner);
  const says = (one: MayAnswer): string => {
    if (!one.money) return t('counter.word.may.no-money', { name: one.name });
    if (!one.data) return t('counter.word.may.no-data', { name: one.name });
    if (one.upToMinor === null) return one.name;
    const amount = moneyShort({ minor: one.upToMinor, currency: settings.currency });
    return t('counter.word.may.up-to', { name: one.name, amount });
  };
  return (
    <div className="counter-one-of">
      <span className="counter-asks" aria-hidden="true">
        {t('counter.word.may.asks')}
      </span>
      <ChoiceKeys
        label={t('counter.word.may.asks')}
        mode="one"
        choices={who.map((one) => ({ id: one.name, says: says(one) }))}
        chosen={who.some((one) => one.name === name) ? [name] : []}
        onChoose={([next]) => onName(next ?? '')}
      />
    </div>
  );
}
