import { useState } from 'react';
import { fromWall } from '../../../core/calendar.ts';
import { MomentField } from '../../kit/fields/DateField.tsx';
import { TextField } from '../../kit/fields/TextField.tsx';
import { Key } from '../../kit/keys/Key.tsx';
import { Problem } from '../../kit/keys/Problem.tsx';
import { useWords } from '../../kit/text/words.tsx';
import { useExecute } from '../../link/useExecute.ts';
import { OneOf } from '../fields/OneOf.tsx';
import { AnotherOrdered } from './AnotherOrdered.tsx';
import type { OfOrder } from './ofOrder.ts';

/** The supplier names another day, and with it the owner is promised another one. */
export function LateOrder({ sheet, settings, order }: OfOrder) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [says, setSays] = useState('');
  const [due, setDue] = useState('');
  const [promise, setPromise] = useState('');
  const [told, setTold] = useState<'yes' | 'no' | null>(null);
  const promised = promise === '' ? null : fromWall(promise, settings.zone);
  const write = () =>
    execute('orderLate', {
      job: sheet.job.id,
      order: order.order,
      due: due === '' ? null : fromWall(due, settings.zone),
      says: says.trim(),
      promise: promised === null ? null : { at: promised, p90: promised, told: told === 'yes' },
    });
  return (
    <>
      <TextField label={t('counter.order.supplier-says')} labelled="above" value={says} onChange={setSays} />
      <MomentField label={t('counter.order.due')} value={due} onChange={setDue} />
      <MomentField label={t('counter.order.new-promise')} value={promise} onChange={setPromise} />
      {promise !== '' && (
        <OneOf
          asks={t('counter.order.told')}
          words="order.told-is"
          ids={['yes', 'no'] as const}
          chosen={told}
          onChoose={setTold}
        />
      )}
      <Key onPress={() => void write()} {...(says.trim() ? {} : { whyNot: t('counter.order.say-why') })}>
        {t('counter.order.write-late')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}

/** Called off at the supplier; whether another is ordered decides if the owner still pays for it. */
export function CallOff({ sheet, order }: OfOrder) {
  const { t } = useWords();
  const { execute, problem } = useExecute();
  const [why, setWhy] = useState('');
  const [another, setAnother] = useState<'yes' | 'no' | null>(null);
  const ready = why.trim() !== '' && another !== null;
  return (
    <>
      <TextField label={t('counter.order.why')} labelled="above" value={why} onChange={setWhy} />
      <AnotherOrdered chosen={another} onChoose={setAnother} />
      <Key
        onPress={() =>
          void execute('cancelOrder', {
            job: sheet.job.id,
            order: order.order,
            why: why.trim(),
            another: another === 'yes',
          })
        }
        {...(ready ? {} : { whyNot: t('counter.order.say-why') })}
      >
        {t('counter.order.write-off')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </>
  );
}
