import { useState } from 'react';
import { afterDays } from '../../../core/calendar.ts';
import type { JobSheet } from '../../../core/contract/screens.ts';
import type { Part } from '../../../core/custody/ledger.ts';
import type { Place } from '../../../core/custody/place.ts';
import { wordForPart } from '../../../core/job/approval/partAnswer.ts';
import { NumberField } from '../../kit/fields/NumberField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { DestroyForm } from '../../parts/DestroyForm.tsx';
import { SendForm } from '../../parts/SendForm.tsx';
import { PartAndPlace } from './PartAndPlace.tsx';

const SETTLED: readonly Place['at'][] = ['kept', 'with-owner', 'gone', 'transit', 'away'];

/** Is it to be put away: dead, or a data carrier out of the machine that the owner's word sends elsewhere? */
const isToPutAway = ({ job }: JobSheet, part: Part): boolean => {
  if (part.belongs.to !== 'owner' || SETTLED.includes(part.place.at)) return false;
  if (part.standing.is === 'dead') return true;
  const word = wordForPart(job, part.id, part.dataBearing);
  return part.dataBearing && part.place.at !== 'slot' && (word.destroy || word.answer !== 'back');
};

/** The owner's dead parts and data carriers, and where their word says they go. */
export function PutAwayList({ sheet, keptDays }: { readonly sheet: JobSheet; readonly keptDays: number }) {
  const { t } = useWords();
  const dead = sheet.parts.filter((part) => isToPutAway(sheet, part));
  if (dead.length === 0) return null;
  return (
    <section className="bench-part" aria-label={t('bench.dead-parts')}>
      <h2>{t('bench.dead-parts')}</h2>
      <ul className="bench-list">
        {dead.map((part) => (
          <PutAwayRow key={part.id} sheet={sheet} part={part} keptDays={keptDays} />
        ))}
      </ul>
    </section>
  );
}

type PutAwayRowProps = { readonly sheet: JobSheet; readonly part: Part; readonly keptDays: number };

function PutAwayRow({ sheet, part, keptDays }: PutAwayRowProps) {
  const words = useWords();
  const { t } = words;
  const { execute, problem } = useExecute();
  const [shelf, setShelf] = useState('');
  const [days, setDays] = useState<number | null>(keptDays);
  const [open, setOpen] = useState<'send' | 'destroy' | null>(null);
  const put = (to: Place) => void execute('putAway', { job: sheet.job.id, part: part.id, to });
  const until = afterDays(Date.now(), days ?? 0, words.zone);
  return (
    <li className="bench-fit">
      <PartAndPlace part={part} />
      <TextField label={t('bench.shelf')} labelled="above" value={shelf} onChange={setShelf} chars={12} />
      <NumberField
        label={t('bench.keep-days')}
        labelled="above"
        least={1}
        value={days}
        onChange={setDays}
        says={t('bench.until', { day: words.date(until) })}
      />
      <Key
        onPress={() => put({ at: 'kept', shelf: shelf.trim(), until })}
        {...(shelf.trim() && days !== null ? {} : { whyNot: t('bench.shelf-needs') })}
      >
        {t('bench.keep', { part: part.name })}
      </Key>
      <Key onPress={() => put({ at: 'with-owner' })}>{t('bench.give-back', { part: part.name })}</Key>
      {!part.dataBearing && (
        <Key onPress={() => put({ at: 'gone', why: 'recycled' })}>{t('bench.recycle', { part: part.name })}</Key>
      )}
      <Key onPress={() => setOpen(open === 'send' ? null : 'send')}>{t('bench.send', { part: part.name })}</Key>
      {part.dataBearing && (
        <Key onPress={() => setOpen(open === 'destroy' ? null : 'destroy')}>
          {t('bench.destroy', { part: part.name })}
        </Key>
      )}
      {open === 'send' && <SendForm part={part.name} onSend={put} />}
      {open === 'destroy' && <DestroyForm job={sheet.job.id} part={part} onDone={() => setOpen(null)} />}
      {problem && <Problem slim {...problem} />}
    </li>
  );
}
