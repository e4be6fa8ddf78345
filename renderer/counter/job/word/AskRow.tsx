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
  const kinds = ASK_KINDS.filter(
    (one) =>
      // A finding has changed once the bench has seen it; a part is offered in place of one that is known.
      (one !== 'changed-finding' || sheet.job.seen !== null) &&
      (one !== 'offer' || sheet.parts.some((part) => part.belongs.to === 'owner')),
  );
  return (
    <JobRow id="ask" state={kind === null ? 'known' : 'now'}>
      <OneOf asks={t('counter.ask.about')} words="word.kinds" ids={kinds} chosen={kind} onChoose={setKind} />
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
