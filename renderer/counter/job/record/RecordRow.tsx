import { useState } from 'react';
import { whoMayCollect } from '../../../../core/approval/mayAnswer.ts';
import { Key } from '../../../kit/keys/Key.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { WithReason } from '../../fields/WithReason.tsx';
import { JobRow } from '../JobRow.tsx';
import { type OfJob, ownerName } from '../sheetOf.ts';
import { CorrectMachine } from './CorrectMachine.tsx';
import { CorrectOwner } from './CorrectOwner.tsx';

/** Whose machine it is and what it is, as it was written down, and the way to put it right. */
export function RecordRow({ sheet, settings }: OfJob) {
  const { t, dayClock, list } = useWords();
  const doing = useExecute();
  const [open, setOpen] = useState<'owner' | 'machine' | null>(null);
  const { job, owner, machine } = sheet;
  const reach = owner.reach.value;
  const done = () => setOpen(null);
  const { cancelled } = job;
  return (
    <JobRow id="record" state="known">
      <p>
        <b>{ownerName(sheet) || t('counter.erased')}</b>{' '}
        {[reach?.phone, reach?.mail, owner.address?.value].filter(Boolean).join(', ')}
      </p>
      <p className="k-muted k-small">
        {t('counter.record.collects', { names: list(whoMayCollect(owner)) })}{' '}
        {machine.serial?.value ? t('counter.record.serial', { serial: machine.serial.value }) : ''}
      </p>
      {job.ownerCorrections.map((one) => (
        <p key={`${one.at}${one.what.join()}`} className="k-muted k-small">
          {t(one.saidBy === null ? 'counter.record.corrected' : 'counter.record.corrected-by', {
            what: list(one.what.map((fact) => t(`counter.record.facts.${fact}`))),
            at: dayClock(one.at),
            name: one.saidBy?.value ?? t('counter.erased'),
          })}
        </p>
      ))}
      {cancelled && <p>{t('counter.record.cancelled', { at: dayClock(cancelled.at), why: cancelled.why })}</p>}
      {open === null && (
        <div className="counter-fields">
          <Key kind="link" onPress={() => setOpen('owner')}>
            {t('counter.record.owner')}
          </Key>
          {job.stage !== 'gone-home' && (
            <Key kind="link" onPress={() => setOpen('machine')}>
              {t('counter.record.machine')}
            </Key>
          )}
          {job.stage === 'taken-in' && (
            <WithReason
              opens={t('counter.record.cancel')}
              says={t('counter.record.cancel-says')}
              asks={t('counter.record.cancel-why')}
              does={t('counter.record.cancel-do')}
              doing={doing}
              onDo={async (why) => (await doing.execute('cancelTakingIn', { job: job.id, why })) !== null}
            />
          )}
        </div>
      )}
      {open === 'owner' && <CorrectOwner sheet={sheet} settings={settings} onDone={done} />}
      {open === 'machine' && <CorrectMachine sheet={sheet} onDone={done} />}
    </JobRow>
  );
}
