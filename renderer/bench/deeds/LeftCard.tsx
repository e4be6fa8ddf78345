import { useState } from 'react';
import type { JobSheet } from '../../../core/contract/screens.ts';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { placeWords } from '../inside/insideOf.ts';

/** Whoever goes on reads how the bench was left, and says that it is so. */
export function LeftCard({ sheet }: { readonly sheet: JobSheet }) {
  const { t, list, dayClock } = useWords();
  const { execute, problem } = useExecute();
  const { left } = sheet.job;
  if (!left || left.confirmed) return null;
  return (
    <section className="bench-left" aria-label={t('bench.left')}>
      <h2>{t('bench.left-at', { at: dayClock(left.at) })}</h2>
      {left.doNotPower !== null && (
        <p>
          <b>{t('bench.do-not-power-says', { why: left.doNotPower })}</b>
        </p>
      )}
      {left.open.length > 0 && <p>{t('bench.open-says', { what: list(left.open) })}</p>}
      {left.unplugged.length > 0 && <p>{t('bench.unplugged-says', { what: list(left.unplugged) })}</p>}
      {left.lying.map((one) => (
        <p key={`${one.what}${one.where}`}>{`${one.what}: ${one.where}`}</p>
      ))}
      <Key onPress={() => void execute('confirmLeft', { job: sheet.job.id })}>{t('bench.left-confirm')}</Key>
      {problem && <Problem slim {...problem} />}
    </section>
  );
}

/** Leaves the bench as it stands: what lies where and what is unplugged is known already, the rest is written. */
export function LeaveForm({ sheet, onDone }: { readonly sheet: JobSheet; readonly onDone: () => void }) {
  const words = useWords();
  const { t, list } = words;
  const { execute, problem } = useExecute();
  const [open, setOpen] = useState('');
  const [doNot, setDoNot] = useState('');
  const { job, machine, parts } = sheet;
  const lying = parts
    .filter((part) => part.place.at === 'tray' || part.place.at === 'bench' || part.place.at === 'rig')
    .map((part) => ({ what: part.name, where: placeWords(part.place, words) }));
  const leave = async () => {
    const done = await execute('leaveLikeThis', {
      job: job.id,
      open: open
        .split(',')
        .map((one) => one.trim())
        .filter(Boolean),
      unplugged: [...machine.unplugged],
      lying,
      doNotPower: doNot.trim() === '' ? null : doNot.trim(),
    });
    if (done) onDone();
  };
  return (
    <form
      className="bench-form"
      aria-label={t('bench.leave')}
      onSubmit={(event) => {
        event.preventDefault();
        void leave();
      }}
    >
      <p>{t('bench.unplugged-says', { what: list(machine.unplugged) })}</p>
      {lying.map((one) => (
        <p key={`${one.what}${one.where}`}>{`${one.what}: ${one.where}`}</p>
      ))}
      <TextField label={t('bench.open')} labelled="above" value={open} onChange={setOpen} />
      <TextField label={t('bench.do-not-power')} labelled="above" value={doNot} onChange={setDoNot} />
      <Key submit>{t('bench.leave')}</Key>
      {problem && <Problem slim {...problem} />}
    </form>
  );
}
