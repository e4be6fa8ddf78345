import { useState } from 'react';
import { useNavigate } from 'react-router';
import { isAtTheDoor } from '../../../core/stage.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';
import { JobRow } from './JobRow.tsx';
import type { OfJob } from './sheetOf.ts';

const WHY = ['declined', 'not-worth-it', 'not-found', 'never-answered', 'not-reproduced'] as const;

/** What else can become of it: reminders, home as it came, and what it came back as. */
export function AfterwardsRows({ sheet, settings }: OfJob) {
  const { t, dayClock } = useWords();
  const go = useNavigate();
  const { job } = sheet;
  const { cameBackFrom, cameBackAs } = job;
  return (
    <>
      {isAtTheDoor(job.stage) && job.toldReadyAt !== null && (
        <JobRow id="reminders" state={job.reminders.length > 0 ? 'known' : 'open'}>
          {job.reminders.map((one) => (
            <p key={one.at}>
              {t(one.last ? 'counter.remind.last-sent' : 'counter.remind.sent', { at: dayClock(one.at) })}
            </p>
          ))}
          {settings.notCollectedText.trim() === '' && <LocalText settings={settings} />}
          <Remind sheet={sheet} />
        </JobRow>
      )}
      {job.stage !== 'gone-home' && job.stage !== 'home-as-it-came' && (
        <JobRow id="as-it-came" state="open">
          <AsItCame sheet={sheet} />
        </JobRow>
      )}
      {(cameBackFrom !== null || cameBackAs !== null) && (
        <JobRow id="came-back" state="known">
          {cameBackFrom !== null && (
            <Key kind="link" onPress={() => void go(`/counter/${cameBackFrom}`)}>
              {t('counter.came-back.from')}
            </Key>
          )}
          {cameBackAs !== null && (
            <Key kind="link" onPress={() => void go(`/counter/${cameBackAs.job}`)}>
              {t('counter.came-back.as', { same: t(`counter.came-back.${cameBackAs.same}`) })}
            </Key>
          )}
        </JobRow>
      )}
    </>
  );
}

/** What local law allows for things not collected, in the shop's own words: without it there is no last notice. */
function LocalText({ settings }: Pick<OfJob, 'settings'>) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [says, setSays] = useState('');
  const notCollectedText = says.trim();
  return (
    <div className="counter-stack">
      <p className="k-small">{t('counter.remind.law-missing')}</p>
      <TextField label={t('counter.remind.law')} labelled="above" value={says} onChange={setSays} lines={2} />
      <Key
        onPress={() => void execute('changeShop', { settings: { ...settings, notCollectedText } })}
        {...(notCollectedText === '' ? { whyNot: t('counter.remind.law-needs') } : {})}
      >
        {t('counter.remind.law-keep')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}

function Remind({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const job = sheet.job.id;
  return (
    <div className="counter-fields">
      <Key onPress={() => void execute('remind', { job, last: false })}>{t('counter.remind.send')}</Key>
      <Key onPress={() => void execute('remind', { job, last: true })}>{t('counter.remind.send-last')}</Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}

function AsItCame({ sheet }: Pick<OfJob, 'sheet'>) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [why, setWhy] = useState<(typeof WHY)[number] | null>(null);
  return (
    <div className="counter-stack">
      <OneOf asks={t('counter.as-it-came.asks')} words="as-it-came.why" ids={WHY} chosen={why} onChoose={setWhy} />
      {why !== null && (
        <Key onPress={() => void execute('goHomeAsItCame', { job: sheet.job.id, why })}>
          {t('counter.as-it-came.go')}
        </Key>
      )}
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
