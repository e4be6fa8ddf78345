import { stillHere } from '../../../../core/job/home/stillHere.ts';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { WithReason } from '../../fields/WithReason.tsx';
import type { OfJob } from '../sheetOf.ts';

/** What came along and cannot be given back: said one by one, with what became of it. */
export function LostThings({ sheet: { job } }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const doing = useExecute();
  const called = (id: string) => job.cameAlong.find((one) => one.id === id)?.thing || t('counter.erased');
  return (
    <>
      {job.lost.map(({ id, count, says }) => (
        <p key={`${id}${says}`}>{t('counter.lost.said', { n: count, thing: called(id), says })}</p>
      ))}
      <div className="counter-fields">
        {stillHere(job).map(({ id, thing }) => (
          <WithReason
            key={id}
            opens={t('counter.lost.one', { thing })}
            says={t('counter.lost.says')}
            asks={t('counter.lost.why')}
            does={t('counter.lost.write')}
            doing={doing}
            onDo={async (says) =>
              (await doing.execute('reportLostThing', { job: job.id, id, count: 1, says })) !== null
            }
          />
        ))}
      </div>
    </>
  );
}
