import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useNavigate } from 'react-router';
import phone from '../../assets/words/en/phone.json';
import stages from '../../assets/words/en/stages.json';
import type { DayPoint } from '../../core/contract/screens.ts';
import { todayAndOpenDays } from '../../core/job/promise/openDays.ts';
import { epochMs, MINUTE_MS } from '../../core/time.ts';
import { Frame } from '../Frame.tsx';
import { jobPath } from '../jobPath.ts';
import { SetApartList } from '../jobs/SetApartList.tsx';
import { sentence } from '../jobs/sentence.ts';
import { Key } from '../kit/keys/Key.tsx';
import { type DayJob, DayLine, DaySentence } from '../kit/line/DayLine.tsx';
import { useWords, type Words } from '../kit/text/words.tsx';
import { useNow } from '../kit/useNow.ts';
import { dayLineRead, shopRead } from '../link/reads.ts';
import './DayLineRoom.css';

const DAYS_SHOWN = 6;

/** Home: one line of time from today to next week, and what the desk may say of the job chosen. */
export function DayLineRoom() {
  const words = useWords();
  const { t } = words;
  const go = useNavigate();
  const line = useQuery(dayLineRead());
  const shop = useQuery(shopRead());
  const now = useNow(MINUTE_MS);
  const [chosen, setChosen] = useState<string | null>(null);
  const points = line.data?.points ?? [];
  const apart = line.data?.setApart ?? [];
  const point = points.find((one) => one.job === chosen) ?? points[0] ?? null;
  const settings = shop.data?.settings;
  const threads = points.flatMap(({ job, waitsFor }) =>
    waitsFor
      ? [{ waits: job, has: waitsFor.heldBy, tag: null, what: waitsFor.name, says: t('day-line.waits-for') }]
      : [],
  );
  return (
    <Frame
      here="day-line"
      open={<h1>{words.date(now)}</h1>}
      foot={
        point ? (
          <DaySentence who={point.called} says={sentence(point.phone, phone, words)}>
            <Key kind="filled" large onPress={() => go(jobPath(point.job, point.stage))}>
              {t('day-line.open-at', { stage: stages[point.stage] })}
            </Key>
          </DaySentence>
        ) : (
          <Key kind="filled" large onPress={() => go('/counter')}>
            {t('day-line.take-in')}
          </Key>
        )
      }
    >
      {line.isPending && <p role="status">{t('app.waiting')}</p>}
      <SetApartList jobs={apart} />
      {line.data && points.length + apart.length === 0 && <p className="day-empty">{t('day-line.nothing-here')}</p>}
      {settings && points.length > 0 && (
        <DayLine
          now={now}
          days={todayAndOpenDays(settings, epochMs(now), DAYS_SHOWN)}
          jobs={points.map((one) => asDayJob(one, words))}
          threads={threads}
          chosen={point?.job ?? null}
          onChoose={setChosen}
          onOpen={(job) => {
            const found = points.find((one) => one.job === job);
            if (found) go(jobPath(found.job, found.stage));
          }}
        />
      )}
    </Frame>
  );
}

const asDayJob = (point: DayPoint, words: Words): DayJob => ({
  id: point.job,
  name: point.called,
  second: secondLine(point, words),
  band: point.band,
  promised: point.promised,
  ninety: point.willBeLate ? point.p90 : null,
});

function secondLine({ late, willBeLate, promised, likely, stage, tryNow }: DayPoint, words: Words): string {
  if (late && promised !== null) return words.t('day-line.late', { promised: words.dayClock(promised) });
  if (tryNow)
    return words.t(tryNow.n === null ? 'day-line.no-answer' : 'day-line.try', { n: tryNow.n ?? 0, of: tryNow.of });
  const at = stages[stage].toLowerCase();
  if (!willBeLate) return promised === null ? words.t('day-line.no-day', { stage: at }) : at;
  return likely === null
    ? words.t('day-line.will-be-late-open')
    : words.t('day-line.will-be-late', { likely: words.day(likely) });
}
