import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { useSearchParams } from 'react-router';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { tracingRead } from '../../../link/reads.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import { JobRow } from '../JobRow.tsx';
import type { OfJob } from '../sheetOf.ts';
import { AskAboutDays } from './AskAboutDays.tsx';
import { AskForm } from './AskForm.tsx';
import { ASK_KINDS, type AskKind } from './askSheet.ts';

/** A new question for the owner: what it is about, then its words and answers. The Bench opens it at the one it means. */
export function AskRow({ sheet, settings }: OfJob) {
  const { t } = useWords();
  const { job } = sheet;
  const [params, setParams] = useSearchParams();
  const wanted = ASK_KINDS.find((one) => one === params.get('ask')) ?? null;
  const [kind, setKind] = useState<AskKind | null>(wanted);
  const row = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (!wanted) return;
    row.current?.focus();
    row.current?.scrollIntoView({ block: 'start' });
  }, [wanted]);
  const proposals = useQuery({ ...tracingRead(job.id, 'ratio'), enabled: job.stage === 'tracing' }).data?.offer
    .proposals;
  const kinds = ASK_KINDS.filter(
    (one) =>
      one === kind ||
      // A finding has changed once the bench has seen it; of a part it is asked once that is known.
      ((one !== 'changed-finding' || job.seen !== null) &&
        ((one !== 'offer' && one !== 'part') || sheet.parts.some((part) => part.belongs.to === 'owner')) &&
        (one !== 'days-away' || (proposals?.length ?? 0) > 0) &&
        (one !== 'not-worth' || job.worthMinor != null)),
  );
  const done = () => {
    setKind(null);
    if (wanted) setParams({}, { replace: true });
  };
  return (
    <JobRow id="ask" state={kind === null ? 'known' : 'now'}>
      <div ref={row} tabIndex={-1} className="counter-stack">
        <OneOf asks={t('counter.ask.about')} words="word.kinds" ids={kinds} chosen={kind} onChoose={setKind} />
        {kind !== null && (
          <>
            {kind === 'days-away' ? (
              <AskAboutDays
                proposals={proposals}
                first={params.get('step')}
                sheet={sheet}
                settings={settings}
                onDone={done}
              />
            ) : (
              <AskForm key={kind} kind={kind} sheet={sheet} settings={settings} onDone={done} />
            )}
            <Key kind="link" onPress={done}>
              {t('counter.ask.not-now')}
            </Key>
          </>
        )}
      </div>
    </JobRow>
  );
}
