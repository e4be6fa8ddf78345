import { useState } from 'react';
import type { Content } from '../../../../core/commands/kernel/signedContent.ts';
import type { JobSheet } from '../../../../core/contract/screens.ts';
import type { Currency } from '../../../../core/money/money.ts';
import { isAtTheDoor } from '../../../../core/stage.ts';
import { AmountField } from '../../../kit/fields/AmountField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { PaperView } from '../../../kit/paper/PaperView.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { usePreview } from '../../../link/usePreview.ts';
import { ContentChanged } from '../../fields/ContentChanged.tsx';
import { OneOf } from '../../fields/OneOf.tsx';

const HOW = ['cash', 'card', 'transfer'] as const;

/** What is paid beyond what is owed, once the machine stands at the door and no more is coming; else nothing. */
export const overPaid = ({ job, charges }: JobSheet): number =>
  isAtTheDoor(job.stage) ? Math.max(0, charges.paidMinor - charges.owedMinor) : 0;

/**
 * Money that changes hands: a deposit, with its receipt, until the machine stands at the door, from then on what is
 * owed, or what was paid beyond it and goes back.
 */
export function TakePayment({
  sheet,
  currency,
  onDone,
}: {
  readonly sheet: JobSheet;
  readonly currency: Currency;
  readonly onDone: () => void;
}) {
  const { t } = useWords();
  const { execute, problem, refusal, forget } = useExecute();
  const { job, charges } = sheet;
  const over = overPaid(sheet);
  // At the door or after it went home there is a bill to pay, and nothing to leave a deposit for.
  const atTheDoor = isAtTheDoor(job.stage) || job.stage === 'gone-home';
  const owed = atTheDoor ? Math.max(0, charges.owedMinor - charges.paidMinor) : 0;
  const [minor, setMinor] = useState<number | null>(over || owed || null);
  const [how, setHow] = useState<(typeof HOW)[number] | null>(null);
  const back = over > 0;
  const money = minor !== null && minor > 0 && how !== null ? { job: job.id, minor, how } : null;
  const deposit = money && !back && !atTheDoor ? { ...money, for: 'deposit' as const } : null;
  const { shown } = usePreview('takePayment', deposit && { ...deposit, contentHash: null });
  const ready = money !== null && (deposit === null || shown !== null);
  const [pressed, setPressed] = useState<Content | null>(null);
  const settle = async () => {
    if (!money) return;
    setPressed(shown);
    const done = back
      ? await execute('giveBack', money)
      : await execute(
          'takePayment',
          deposit ? { ...deposit, contentHash: shown?.contentHash ?? null } : { ...money, for: 'bill' },
        );
    if (done) onDone();
  };
  return (
    <div className="counter-block counter-stack">
      <AmountField
        label={t(`counter.charges.${back ? 'back-now' : atTheDoor ? 'paid-now' : 'deposit'}`)}
        labelled="above"
        currency={currency}
        minor={minor}
        onChange={setMinor}
      />
      <OneOf
        asks={t(back ? 'counter.charges.how-back' : 'counter.charges.how')}
        words="charges.ways"
        ids={HOW}
        chosen={how}
        onChoose={setHow}
      />
      <div className="counter-fields">
        <Key onPress={() => void settle()} {...(ready ? {} : { whyNot: t('counter.charges.pay-needs') })}>
          {t(back ? 'counter.charges.gave' : 'counter.charges.took')}
        </Key>
        <Key kind="link" onPress={onDone}>
          {t('counter.charges.leave')}
        </Key>
      </div>
      {shown?.papers.map((paper) => (
        <PaperView key={paper.kind} paper={paper} />
      ))}
      {problem && <Problem slim {...problem} />}
      <ContentChanged refusal={refusal} signed={[pressed]} onClose={forget} />
    </div>
  );
}
