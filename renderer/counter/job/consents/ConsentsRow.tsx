import { useState } from 'react';
import { CONSENTS, type ConsentId } from '../../../../core/approval/consent.ts';
import { Ask } from '../../../kit/keys/Ask.tsx';
import { ChoiceKeys } from '../../../kit/keys/ChoiceKeys.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { JobRow } from '../JobRow.tsx';
import type { OfJob } from '../sheetOf.ts';
import { AnswerLine } from './AnswerLine.tsx';

/** The lines of the sheet as they stand: what was agreed can be taken back, what was left open answered later. */
export function ConsentsRow({ sheet, settings }: OfJob) {
  const { t, dayClock } = useWords();
  const { execute, problem } = useExecute();
  const [asked, setAsked] = useState<ConsentId | null>(null);
  const [line, setLine] = useState<ConsentId | null>(null);
  const { consents, stage, id: job } = sheet.job;
  const ended = stage === 'gone-home';
  const standing = CONSENTS.filter((id) => consents.answers[id] !== undefined && !consents.withdrawn.includes(id));
  const given = standing.filter((id) => consents.answers[id] !== 'no');
  const open = CONSENTS.filter((id) => !given.includes(id));
  const takenBack = CONSENTS.filter((id) => consents.withdrawn.includes(id));
  const refused = standing.filter((id) => consents.answers[id] === 'no').map((id) => t(`counter.consents.${id}`));
  const answer = (id: ConsentId) => {
    const said = consents.answers[id];
    if (said === undefined) return '';
    return said === 'yes' || said === 'no' ? t(`kit.${said}`) : t(`counter.dead.${said}`);
  };
  return (
    <JobRow id="consents" state={consents.signature ? 'known' : 'open'}>
      {!consents.signature && <p>{t('counter.consents-later.not-signed')}</p>}
      {consents.signature?.contentHash === '' && <p>{t('counter.consents-later.unbound')}</p>}
      <ul className="counter-consents">
        {given.map((id) => (
          <li key={id}>
            <span>
              {t(`counter.consents.${id}`)}: <b>{answer(id)}</b>
              {consents.about[id] && <span className="k-muted">, {consents.about[id]}</span>}
            </span>
            {!ended && (
              <Key
                kind="link"
                label={t('counter.consents-later.take-back-line', { line: t(`counter.consents.${id}`) })}
                onPress={() => setAsked(id)}
              >
                {t('counter.consents-later.take-back')}
              </Key>
            )}
          </li>
        ))}
      </ul>
      {takenBack.map((id) => (
        <p key={id} role="status">
          <b>{t('counter.consents-later.taken-back', { line: t(`counter.consents.${id}`) })}</b>{' '}
          {consents.withdrawnAt?.[id] !== undefined && dayClock(consents.withdrawnAt[id])}
        </p>
      ))}
      <p className="k-muted k-small">
        {refused.length > 0 && t('counter.consents-later.said-no', { lines: refused.join('; ') })}{' '}
        {t('counter.consents-later.no')}
      </p>
      <Ask
        open={asked !== null}
        title={t('counter.consents-later.sure', { line: asked === null ? '' : t(`counter.consents.${asked}`) })}
        onClose={() => setAsked(null)}
        light
        keys={
          <>
            <Key onPress={() => setAsked(null)}>{t('counter.leave')}</Key>
            <Key
              onPress={() => {
                if (asked !== null) void execute('withdrawConsent', { job, id: asked });
                setAsked(null);
              }}
            >
              {t('counter.consents-later.take-it-back')}
            </Key>
          </>
        }
      >
        <p>{t('counter.consents-later.sure-says')}</p>
      </Ask>
      {problem && <Problem slim {...problem} />}
      {!ended && consents.signature && (
        <>
          <p className="counter-asks">{t('counter.consents-later.answer')}</p>
          <ChoiceKeys
            label={t('counter.consents-later.answer')}
            mode="one"
            choices={open.map((id) => ({ id, says: t(`counter.consents.${id}`) }))}
            chosen={line === null ? [] : [line]}
            onChoose={([id]) => setLine(open.find((one) => one === id) ?? null)}
          />
          {line !== null && (
            <AnswerLine key={line} id={line} sheet={sheet} settings={settings} onDone={() => setLine(null)} />
          )}
        </>
      )}
    </JobRow>
  );
}
