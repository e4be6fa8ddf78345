import { useState } from 'react';
import type { Part } from '../../../core/custody/ledger.ts';
import type { Place } from '../../../core/custody/place.ts';
import type { JobId } from '../../../core/ids.ts';
import { Ask } from '../../kit/keys/Ask.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { isReason, NO_REASON, OtherSlot } from '../fitting/OtherSlot.tsx';

/** A move into another slot than the part sat in. */
export type Elsewhere = {
  readonly part: Part;
  readonly to: Extract<Place, { readonly at: 'slot' }>;
  readonly recorded: string;
};

type WhyElsewhereProps = { readonly job: JobId; readonly move: Elsewhere; readonly onClose: () => void };

/** Asks why a part goes into another slot than it sat in; nothing is moved before that is said. */
export function WhyElsewhere({ job, move, onClose }: WhyElsewhereProps) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [reason, setReason] = useState(NO_REASON);
  const { part, to, recorded } = move;
  const put = async () => {
    if (reason.why === null) return;
    const done = await execute('movePart', {
      job,
      part: part.id,
      from: part.place,
      to,
      why: reason.why === 'other' ? 'hand' : reason.why,
      says: reason.why === 'other' ? reason.says.trim() : null,
    });
    if (done) onClose();
  };
  return (
    <Ask
      open
      title={t('bench.why-other-slot', { slot: to.slot })}
      onClose={onClose}
      keys={
        <>
          <Key onPress={onClose}>{t('bench.leave-it-there')}</Key>
          <Key onPress={() => void put()} {...(isReason(reason) ? {} : { whyNot: t('bench.other-slot-needs') })}>
            {t('bench.put-into', { part: part.name, slot: to.slot })}
          </Key>
        </>
      }
    >
      <OtherSlot part={part.name} recorded={recorded} slot={to.slot} reason={reason} onReason={setReason} />
      {problem && <Problem slim {...problem} />}
    </Ask>
  );
}
