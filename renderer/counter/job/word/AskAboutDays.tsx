import { useState } from 'react';
import type { Proposal } from '../../../../core/tracing/live/types.ts';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { stepName } from '../../../terms/terms.ts';
import type { OfJob } from '../sheetOf.ts';
import { AskForm } from './AskForm.tsx';

type AskAboutDaysProps = OfJob & {
  /** What could be asked about now; undefined while it is computed. */
  readonly proposals: readonly Proposal[] | undefined;
  /** The one the Bench meant. */
  readonly first: string | null;
  readonly onDone: () => void;
};

/** A question about what takes days, one step at a time: a part ordered to try, theirs sent out. */
export function AskAboutDays({ proposals, first, sheet, settings, onDone }: AskAboutDaysProps) {
  const { t } = useWords();
  const [step, setStep] = useState(first);
  if (!proposals) return <p role="status">{t('app.waiting')}</p>;
  const about = proposals.find((one) => one.step === step) ?? proposals[0];
  if (!about) return <p>{t('counter.ask.nothing-takes-days')}</p>;
  return (
    <>
      {proposals.length > 1 && (
        <ChoiceKeys
          label={t('counter.ask.which')}
          mode="one"
          choices={proposals.map((one) => ({ id: one.step, says: stepName(one.step) }))}
          chosen={[about.step]}
          onChoose={([next]) => next !== undefined && setStep(next)}
        />
      )}
      <AskForm key={about.step} kind="days-away" about={about} sheet={sheet} settings={settings} onDone={onDone} />
    </>
  );
}
