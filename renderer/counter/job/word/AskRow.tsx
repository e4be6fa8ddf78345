import { useState } from 'react';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/words.tsx';
import { OneOf } from '../../fields/OneOf.tsx';
import { JobRow } from '../JobRow.tsx';
import type { OfJob } from '../sheetOf.ts';
import { AskForm } from './AskForm.tsx';
import { ASK_KINDS, type AskKind } from './askSheet.ts';

/** A new question for the owner: what it is about, then its words and answers. */
export function AskRow({ sheet, settings }: OfJob) {
  const { t } = useWords();
  const [kind, setKind] = useState<AskKind | null>(null);
  return (
    <JobRow id="ask" state={kind === null ? 'known' : 'now'}>
      <OneOf asks={t('counter.ask.about')} words="word.kinds" ids={ASK_KINDS} chosen={kind} onChoose={setKind} />
      {kind !== null && (
        <>
          <AskForm key={kind} kind={kind} sheet={sheet} settings={settings} onDone={() => setKind(null)} />
          <Key kind="link" onPress={() => setKind(null)}>
            {t('counter.ask.not-now')}
          </Key>
        </>
      )}
    </JobRow>
  );
}
