import { useState } from 'react';
import { type ConsentId, OWN_SIGNATURE } from '../../../../core/approval/consent.ts';
import { fill } from '../../../../core/text/wordsFor.ts';
import { TextField } from '../../../kit/fields/TextField.tsx';
import { Key } from '../../../kit/keys/Key.tsx';
import { Problem } from '../../../kit/keys/Problem.tsx';
import { type SignatureMark, SignaturePad } from '../../../kit/paper/SignaturePad.tsx';
import { useWords } from '../../../kit/text/words.tsx';
import { useExecute } from '../../../link/useExecute.ts';
import { freshHow, HowFields, howInput } from '../../fields/HowFields.tsx';
import { hashOf } from '../../fields/hashOf.ts';
import { OneOf } from '../../fields/OneOf.tsx';
import { signedInput } from '../../fields/signedInput.ts';
import { consentSays } from '../../terms.ts';
import { answers, type OfJob, ownerPhone } from '../sheetOf.ts';

const YES_NO = ['yes', 'no'] as const;
const DEAD = ['back', 'keep', 'send'] as const;
const DATA = ['back', 'send'] as const;
type Given = (typeof YES_NO)[number] | (typeof DEAD)[number];

const answersOf = (id: ConsentId): readonly Given[] => (id === 'dead' ? DEAD : id === 'data-parts' ? DATA : YES_NO);

/** One line answered later: by phone, in writing or at the counter; what needs a signature of its own is signed here. */
export function AnswerLine({
  id,
  sheet,
  settings,
  onDone,
}: OfJob & { readonly id: ConsentId; readonly onDone: () => void }) {
  const { t, named, moneyShort } = useWords();
  const { execute, problem } = useExecute();
  const [answer, setAnswer] = useState<Given | null>(null);
  const [how, setHow] = useState(() => freshHow(answers(sheet), ownerPhone(sheet), settings.zone));
  const [mark, setMark] = useState<SignatureMark | null>(null);
  const [about, setAbout] = useState('');
  const alone =
    answer !== null && ((OWN_SIGNATURE.includes(id) && answer === 'yes') || (id === 'data-parts' && answer === 'send'));
  const given = howInput(how, settings.zone);
  const job = sheet.job.id;
  const { limitMinor, feeMinor } = sheet.job;
  const asks = fill(consentSays(id, answer ?? undefined), {
    amount: moneyShort({ minor: id === 'fee' ? feeMinor : limitMinor, currency: settings.currency }),
    days: settings.rules.keptDays,
    name: sheet.owner.mayCollect.value ?? '…',
    part: '…',
    date: '…',
    where: '…',
    work: about.trim() || '…',
    mayHappen: '…',
  });
  const write = async () => {
    if (answer === null) return;
    const done =
      alone && mark
        ? await execute('signAlone', {
            job,
            id,
            answer,
            about: about.trim() || null,
            signed: signedInput(mark, answers(sheet)),
            contentHash: await hashOf({ id, answer, asks, about: about.trim() }),
          })
        : given && (await execute('answerConsent', { job, id, answer, name: how.name.trim(), how: given }));
    if (done) onDone();
  };
  const ready = answer !== null && (alone ? mark !== null : given !== null);
  return (
    <div className="counter-block counter-stack">
      <p>{asks}</p>
      <OneOf
        asks={t('counter.consents-later.says')}
        words={id === 'dead' || id === 'data-parts' ? 'dead' : 'yes-no'}
        ids={answersOf(id)}
        chosen={answer}
        onChoose={setAnswer}
      />
      {alone ? (
        <>
          <TextField label={named('counter.alone.about', id)} labelled="above" value={about} onChange={setAbout} />
          <SignaturePad
            label={t('counter.alone.sign', { what: t(`counter.consents.${id}`) })}
            value={mark}
            onChange={setMark}
          />
        </>
      ) : (
        answer !== null && <HowFields how={how} job={job} onChange={setHow} />
      )}
      <Key onPress={() => void write()} {...(ready ? {} : { whyNot: t('counter.how.open') })}>
        {t('counter.consents-later.write')}
      </Key>
      {problem && <Problem slim {...problem} />}
    </div>
  );
}
