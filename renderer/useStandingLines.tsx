import { useQuery } from '@tanstack/react-query';
import type { Notice } from '../core/contract/standing.ts';
import { useWords } from './kit/text/words.tsx';
import { queryOf } from './link/service.ts';

/** Asked this often: a clock that was set is said within a minute. */
const EVERY_MS = 20_000;

/** What is to be known about the shop's data and its computer's clock; nothing while all is well. */
export function useStandingLines() {
  const { t } = useWords();
  const { data } = useQuery(queryOf.standing.queryOptions({ refetchInterval: EVERY_MS }));
  const say = useNoticeWords();
  if (!data || (!data.onlyRead && data.notices.length === 0)) return null;
  return (
    <div role="status">
      {data.onlyRead && (
        <>
          <p>
            <strong>{t('app.standing.only-read')}</strong> {data.onlyRead.says}{' '}
            {t('app.standing.where', { path: data.onlyRead.path })}
          </p>
          <ol>
            {data.onlyRead.ways.map((way) => (
              <li key={way}>{way}</li>
            ))}
          </ol>
        </>
      )}
      {data.notices.map((notice) => (
        <p key={notice.notice}>{say(notice)}</p>
      ))}
    </div>
  );
}

function useNoticeWords(): (notice: Notice) => string {
  const { t, moment } = useWords();
  return (notice) => {
    const { notice: kind, ...facts } = notice;
    const times = Object.entries(facts).map(([name, value]) => [
      name,
      (name === 'last' || name === 'at') && typeof value === 'number' ? moment(value) : String(value),
    ]);
    return t(`app.standing.${kind}`, Object.fromEntries(times));
  };
}
