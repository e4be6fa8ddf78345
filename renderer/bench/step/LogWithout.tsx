import { useState } from 'react';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { outcomeName } from '../../terms/terms.ts';
import { MinutesField } from '../MinutesField.tsx';
import type { StepShown } from '../next/stepView.ts';

export type LogWithoutProps = {
  readonly step: StepShown;
  /** All that came of it. */
  readonly came: readonly string[];
  readonly onLog: (said: { readonly handsOn: number; readonly waiting: number }) => void;
  readonly onClose: () => void;
};

/** A step that was done before its clock was started: logged with the minutes that are said for it. */
export function LogWithout({ step, came, onLog, onClose }: LogWithoutProps) {
  const { t, list } = useWords();
  const [handsOn, setHandsOn] = useState<number | null>(step.handsOn);
  const [waiting, setWaiting] = useState<number | null>(step.waiting);
  return (
    <Ask
      open
      title={t('bench.log-without', { step: step.heading, outcome: list(came.map(outcomeName)) })}
      onClose={onClose}
      keys={
        <>
          <Key onPress={onClose}>{t('kit.close')}</Key>
          <Key onPress={() => onLog({ handsOn: handsOn ?? 0, waiting: waiting ?? 0 })}>{t('bench.log-it')}</Key>
        </>
      }
    >
      <p>{t('bench.log-without-says')}</p>
      <MinutesField label={t('bench.hands-on')} value={handsOn} onChange={setHandsOn} />
      <MinutesField label={t('bench.waiting')} value={waiting} onChange={setWaiting} />
    </Ask>
  );
}
