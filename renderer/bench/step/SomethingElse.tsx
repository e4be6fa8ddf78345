import { useState } from 'react';
import type { TracingSheet } from '../../../core/contract/screens.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { notOfferedWords } from '../../terms/reasonWords.ts';
import { stepDoes, stepName } from '../../terms/terms.ts';
import { findSteps } from './findSteps.ts';

export type SomethingElseProps = {
  readonly tracing: TracingSheet;
  readonly onTake: (step: string) => void;
  readonly onClose: () => void;
};

/** Every step there is, found by a word; what is not offered says why. */
export function SomethingElse({ tracing, onTake, onClose }: SomethingElseProps) {
  const words = useWords();
  const { t } = words;
  const [word, setWord] = useState('');
  const steps = Object.keys(tracing.handling).map((id) => ({ id, says: `${stepName(id)} ${stepDoes(id)}` }));
  const found = findSteps(steps, word);
  return (
    <Ask
      open
      title={t('kit.step.something-else')}
      onClose={onClose}
      light
      width={720}
      keys={<Key onPress={onClose}>{t('kit.close')}</Key>}
    >
      <TextField label={t('bench.find-step')} labelled="above" value={word} onChange={setWord} autoFocus />
      {found.length === 0 && <p role="status">{t('bench.no-such-step')}</p>}
      <ul className="bench-list">
        {found.map((id) => {
          const held = tracing.offer.notOffered.find((one) => one.step === id);
          return (
            <li key={id}>
              <div>
                <b>{stepName(id)}</b>
                <div className="k-small k-muted">{held ? notOfferedWords(held, words) : stepDoes(id)}</div>
              </div>
              <Key label={t('bench.do-step', { step: stepName(id) })} onPress={() => onTake(id)}>
                {t('bench.this')}
              </Key>
            </li>
          );
        })}
      </ul>
    </Ask>
  );
}
